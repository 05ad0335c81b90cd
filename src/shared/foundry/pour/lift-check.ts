import type { PartId } from '../../base/ids.ts';
import type { Machine } from '../../build/machine.ts';
import { readFigures } from '../../plan/machine-figures-read.ts';
import { foundryPractice } from '../../tables/foundry-practice.ts';
import { patternPractice } from '../../tables/pattern-practice.ts';
import { drawn, type Figure, fromTable, sumOf, weakest, worked } from '../figure.ts';
import type { FoundryUnknown } from '../foundry-unknown.ts';
import { LIFT_FACTOR, pressureUnder, weightNeeded } from '../lift.ts';
import { isLooseSand } from '../moulding.ts';
import type { PourInput } from '../pour-input.ts';
import type { ChargeCheck } from './charge-check.ts';
import { levelOver } from './gating-check.ts';
import type { PourAlloy } from './pour-alloy.ts';
import type { ReadPour } from './read-pour.ts';
import type { Standing } from './standing.ts';
import { type PourVerdict, verdict } from './verdict.ts';

const GRAVITY = 9.806_65;
const factorWords = `${LIFT_FACTOR} times the lift (1.5 to 2, from memory)`;

/** What one of the castings of a kind does to the sand over it. */
export interface CastingLift {
  readonly part: PartId;
  /** Shadow that it throws straight down. */
  readonly area: Figure | undefined;
  /** At its lowest point, kPa. */
  readonly pressure: Figure | undefined;
  /** On the sand over it, N. */
  readonly lift: Figure | undefined;
}

export interface LiftCheck {
  readonly castings: readonly CastingLift[];
  readonly lift: Figure | undefined;
  /** What holds the sand down: the cope with its sand, or the sand straight over the castings; and weights. */
  readonly sand: Figure | undefined;
  readonly box: Figure | undefined;
  readonly weights: Figure | undefined;
  readonly holds: Figure | undefined;
  /** Still to be laid on. */
  readonly weightNeeded: Figure | undefined;
  readonly verdicts: readonly PourVerdict[];
  readonly unknown: readonly FoundryUnknown[];
}

/**
 * The metal lifts the sand over it: by its pressure on all of its uppermost surface, as if it all stood liquid at once. Sand that
 * is rammed lifts as one piece with its box; loose sand only by what lies straight over the casting.
 */
export function liftCheck(
  input: PourInput,
  read: ReadPour,
  alloy: PourAlloy | undefined,
  charge: ChargeCheck,
  standings: readonly Standing[],
): LiftCheck {
  const unknown: FoundryUnknown[] = [];
  const density = alloy?.figure('liquidDensityKgM3');
  const sandDensity = sandDensityOf(read, standings);
  const castings = standings.map((standing): CastingLift & { readonly count: number } => {
    const shadow = standing.casting.sections?.shadows[standing.up];
    if (!shadow) unknown.push({ is: 'sections', part: standing.part });
    const level = levelOver(input, read, standing);
    const area = shadow && drawn(shadow.areaMm2, 'mm²', 'shadow of the casting');
    const space = shadow && drawn(shadow.spaceAboveMm3, 'mm³', 'between its uppermost surface and its top');
    return {
      part: standing.part,
      count: standing.count,
      area,
      pressure: worked('kPa', 'head by the density of the liquid', [level, density], pressureUnder),
      lift: worked(
        'N',
        'weight of the liquid that would stand over its uppermost surface up to the level in the cup',
        [area, space, level, density],
        (mm2, above, mm, rho) => (mm2 * Math.max(0, mm - standing.heightMm) + above) * 1e-9 * rho * GRAVITY,
      ),
    };
  });
  const all = castings.map(({ lift, count }) => worked('N', '', [lift], (one) => one * count));
  const lift = all.every((one) => one) ? sumOf('N', 'all castings', all) : undefined;
  const flask = input.machines.find(({ id }) => id === input.pour.flask);
  const loose = standings.length > 0 && standings.every(({ casting }) => isLooseSand(casting.casting?.moulding));
  const sand = loose
    ? sandStraightOver(read, castings, sandDensity)
    : copeSand(input, flask, charge, sandDensity, unknown);
  const box = loose ? undefined : flaskFigure(input, flask, 'boxMass', 'kg');
  const weights = read.copeWeight;
  const holds = sand && sumOf('kg', 'sand, box and weights', [sand, box, weights]);
  const needed = worked('kg', factorWords, [lift, holds], (newtons, kg) => weightNeeded(newtons, kg));
  const verdicts: PourVerdict[] = [];
  if (holds && lift && needed) {
    const needs = worked('kg', factorWords, [lift], (newtons) => (newtons / GRAVITY) * LIFT_FACTOR);
    const heldAtAll = holds.value * GRAVITY >= lift.value;
    const state = needed.value === 0 ? 'clear' : heldAtAll ? 'caution' : 'stop';
    const ways = [{ is: 'weight' as const, kg: needed.value + (weights?.value ?? 0) }];
    verdicts.push(verdict('cope-lift', state, { about: { machine: flask?.id }, has: holds, needs, ways }));
  }
  return {
    castings: castings.map(({ count: _, ...one }) => one),
    lift,
    sand,
    box,
    weights,
    holds,
    weightNeeded: needed,
    verdicts,
    unknown,
  };
}

