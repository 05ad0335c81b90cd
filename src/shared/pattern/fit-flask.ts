import type { Machine } from '../build/machine.ts';
import { type Axis, axes } from '../build/station.ts';
import { readFigures } from '../plan/machine-figures-read.ts';
import type { LengthUnit } from '../quantity/kind.ts';
import type { Vec3 } from '../solid/placed.ts';
import { type PracticeFigure, patternPractice } from '../tables/pattern-practice.ts';
import type { PatternUnknown } from './pattern-unknown.ts';

/** How a pattern stands in a flask, with the sand that is left round it. Gates and risers still need their own room. */
export interface FlaskFit {
  /** The part's axes along the length and the width of the flask, in the better of the two ways. */
  readonly along: readonly [Axis, Axis];
  /** Sand at the ends, at the sides, under and over, mm: the pattern in the middle, cover asked for under it. */
  readonly coverMm: { readonly ends: number; readonly sides: number; readonly under: number; readonly over: number };
  readonly asksAround: PracticeFigure;
  readonly asksAbove: PracticeFigure;
  readonly fits: boolean;
  /** By how much it is too small, mm, where it is. */
  readonly shortMm: { readonly length: number; readonly width: number; readonly height: number };
}

export interface FlaskGiven {
  readonly flask: Machine;
  /** Of the pattern, prints included, coating left out, mm along X, Y and Z. */
  readonly sizeMm: Vec3;
  readonly coatingMm: number;
  /** The axis that stands upright in the mould. */
  readonly up: Axis;
  readonly lengthUnit: LengthUnit;
}

/** Whether a pattern goes into a flask with sand all round it, either way round. */
export function fitFlask({ flask, sizeMm, coatingMm, up, lengthUnit }: FlaskGiven): {
  readonly fit: FlaskFit | undefined;
  readonly unknown: readonly PatternUnknown[];
} {
  const { values } = readFigures(flask, lengthUnit);
  const missing = (['insideLength', 'insideWidth', 'dragHeight'] as const).filter((key) => !values.has(key));
  if (missing.length > 0) {
    return { fit: undefined, unknown: missing.map((key) => ({ is: 'figure', machine: flask.id, key })) };
  }
  const [length, width] = [values.get('insideLength')!, values.get('insideWidth')!];
  const height = values.get('dragHeight')! + (values.get('copeHeight') ?? 0);
  const size = (axis: Axis) => sizeMm[axes.indexOf(axis)]! + 2 * coatingMm;
  const level = axes.filter((axis) => axis !== up) as [Axis, Axis];
  const ways = [level, [level[1], level[0]] as const].map((along) => fitOf(along, length, width, height, size, up));
  const [one, other] = ways as [FlaskFit, FlaskFit];
  return { fit: lacks(other) < lacks(one) ? other : one, unknown: [] };
}

const lacks = ({ shortMm, coverMm }: FlaskFit): number => {
  const short = shortMm.length + shortMm.width + shortMm.height;
  // Where both go in, the one with more sand at its nearest side.
  return short > 0 ? short : -Math.min(coverMm.ends, coverMm.sides);
};

function fitOf(
  along: readonly [Axis, Axis],
  length: number,
  width: number,
  height: number,
  size: (axis: Axis) => number,
  up: Axis,
): FlaskFit {
  const [asksAround, asksAbove] = [patternPractice.coverAround, patternPractice.coverAbove];
  const ends = (length - size(along[0])) / 2;
  const sides = (width - size(along[1])) / 2;
  const under = asksAround.value;
  const over = height - size(up) - under;
  const shortMm = {
    length: Math.max(0, 2 * (asksAround.value - ends)),
    width: Math.max(0, 2 * (asksAround.value - sides)),
    height: Math.max(0, asksAbove.value - over),
  };
  const fits = shortMm.length === 0 && shortMm.width === 0 && shortMm.height === 0;
  return { along, coverMm: { ends, sides, under, over }, asksAround, asksAbove, fits, shortMm };
}
