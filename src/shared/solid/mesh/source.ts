import { handOf } from '../moves.ts';
import type { Move } from '../placed.ts';
import { type BodyMesh, type Facet, frameOf, type Round } from './body-mesh.ts';

/** What a mesh in the kernel was made from: one body and its copies. */
export interface Source {
  readonly body: BodyMesh;
  readonly moves: readonly Move[];
}

/** The number that the kernel knows a facet of a copy by. */
export const facetNumber = ({ facets }: BodyMesh, copy: number, facet: number): number => copy * facets.length + facet;

/** The facet that the kernel knows by a number, where it was moved to, and its face, numbered through all copies. */
export function facetIn(
  { body, moves }: Source,
  number: number,
): { readonly facet: Facet; readonly move: Move; readonly face: number } {
  const copy = Math.floor(number / body.facets.length);
  const facet = body.facets[number % body.facets.length]!;
  return { facet, move: moves[copy]!, face: copy * body.faces + facet.face };
}

/** Places seen from a round facet: along it, along the axis, and the hand in which a triangle's corners are seen. */
export interface RoundView {
  readonly round: Round;
  /** Place across the middle of the facet, square to the axis, in mm. */
  s(x: number, y: number, z: number): number;
  /** Place along the body's axis. */
  a(x: number, y: number, z: number): number;
  /** Point of the part at distance `m` from the axis in the middle direction, `s` across, `a` along. */
  point(m: number, s: number, a: number): readonly [number, number, number];
  readonly hand: 1 | -1;
}

/** The view of a facet that is round; undefined for a flat one. */
export function roundViewOf(body: BodyMesh, move: Move, { round }: Facet): RoundView | undefined {
  if (!round) return undefined;
  const frame = frameOf(body.axis);
  // Columns of the move: where u, v and a of the body point to in the part.
  const column = (k: number) => [move[k]!, move[4 + k]!, move[8 + k]!] as const;
  const [u, v, along] = [column(frame.u), column(frame.v), column(frame.a)];
  const shift = [move[3], move[7], move[11]] as const;
  const origin = [0, 1, 2].map((k) => shift[k]! + u[k]! * round.u + v[k]! * round.v) as [number, number, number];
  const { middleU, middleV } = round;
  const middle = [0, 1, 2].map((k) => u[k]! * middleU + v[k]! * middleV) as [number, number, number];
  const across = [0, 1, 2].map((k) => v[k]! * middleU - u[k]! * middleV) as [number, number, number];
  const dot = (w: readonly number[], x: number, y: number, z: number) =>
    w[0]! * (x - origin[0]) + w[1]! * (y - origin[1]) + w[2]! * (z - origin[2]);
  return {
    round,
    s: (x, y, z) => dot(across, x, y, z),
    a: (x, y, z) => dot(along, x, y, z),
    point: (m, s, a) => [
      origin[0] + middle[0] * m + across[0] * s + along[0] * a,
      origin[1] + middle[1] * m + across[1] * s + along[1] * a,
      origin[2] + middle[2] * m + across[2] * s + along[2] * a,
    ],
    hand: frame.left === (handOf(move) === -1) ? 1 : -1,
  };
}
