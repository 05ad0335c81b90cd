import { sameContent } from '../../drawing/keep.ts';
import { frameOf } from '../mesh/body-mesh.ts';
import { moved } from '../moves.ts';
import type { Move, Vec3 } from '../placed.ts';
import type { LiveLeaf } from './live-leaf.ts';

/** What some vertices of a body do between two edits. Two of one key are the same. */
export type Motion =
  /** From one place to another along axis `k`. */
  | { readonly is: 'shift'; readonly key: string; readonly k: number; readonly from: number; readonly to: number }
  /** From one radius to another about a line along axis `k` that passes through (u, v) of the axes i and j. */
  | {
      readonly is: 'swell';
      readonly key: string;
      readonly k: number;
      readonly i: number;
      readonly j: number;
      readonly u: number;
      readonly v: number;
      readonly from: number;
      readonly to: number;
      /** Distance of the facets from the line over the radius. */
      readonly cosHalf: number;
    };

/** How a body gets from one mesh to another of the same triangles. */
export interface Moving {
  readonly leaf: LiveLeaf;
  readonly motions: readonly Motion[];
  /** Per vertex. */
  readonly motionOf: readonly (Motion | undefined)[];
}

/** More than these are not worth looking at one by one. */
const MOST = 12;
/** Radii nearer than this are one, mm; the grid that corners lie on is a thousand times as fine. */
const SAME_MM = 1e-6;

/** Undefined where the body changes in another way. */
export function motionsOf(before: LiveLeaf, now: LiveLeaf): Moving | undefined {
  const [old, ...more] = before.meshes;
  const mesh = now.meshes[0];
  if (!old || !mesh || more.length > 0 || now.meshes.length > 1 || old.vertices.length !== mesh.vertices.length)
    return undefined;
  if (!sameContent(old.triangles, mesh.triangles) || !sameContent(old.facetOf, mesh.facetOf)) return undefined;
  const axes = new Set<number>();
  for (let i = 0; i < mesh.vertices.length; i++) if (mesh.vertices[i] !== old.vertices[i]) axes.add(i % 3);
  const [k, ...rest] = axes;
  const motions = new Map<string, Motion>();
  const motionOf: (Motion | undefined)[] = [];
  const put = (motion: Motion) => {
    const known = motions.get(motion.key) ?? motion;
    motions.set(known.key, known);
    motionOf.push(known);
  };
  for (let i = 0; i < mesh.vertices.length; i += 3) {
    if ([0, 1, 2].every((n) => mesh.vertices[i + n] === old.vertices[i + n])) motionOf.push(undefined);
    else if (k !== undefined && rest.length === 0) put(shift(k, old.vertices[i + k]!, mesh.vertices[i + k]!));
    else {
      const copy = Math.floor((i / mesh.vertices.length) * before.moves.length);
      const swell = swellAt(before, now, copy, old.vertices.subarray(i, i + 3), mesh.vertices.subarray(i, i + 3));
      if (!swell) return undefined;
      put(swell);
    }
  }
  return motions.size > MOST ? undefined : { leaf: before, motions: [...motions.values()], motionOf };
}

const shift = (k: number, from: number, to: number): Motion => ({
  is: 'shift',
  key: `${k} ${from} ${to}`,
  k,
  from,
  to,
});

function swellAt(before: LiveLeaf, now: LiveLeaf, copy: number, old: Float64Array, place: Float64Array) {
  const [was, is] = [before.shape, now.shape];
  const move = before.moves[copy]!;
  if (was.is !== 'turned' || is.is !== 'turned' || !sameContent(move, now.moves[copy])) return undefined;
  if (was.axis !== is.axis || was.u !== is.u || was.v !== is.v) return undefined;
  const cosHalf = now.body.facets.find(({ round }) => round)?.round?.cosHalf;
  const frame = frameOf(was.axis);
  const k = alongOf(move, frame.a);
  if (k === undefined || cosHalf === undefined || old[k] !== place[k]) return undefined;
  const [i, j] = [0, 1, 2].filter((one) => one !== k) as [number, number];
  const line: [number, number, number] = [0, 0, 0];
  line[frame.u] = was.u;
  line[frame.v] = was.v;
  const centre: Vec3 = moved(move, line);
  const radius = (at: Float64Array) => rounded(Math.hypot(at[i]! - centre[i]!, at[j]! - centre[j]!));
  const [from, to] = [radius(old), radius(place)];
  if (from < SAME_MM) return undefined;
  const key = `${k} ${centre[i]} ${centre[j]} ${from} ${to}`;
  return { is: 'swell', key, k, i, j, u: centre[i]!, v: centre[j]!, from, to, cosHalf } satisfies Motion;
}

const rounded = (mm: number): number => Math.round(mm / SAME_MM) * SAME_MM;

/** The axis that a move turns `axis` into; undefined where that is none of the three. */
function alongOf(move: Move, axis: number): number | undefined {
  const along = [0, 1, 2].filter((row) => move[4 * row + axis] !== 0);
  return along.length === 1 ? along[0] : undefined;
}
