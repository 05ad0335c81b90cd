import type { DimensionId } from '../../base/ids.ts';
import type { Dimension } from '../../build/dimension.ts';
import type { LengthUnit } from '../../quantity/kind.ts';
import type { Remedy, Verdict } from '../setup-check.ts';
import { type Judging, leastMargin, NEAR_NOTHING_MM } from '../verdicts/judge.ts';
import type { Question } from '../verdicts/question.ts';
import type { FormulaFollower } from './follow-formulas.ts';

type DimensionRemedy = Extract<Remedy, { readonly is: 'dimension' }>;

/** Dimensions that are tried, those that carry most first, and remedies that are named. */
const TRIED = 8;
const NAMED = 3;

/** A change of more than this share of a dimension makes another part of it. */
const LARGEST_SHARE = 0.3;

/** Steps of the search for the least change; it closes in like Newton's on what is nearly straight. */
const STEPS = 8;

/** A dimension is written to these, mm or degrees, and thousandths of an inch. */
const stepOf = (lengthUnit: LengthUnit, isAngle: boolean): number =>
  isAngle ? 0.1 : lengthUnit === 'in' ? 0.0254 : 0.1;

/**
 * The smallest change of one dimension by which a verdict clears, limits counted: of each dimension that carries it, and of those that
 * its formula hangs on, sought by working the margin out anew with all that follows from the change. The nearest first, by its share of the dimension.
 */
export function dimensionRemedies(
  question: Question,
  verdict: Verdict,
  on: Judging,
  follower: FormulaFollower,
  lengthUnit: LengthUnit,
): readonly DimensionRemedy[] {
  const needed = -verdict.band.minus;
  const roots = new Set<DimensionId>();
  for (const { dimension } of verdict.shares.slice(0, TRIED)) {
    for (const root of follower.rootsOf(dimension)) if (roots.size < TRIED) roots.add(root);
  }
  const found: { readonly remedy: DimensionRemedy; readonly share: number }[] = [];
  for (const root of roots) {
    const record = on.numbers.record(root);
    const from = on.numbers.resolved(root)?.value;
    if (record?.kind !== 'dimension' || from === undefined || !isLengthOrAngle(record)) continue;
    const step = stepOf(lengthUnit, on.numbers.resolved(root)?.unit === 'angle');
    const by = leastChange(question, on, follower, root, from, needed, step);
    if (by === undefined) continue;
    const share = Math.abs(by) / Math.max(Math.abs(from), step);
    found.push({ remedy: { is: 'dimension', dimension: root, from, to: roundTo(from + by, step) }, share });
  }
  found.sort((a, b) => a.share - b.share || (a.remedy.dimension < b.remedy.dimension ? -1 : 1));
  return found.slice(0, NAMED).map(({ remedy }) => remedy);
}

function isLengthOrAngle({ measure }: Dimension): boolean {
  if (measure.type === 'between') return true;
  const { form } = measure;
  return form === 'diameter' || form === 'radius' || form === 'length' || form === 'angle';
}

/** To a whole step, without the dust of the division. */
const roundTo = (value: number, step: number): number => Number((Math.round(value / step) * step).toPrecision(12));

/** The least change of the root by which the least margin is as much as is needed; undefined where none is found. */
function leastChange(
  question: Question,
  on: Judging,
  follower: FormulaFollower,
  root: DimensionId,
  from: number,
  needed: number,
  step: number,
): number | undefined {
  const most = Math.max(LARGEST_SHARE * Math.abs(from), step);
  const shortOf = (by: number): number => {
    const changes = follower.changesWith(root, by);
    return changes ? leastMargin(question, on.worlds.changed(changes)) - needed : Number.NaN;
  };
  const start = leastMargin(question, on.worlds.drawn) - needed;
  const tries = [step, -step].map((by) => ({ by, gain: shortOf(by) - start })).filter(({ gain }) => gain > 1e-9);
  let best: number | undefined;
  for (const { by: first, gain } of tries) {
    let by = (-start / gain) * first;
    for (let i = 0; i < STEPS && Math.abs(by) <= most; i++) {
      // Outwards to a whole step, so that what is written down clears.
      const written = roundTo(from + by + Math.sign(first) * step * 0.499_999, step) - from;
      if (best !== undefined && Math.abs(written) >= Math.abs(best)) break;
      const short = shortOf(written);
      if (Number.isNaN(short)) break;
      if (short >= -NEAR_NOTHING_MM) {
        best = drawnIn(written, step, from, shortOf);
        break;
      }
      // From here on as steeply as it went so far, and never less than a step farther.
      const slope = (short - start) / written;
      const farther = Math.abs(slope) > 1e-9 ? -short / slope : 0;
      by = written + Math.sign(first) * Math.max(Math.abs(farther), step);
    }
  }
  return best;
}

/** Where the first change that was found is more than is needed, a smaller one that still clears. */
function drawnIn(enough: number, step: number, from: number, shortOf: (by: number) => number): number {
  let [little, much] = [0, enough];
  for (let i = 0; i < STEPS && Math.abs(much - little) > 1.5 * step; i++) {
    const half = roundTo(from + (little + much) / 2, step) - from;
    if (half === little || half === much) break;
    if (shortOf(half) >= -NEAR_NOTHING_MM) much = half;
    else little = half;
  }
  return much;
}
