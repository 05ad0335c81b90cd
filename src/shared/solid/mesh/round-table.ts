import { handOf } from '../moves.ts';
import { frameOf } from './body-mesh.ts';
import { facetIn, type Source } from './source.ts';

/**
 * The round facets of a source as plain numbers, for loops that run over every triangle at every edit. Facet n has its row at
 * n · {@link ROW}: see the places below; `RADIUS` is NaN for a flat one.
 */
export const ROW = 16;
/** A point of the axis, where a = 0. */
export const ORIGIN = 0;
/** Unit vectors along the axis, from it to the middle of the facet, and along the facet square to both. */
export const ALONG = 3;
export const MIDDLE = 6;
export const ACROSS = 9;
/** Radius of the true surface at a along the axis: RADIUS + SLOPE · a. */
export const RADIUS = 12;
export const SLOPE = 13;
/** Distance of the facet from the axis over the radius. */
export const COS_HALF = 14;
/** 1 where across × along points to the middle, else −1. */
export const HAND = 15;

const tables = new WeakMap<Source, Float64Array>();

export function roundTable(source: Source): Float64Array {
  const before = tables.get(source);
  if (before) return before;
  const { body, moves } = source;
  const count = body.facets.length * moves.length;
  const table = new Float64Array(count * ROW).fill(Number.NaN);
  const frame = frameOf(body.axis);
  for (let number = 0; number < count; number++) {
    const { facet, move } = facetIn(source, number);
    if (!facet.round) continue;
    const { u, v, radius, slope, middleU, middleV, cosHalf } = facet.round;
    const at = number * ROW;
    for (let k = 0; k < 3; k++) {
      // Columns of the move: where u, v and a of the body point to in the part.
      const [toU, toV, toA] = [move[4 * k + frame.u]!, move[4 * k + frame.v]!, move[4 * k + frame.a]!];
      table[at + ORIGIN + k] = move[4 * k + 3]! + toU * u + toV * v;
      table[at + ALONG + k] = toA;
      table[at + MIDDLE + k] = toU * middleU + toV * middleV;
      table[at + ACROSS + k] = toV * middleU - toU * middleV;
    }
    table[at + RADIUS] = radius;
    table[at + SLOPE] = slope;
    table[at + COS_HALF] = cosHalf;
    table[at + HAND] = frame.left === (handOf(move) === -1) ? 1 : -1;
  }
  tables.set(source, table);
  return table;
}