export function sandDensityOf({ sandDensity }: ReadPour, standings: readonly Standing[]): Figure {
  if (sandDensity) return sandDensity;
  const loose = standings.every(({ casting }) => isLooseSand(casting.casting?.moulding));
  return fromTable(loose ? foundryPractice.looseSandKgM3 : foundryPractice.rammedSandKgM3, 'kg/m³');
}

export function flaskFigure(
  { lengthUnit }: PourInput,
  flask: Machine | undefined,
  key: string,
  unit: Figure['unit'],
): Figure | undefined {
  const value = flask && readFigures(flask, lengthUnit).values.get(key);
  if (!flask || value === undefined) return undefined;
  const status = flask.generic ? 'starting value' : 'written';
  return { value, unit, origin: `${flask.name}${flask.generic ? ', a figure of its size class' : ''}`, status };
}

/** Loose sand runs: nothing but what lies straight over a casting holds it. */
function sandStraightOver(
  { coverAbove }: ReadPour,
  castings: readonly (CastingLift & { readonly count: number })[],
  density: Figure,
): Figure | undefined {
  const cover = coverAbove ?? fromTable(patternPractice.coverAbove, 'mm');
  const masses = castings.map(({ area, count }) =>
    worked('kg', '', [area, cover, density], (mm2, mm, rho) => count * mm2 * mm * 1e-9 * rho),
  );
  const sum = masses.every((one) => one) ? sumOf('kg', 'loose sand straight over the castings', masses) : undefined;
  return sum && { ...sum, status: weakest([sum.status, cover.status]) };
}

/** A rammed cope lifts as one piece; the castings are taken to lie in it wholly, which is the safe side. */
function copeSand(
  input: PourInput,
  flask: Machine | undefined,
  charge: ChargeCheck,
  density: Figure,
  unknown: FoundryUnknown[],
): Figure | undefined {
  if (!flask) {
    unknown.push({ is: 'field', field: 'flask' });
    return undefined;
  }
  const sizes = (['insideLength', 'insideWidth', 'copeHeight'] as const).map((key) => {
    const figure = flaskFigure(input, flask, key, 'mm');
    if (!figure) unknown.push({ is: 'figure', machine: flask.id, key });
    return figure;
  });
  const [length, width, height] = sizes;
  return worked(
    'kg',
    'the cope full of sand, less the castings',
    [length, width, height, charge.castingsVolume, density],
    (l, w, h, metal, rho) => Math.max(0, l * w * h - metal) * 1e-9 * rho,
  );
}
