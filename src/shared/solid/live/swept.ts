import type { ClosedMesh } from '../manifold/kernel.ts';
import { type Box, overlap } from '../solid-leaf.ts';
import type { CellBody } from './cell-body.ts';
import type { Cell } from './cells.ts';
import type { Motion, Moving } from './motions.ts';

/** The room that a motion sweeps, with a margin. */
export interface Region {
  readonly motion: Motion;
  readonly box: Box;
}

/** So much room is left about what moves, in mm. */
const MARGIN_MM = 1e-3;
/** A face whose normal has no larger share along an axis runs along it. */
const ALONG = 1e-9;

export function regionOf(motion: Motion, movings: Iterable<Moving>): Region {
  const min: [number, number, number] = [Infinity, Infinity, Infinity];
  const max: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  const put = (k: number, value: number) => {
    min[k] = Math.min(min[k]!, value - MARGIN_MM);
    max[k] = Math.max(max[k]!, value + MARGIN_MM);
  };
  for (const { leaf, motionOf } of movings) {
    const { vertices } = leaf.meshes[0]!;
    motionOf.forEach((one, i) => {
      if (one?.key === motion.key) for (let k = 0; k < 3; k++) put(k, vertices[3 * i + k]!);
    });
  }
  if (motion.is === 'shift') put(motion.k, motion.to);
  else {
    for (const sign of [-1, 1]) {
      put(motion.i, motion.u + sign * Math.max(motion.from, motion.to));
      put(motion.j, motion.v + sign * Math.max(motion.from, motion.to));
    }
  }
  return { motion, box: { min, max } };
}

/** Whether all that is in a region moves along, or runs straight through: walls along a shift, planes across a swelling. */
export function isFree(
  region: Region,
  bodies: readonly CellBody[],
  movings: ReadonlyMap<CellBody, Moving>,
  cell: Cell,
): boolean {
  const { motion, box } = region;
  const lateral = motion.is === 'shift' ? [motion.k] : [motion.i, motion.j];
  // Walls of the cell are faces too.
  if (lateral.some((k) => isWithin(cell.min[k]!, box, k) || isWithin(cell.max[k]!, box, k))) return false;
  for (const body of bodies) {
    if (!overlap(body, box)) continue;
    const moving = movings.get(body);
    for (const mesh of body.leaf.meshes) if (!isMeshFree(mesh, region, moving)) return false;
  }
  return true;
}

const isWithin = (at: number, box: Box, k: number): boolean => at >= box.min[k]! && at <= box.max[k]!;

function isMeshFree(mesh: ClosedMesh, region: Region, moving: Moving | undefined): boolean {
  const { vertices, triangles } = mesh;
  const { motion } = region;
  const isMoving = (vertex: number) => moving?.motionOf[vertex]?.key === motion.key;
  for (let i = 0; i < vertices.length; i += 3) {
    if (!isMoving(i / 3) && isInside(region, vertices[i]!, vertices[i + 1]!, vertices[i + 2]!)) return false;
  }
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [triangles[t]!, triangles[t + 1]!, triangles[t + 2]!];
    const count = Number(isMoving(a)) + Number(isMoving(b)) + Number(isMoving(c));
    if (count === 3 || (count === 0 && !reaches(region, vertices, a, b, c))) continue;
    if (!isStraight(motion, vertices, a, b, c)) return false;
  }
  return true;
}

/** Whether a triangle runs along a shift, or lies square across the line of a swelling. */
function isStraight(motion: Motion, vertices: Float64Array, a: number, b: number, c: number): boolean {
  const [x, y, z] = [0, 1, 2].map((k) => vertices[3 * a + k]!) as [number, number, number];
  const [ex, ey, ez] = [vertices[3 * b]! - x, vertices[3 * b + 1]! - y, vertices[3 * b + 2]! - z];
  const [fx, fy, fz] = [vertices[3 * c]! - x, vertices[3 * c + 1]! - y, vertices[3 * c + 2]! - z];
  const normal = [ey * fz - ez * fy, ez * fx - ex * fz, ex * fy - ey * fx];
  const most = ALONG * Math.hypot(...normal);
  return motion.is === 'shift'
    ? Math.abs(normal[motion.k]!) <= most
    : Math.abs(normal[motion.i]!) <= most && Math.abs(normal[motion.j]!) <= most;
}

/** The motion of a triangle all of whose corners move alike; not that of the ends of a cylinder that is widened. */
export function triangleMoves({ vertices, triangles }: ClosedMesh, moving: Moving, t: number): Motion | undefined {
  const [a, b, c] = [triangles[3 * t]!, triangles[3 * t + 1]!, triangles[3 * t + 2]!];
  const motion = moving.motionOf[a];
  if (!motion || moving.motionOf[b] !== motion || moving.motionOf[c] !== motion) return undefined;
  return motion.is === 'swell' && isStraight(motion, vertices, a, b, c) ? undefined : motion;
}

const distances = ({ from, to, cosHalf }: Motion & { is: 'swell' }) => ({
  low: Math.min(from, to) * cosHalf - MARGIN_MM,
  high: Math.max(from, to) + MARGIN_MM,
});

function isInside({ motion, box }: Region, x: number, y: number, z: number): boolean {
  const at = [x, y, z];
  if (!at.every((value, k) => isWithin(value, box, k))) return false;
  if (motion.is === 'shift') return true;
  const { low, high } = distances(motion);
  const distance = Math.hypot(at[motion.i]! - motion.u, at[motion.j]! - motion.v);
  return distance >= low && distance <= high;
}

/** Whether a triangle may have a point in a region. */
function reaches({ motion, box }: Region, vertices: Float64Array, a: number, b: number, c: number): boolean {
  for (let k = 0; k < 3; k++) {
    const [p, q, r] = [vertices[3 * a + k]!, vertices[3 * b + k]!, vertices[3 * c + k]!];
    if (Math.max(p, q, r) < box.min[k]! || Math.min(p, q, r) > box.max[k]!) return false;
  }
  if (motion.is === 'shift') return true;
  const { low } = distances(motion);
  // The farthest point of a triangle is a corner.
  return [a, b, c].some(
    (vertex) =>
      Math.hypot(vertices[3 * vertex + motion.i]! - motion.u, vertices[3 * vertex + motion.j]! - motion.v) >= low,
  );
}
