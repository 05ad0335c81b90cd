import { foundryPractice } from '../../tables/foundry-practice.ts';
import { type Figure, fromTable, weakest } from '../figure.ts';
import type { PourInput } from '../pour-input.ts';
import { type Fed, fedOrder } from './feeding-order.ts';
import type { InsertMasses } from './insert-case.ts';
import { coldestPour, type Demand, type Given } from './insert-heat.ts';
import type { PourAlloy } from './pour-alloy.ts';
import type { Standing } from './standing.ts';

/** What of an insert is known before the pouring temperature is. */
export interface PreparedInsert {
  readonly masses: InsertMasses;
  readonly given: Given | undefined;
  readonly from: readonly Figure[];
  readonly fed: Fed | undefined;
  readonly standing: Standing | undefined;
  readonly demand: Demand;
  readonly demandFrom: Figure;
  /** Coldest pour by which the metal at the insert does what is asked of it. */
  readonly leastPour: Figure | undefined;
}

/** @param foamLoss what foam takes from the metal, where there is foam */
export function prepareInserts(
  input: PourInput,
  alloy: PourAlloy | undefined,
  masses: readonly InsertMasses[],
  standings: readonly Standing[],
  foamLoss: Figure | undefined,
): readonly PreparedInsert[] {
  const melting = alloy?.thermal();
  return masses.map((one): PreparedInsert => {
    const standing = standings.find(({ part }) => part === one.part);
    const fed = fedAt(input, one, standing);
    const runs = fed !== 'before' && fed !== 'together';
    const demandFrom = runs
      ? fromTable(foundryPractice.superheatToRunK, 'K')
      : fromTable(foundryPractice.stillFills, '');
    const demand: Demand = runs ? { superheatK: demandFrom.value } : { solidFraction: demandFrom.value };
    const { mass, metal, heat, preheat } = one;
    if (!melting || !mass || !metal || !heat || !preheat) {
      return { masses: one, given: undefined, from: [], fed, standing, demand, demandFrom, leastPour: undefined };
    }
    const foam = standing?.foam ? foamLoss : undefined;
    const given: Given = {
      thermal: melting.thermal,
      metalKg: metal.value,
      insertKg: mass.value,
      insertHeat: heat.value,
      foamK: foam?.value ?? 0,
    };
    const from = [...melting.from, mass, metal, heat, preheat, ...(foam ? [foam] : [])];
    const value = coldestPour(given, demand, preheat.value);
    const leastPour: Figure | undefined = Number.isFinite(value)
      ? {
          value,
          unit: '°C',
          origin: `what ${one.record.name} takes from the metal round it`,
          status: weakest([...from, demandFrom].map(({ status }) => status)),
        }
      : undefined;
    return { masses: one, given, from, fed, standing, demand, demandFrom, leastPour };
  });
}

function fedAt({ pour }: PourInput, { at, modulus }: InsertMasses, standing: Standing | undefined): Fed | undefined {
  const thinnest = standing?.casting.sections?.thinnest;
  if (!standing || !at || !thinnest || !modulus) return undefined;
  // Nothing thinner than the metal round the insert has to be filled past it.
  if (thinnest.modulusMm >= modulus.value) return 'before';
  return fedOrder(standing, pour.gating.spot, at, thinnest.at);
}
