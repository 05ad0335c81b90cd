import type { BodyId } from '../base/ids.ts';
import type { Axis } from '../build/station.ts';
import type { ExactShape, Move } from '../solid/placed.ts';

/** A simple solid of a pattern, in the part's own frame and at the casting's size: contraction comes last. */
export interface PatternPiece {
  /** Stable: the body's id, with what was made of it. */
  readonly key: string;
  readonly name: string;
  /** Undefined of a lug. */
  readonly body: BodyId | undefined;
  readonly is: 'body' | 'print' | 'lug';
  readonly adds: boolean;
  /** A core makes it: it is no part of the draw. */
  readonly cored: boolean;
  readonly shape: ExactShape;
  readonly moves: readonly Move[];
  /** Widened towards the parting by the kernel, where its shape has no exact form with draft. */
  readonly taper: Taper | undefined;
}

/** Draft on a body that lies across the draw. */
export interface Taper {
  readonly draw: Axis;
  /** Where mould or pattern parts along the draw. */
  readonly partingMm: number;
  /** Tangent of the draft. */
  readonly slope: number;
}

/** What a body widens by at a place along the draw, mm on each side; broken at the parting, straight on either side of it. */
export interface Growth {
  at(place: number): number;
  /** The place at which it is broken, where that lies within the body. */
  readonly breaks: number | undefined;
}

/**
 * Draft is added metal: nothing at the end that is farthest from the parting, most at the parting, and on both sides of it the
 * same, so that the halves meet. A body wholly to one side begins at its own far end.
 */
export function growthOf(low: number, high: number, parting: number, slope: number): Growth {
  if (parting <= low) return { at: (place) => (high - place) * slope, breaks: undefined };
  if (parting >= high) return { at: (place) => (place - low) * slope, breaks: undefined };
  const most = Math.max(parting - low, high - parting);
  return { at: (place) => (most - Math.abs(place - parting)) * slope, breaks: parting };
}
