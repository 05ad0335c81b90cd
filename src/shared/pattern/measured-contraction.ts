import type { PartId, StationId } from '../base/ids.ts';
import type { Pattern } from '../build/pattern.ts';
import { type Axis, axes } from '../build/station.ts';
import { nameKey } from '../formula/name-key.ts';
import { parseWritten } from '../formula/parse-written.ts';
import type { Numbers } from '../plan/numbers.ts';
import type { LengthUnit } from '../quantity/kind.ts';

/** The founder's own contraction of an alloy along an axis: a plain row, to be kept beyond the build that it was learnt in. */
export interface MeasuredContraction {
  /** By name. */
  readonly alloy: string;
  readonly axis: Axis;
  readonly percent: number;
  /** Lines that were measured on pattern and casting both. */
  readonly count: number;
  /** Between the least and the greatest of the single lines, in percentage points. */
  readonly spread: number;
}

/** A length that was measured on a pattern and on its casting. */
export interface MeasuredPair {
  readonly alloy: string;
  readonly axis: Axis;
  readonly patternMm: number;
  readonly castMm: number;
}

/** Shorter lengths tell more of the rule that they were measured with than of the metal, mm. */
const SHORTEST_MM = 20;
/** A pair beyond this is a slip, percent either way. */
const MOST_PERCENT = 10;

/**
 * The contractions that pairs of measurements come to, per alloy and axis. s = Σ(pattern − casting) / Σ casting: long lengths count
 * for more, as the error of measuring is the same on all.
 */
export function contractionRows(pairs: readonly MeasuredPair[]): readonly MeasuredContraction[] {
  const groups = new Map<string, MeasuredPair[]>();
  for (const pair of pairs) {
    if (!(pair.castMm >= SHORTEST_MM) || Math.abs(percentOf(pair)) > MOST_PERCENT) continue;
    const key = `${pair.axis} ${nameKey(pair.alloy.trim())}`;
    const group = groups.get(key);
    if (group) group.push(pair);
    else groups.set(key, [pair]);
  }
  return [...groups.values()].map((group) => {
    const { alloy, axis } = group[0]!;
    const cast = group.reduce((sum, { castMm }) => sum + castMm, 0);
    const pattern = group.reduce((sum, { patternMm }) => sum + patternMm, 0);
    const single = group.map(percentOf);
    const spread = Math.max(...single) - Math.min(...single);
    return { alloy, axis, percent: 100 * (pattern / cast - 1), count: group.length, spread };
  });
}

const percentOf = ({ patternMm, castMm }: MeasuredPair): number => 100 * (patternMm / castMm - 1);

/**
 * What the patterns of a build and their castings tell. Only lengths along one axis count: those between two stations, and the
 * lengths overall (`box:X`).
 *
 * @param alloyOf the alloy that a part is poured in, by the name of its row; undefined where it is not known.
 */
export function measuredPairs(
  patterns: readonly Pattern[],
  alloyOf: (part: PartId) => string | undefined,
  numbers: Pick<Numbers, 'record'>,
  lengthUnit: LengthUnit,
): readonly MeasuredPair[] {
  const lengthOf = (text: string): number | undefined => {
    const read = parseWritten(text, { kind: 'length', lengthUnit });
    return read.ok && read.value.is === 'quantity' ? Math.abs(read.value.value) : undefined;
  };
  return patterns.flatMap(({ part, measured, cast }) => {
    const alloy = alloyOf(part);
    if (alloy === undefined) return [];
    return cast.flatMap(({ of, value }): readonly MeasuredPair[] => {
      const axis = axisOfLine(of, numbers);
      const before = measured.findLast((line) => line.of === of);
      const [patternMm, castMm] = [before && lengthOf(before.value), lengthOf(value)];
      return axis && patternMm !== undefined && castMm !== undefined ? [{ alloy, axis, patternMm, castMm }] : [];
    });
  });
}

/** The axis that a line of the inspection sheet runs along, by its key; undefined where it runs along none or is no longer there. */
function axisOfLine(key: string, numbers: Pick<Numbers, 'record'>): Axis | undefined {
  if (key.startsWith('box:')) return axes.find((axis) => key === `box:${axis}`);
  const record = numbers.record(key as StationId);
  if (record?.kind !== 'dimension' || record.measure.type !== 'between') return undefined;
  const station = numbers.record(record.measure.from);
  return station?.kind === 'station' ? station.axis : undefined;
}
