import { cooledBy, heatGiven, heatToFraction, type Thermal } from './heat.ts';

export interface InsertCase {
  readonly metalKg: number;
  readonly pourC: number;
  readonly insertKg: number;
  readonly insertC: number;
  /** kJ/(kg·K). */
  readonly insertHeat: number;
}

/** What comes of the metal round an insert when both have come to one temperature. */
export interface InsertBalance {
  readonly temperatureC: number;
  readonly solidFraction: number;
  /** Superheat left over the liquidus, K; 0 once anything is frozen. */
  readonly superheatK: number;
  /** Heat over what would bring the insert to the liquidus with the metal still wholly liquid, kJ; negative: short. */
  readonly marginKJ: number;
}

/**
 * Lumped balance without losses: the metal that touches the insert heats it until both are equally hot,
 * m h(T_pour → T) = m_i c_i (T − T_i). Only the metal that really flows past counts, not the whole casting. A published worked
 * example was not found; the balance is first principles.
 */
export function insertBalance(alloy: Thermal, given: InsertCase): InsertBalance {
  const { metalKg, pourC, insertKg, insertC, insertHeat } = given;
  const over = (at: number): number => metalKg * heatGiven(alloy, pourC, at) - insertKg * insertHeat * (at - insertC);
  // Heat left over falls as the common temperature rises: one crossing between the two beginnings.
  let low = Math.min(insertC, pourC);
  let high = Math.max(insertC, pourC);
  for (let i = 0; i < 100; i++) {
    const middle = (low + high) / 2;
    if (over(middle) > 0) low = middle;
    else high = middle;
  }
  const temperatureC = (low + high) / 2;
  const marginKJ = over(alloy.liquidusC);
  // A metal that freezes at one temperature stays at it while its latent heat leaves: what it has given tells, not where it stands.
  const taken = insertKg * insertHeat * (temperatureC - insertC);
  const solidFraction = marginKJ >= 0 ? 0 : metalKg > 0 ? cooledBy(alloy, pourC, taken / metalKg).solidFraction : 1;
  return { temperatureC, solidFraction, superheatK: Math.max(0, temperatureC - alloy.liquidusC), marginKJ };
}

/**
 * Coldest insert that leaves the metal wholly liquid with `superheatK` to spare, °C: possibly below all there is, or more than
 * is wise. The caller holds it against what can be done.
 */
export function leastPreheat(alloy: Thermal, given: Omit<InsertCase, 'insertC'>, superheatK: number): number {
  const at = alloy.liquidusC + superheatK;
  return leastInsert(given, at, heatGiven(alloy, given.pourC, at));
}

/** Coldest insert that freezes no more than a share of the metal round it, °C. */
export const leastPreheatForFraction = (
  alloy: Thermal,
  given: Omit<InsertCase, 'insertC'>,
  solidFraction: number,
): number => {
  const at = alloy.liquidusC - solidFraction * (alloy.liquidusC - alloy.solidusC);
  return leastInsert(given, at, heatToFraction(alloy, given.pourC, solidFraction));
};

function leastInsert(given: Omit<InsertCase, 'insertC'>, atC: number, givenKJKg: number): number {
  const { metalKg, insertKg, insertHeat } = given;
  if (insertKg === 0) return Number.NEGATIVE_INFINITY;
  return atC - (metalKg * givenKJKg) / (insertKg * insertHeat);
}

/** √(k ρ c), J/(m²·K·s½). */
const effusivity = (conductivity: number, densityKgM3: number, heatJKgK: number): number =>
  Math.sqrt(conductivity * densityKgM3 * heatJKgK);

/** Effusivities of liquid aluminium (90 W/mK, 2400, 1080) and mild steel (50, 7850, 490), from memory. */
export const LIQUID_ALUMINIUM_EFFUSIVITY = effusivity(90, 2400, 1080);
export const MILD_STEEL_EFFUSIVITY = effusivity(50, 7850, 490);

/** Temperature of the touching faces in the first instant: (e₁T₁ + e₂T₂)/(e₁ + e₂), two half-spaces meeting. */
export const contactTemperature = (metalC: number, metalE: number, insertC: number, insertE: number): number =>
  (metalE * metalC + insertE * insertC) / (metalE + insertE);
