import type { PartId } from '../../base/ids.ts';
import type { Direction } from '../../build/casting.ts';
import { foundryPractice } from '../../tables/foundry-practice.ts';
import type { Figure } from '../figure.ts';
import { coldestInsert, coldestPour, type Demand, type Given, heaviestInsert, meets } from './insert-heat.ts';
import type { Standing } from './standing.ts';
import type { Way } from './verdict.ts';

interface Turnable {
  readonly insert: number;
  readonly part: PartId | undefined;
  readonly turnOver: Direction | undefined;
  readonly preheat: Figure | undefined;
}

/** What would turn an insert that is too cold, or too heavy, to clear; each by itself. */
export function insertWays(
  { insert, part, turnOver, preheat }: Turnable,
  given: Given,
  demand: Demand,
  pourC: number,
  mostC: number,
  standing: Standing | undefined,
): readonly Way[] {
  const ways: Way[] = [];
  const hottest = foundryPractice.preheatMostC.value;
  const overFoam = (toC: number): boolean => standing?.foam === true && toC > foundryPractice.foamStandsC.value;
  const rounded = (toC: number): number => Math.ceil(toC / 5 - 1e-9) * 5;
  const still = rounded(coldestInsert(given, demand, pourC));
  if (still <= hottest) ways.push({ is: 'preheat', insert, toC: still, overFoam: overFoam(still) });
  const hot = rounded(coldestPour(given, demand, preheat?.value ?? 0));
  if (hot <= mostC) ways.push({ is: 'hotter', toC: hot });
  const fills: Demand = { solidFraction: foundryPractice.stillFills.value };
  if (turnOver && part && meets(given, fills, pourC, preheat?.value ?? 0))
    ways.push({ is: 'turn over', part, up: turnOver });
  if (ways.length === 0) {
    const both = rounded(coldestInsert(given, demand, mostC));
    if (both <= hottest) {
      ways.push({ is: 'preheat and hotter', insert, preheatC: both, toC: mostC, overFoam: overFoam(both) });
    }
  }
  const kg = heaviestInsert(given, demand, pourC, preheat?.value ?? 0);
  if (kg > 0) ways.push({ is: 'lighter insert', insert, kg });
  return ways;
}
