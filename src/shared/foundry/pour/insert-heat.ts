import type { Thermal } from '../heat.ts';
import { insertBalance, leastPreheat, leastPreheatForFraction } from '../inserts.ts';

/** The masses that share their heat. */
export interface Given {
  readonly thermal: Thermal;
  readonly metalKg: number;
  readonly insertKg: number;
  readonly insertHeat: number;
  /** What foam takes from the metal on its way, K. */
  readonly foamK: number;
}

/** Metal must run on: wholly liquid with so much to spare. Or it only fills up: frozen to no more than a share. */
export type Demand = { readonly superheatK: number } | { readonly solidFraction: number };

/** Whether the metal at the insert does what is asked of it. */
export const meets = (given: Given, demand: Demand, pourC: number, insertC: number): boolean => {
  const { solidFraction, superheatK } = balance(given, pourC, insertC);
  return 'superheatK' in demand ? superheatK >= demand.superheatK - 1e-6 : solidFraction <= demand.solidFraction + 1e-9;
};

/** What comes of metal poured at `pourC` round an insert at `insertC`. */
export const balance = ({ thermal, foamK, ...masses }: Given, pourC: number, insertC: number) =>
  insertBalance(thermal, { ...masses, pourC: pourC - foamK, insertC });

/** Coldest insert that meets the demand, °C: possibly below all there is, or more than can be done. */
export function coldestInsert({ thermal, foamK, ...masses }: Given, demand: Demand, pourC: number): number {
  const metal = { ...masses, pourC: pourC - foamK };
  return 'superheatK' in demand
    ? leastPreheat(thermal, metal, demand.superheatK)
    : leastPreheatForFraction(thermal, metal, demand.solidFraction);
}

/** Coldest pour that meets the demand, °C; infinite where none does. */
export function coldestPour(given: Given, demand: Demand, insertC: number): number {
  let [low, high] = [given.thermal.liquidusC, given.thermal.liquidusC + 2000];
  if (!meets(given, demand, high, insertC)) return Infinity;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (meets(given, demand, middle, insertC)) high = middle;
    else low = middle;
  }
  return high;
}

/** Heaviest insert that meets the demand, kg. */
export function heaviestInsert(given: Given, demand: Demand, pourC: number, insertC: number): number {
  let [low, high] = [0, given.insertKg];
  for (let i = 0; i < 50; i++) {
    const middle = (low + high) / 2;
    if (meets({ ...given, insertKg: middle }, demand, pourC, insertC)) low = middle;
    else high = middle;
  }
  return low;
}
