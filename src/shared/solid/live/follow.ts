import type { ClosedMesh, KernelMesh } from '../manifold/kernel.ts';
import type { Vec3 } from '../placed.ts';
import { type Box, overlap } from '../solid-leaf.ts';
import type { CellBody } from './cell-body.ts';
import type { Cell } from './cells.ts';
import { type Motion, type Moving, motionsOf } from './motions.ts';
import { isFree, regionOf, triangleMoves } from './swept.ts';

/** How meshes of before become those of now. */
export interface Following {
  /** Undefined where a mesh does not look as it should. */
  carry(mesh: KernelMesh): KernelMesh | undefined;
  /** The box about a mesh, in float64 where that is known. */
  carryBox(before: Box, mesh: KernelMesh): Box;
}

/** Facets of a source that move, by their numbers. */
interface Carried {
  readonly to: number;
  readonly motionOf: ReadonlyMap<number, Motion>;
}

/** A vertex is where its motion begins, but for the rounding of meshes, in mm. */
const NEAR_MM = 1e-3;

/**
 * Many an edit only moves a flat face on, or widens a cylinder, while everything that reaches through the room that it sweeps
 * runs straight through. No edge or corner comes or goes then: the vertices of the moved faces move along, and that is all.
 *
 * @param before @param now bodies of a cell, in list order.
 */
export function following(before: readonly CellBody[], now: readonly CellBody[], cell: Cell): Following | undefined {
  if (before.length !== now.length) return undefined;
  const movings = new Map<CellBody, Moving>();
  for (const [i, old] of before.entries()) {
    const body = now[i]!;
    if (body === old) continue;
    if (body.adds !== old.adds || body.machined !== old.machined) return undefined;
    if (body.leaf === old.leaf) continue;
    const moving = motionsOf(old.leaf, body.leaf);
    if (!moving) return undefined;
    movings.set(old, moving);
  }
  const motions = new Map<string, Motion>();
  for (const { motions: own } of movings.values()) for (const motion of own) motions.set(motion.key, motion);
  const regions = [...motions.values()].map((motion) => regionOf(motion, movings.values()));
  const areApart = regions.every((one, i) => regions.every((other, j) => j <= i || !overlap(one.box, other.box)));
  if (!areApart || !regions.every((region) => isFree(region, before, movings, cell))) return undefined;

  const carried = new Map<number, Carried>();
  for (const [i, old] of before.entries()) {
    const moving = movings.get(old);
    const to = now[i]!.leaf.sources[0]!;
    if (moving) carried.set(old.leaf.sources[0]!, { to, motionOf: movingFacets(old.leaf.meshes[0]!, moving) });
  }
  return {
    carry: (mesh) => carry(mesh, carried),
    carryBox: (box, mesh) => carryBox(box, mesh, now),
  };
}

/** The facets all of whose triangles move, but for the ends of a cylinder that is widened: what lies in them stays. */
function movingFacets(mesh: ClosedMesh, moving: Moving): ReadonlyMap<number, Motion> {
  const found = new Map<number, Motion>();
  const others = new Set<number>();
  for (let t = 0; t < mesh.facetOf.length; t++) {
    const facet = mesh.facetOf[t]!;
    const motion = triangleMoves(mesh, moving, t);
    if (motion) found.set(facet, motion);
    else others.add(facet);
  }
  for (const facet of others) found.delete(facet);
  return found;
}

function carry(mesh: KernelMesh, carried: ReadonlyMap<number, Carried>): KernelMesh | undefined {
  const { triangles, facetOf } = mesh;
  const vertices = Float32Array.from(mesh.vertices);
  const movedBy = new Map<number, Motion>();
  for (const { source, from, to } of mesh.runs) {
    const one = carried.get(source);
    if (!one) continue;
    for (let t = from; t < to; t++) {
      const motion = one.motionOf.get(facetOf[t]!);
      if (!motion) continue;
      for (let i = 3 * t; i < 3 * t + 3; i++) {
        const vertex = triangles[i]!;
        const earlier = movedBy.get(vertex);
        if (earlier === motion) continue;
        if (earlier || !move(vertices, 3 * vertex, motion)) return undefined;
        movedBy.set(vertex, motion);
      }
    }
  }
  if (movedBy.size > 0 && isFolded(mesh, vertices, movedBy)) return undefined;
  const runs = mesh.runs.map((run) => ({ ...run, source: carried.get(run.source)?.to ?? run.source }));
  return { vertices, triangles, facetOf, runs };
}

/** Whether a triangle has turned over: a wall that is not convex may be cut into triangles that a corner leaves. */
function isFolded(
  { vertices: before, triangles }: KernelMesh,
  now: Float32Array,
  moved: ReadonlyMap<number, unknown>,
): boolean {
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [triangles[t]!, triangles[t + 1]!, triangles[t + 2]!];
    if (!moved.has(a) && !moved.has(b) && !moved.has(c)) continue;
    const [was, is] = [normalOf(before, 3 * a, 3 * b, 3 * c), normalOf(now, 3 * a, 3 * b, 3 * c)];
    const along = was[0] * is[0] + was[1] * is[1] + was[2] * is[2];
    if (along <= 0 && Math.hypot(...is) > SLIVER_MM2) return true;
  }
  return false;
}

/** Triangles of no more than about this area have no side, mm². */
const SLIVER_MM2 = 1e-5;

function normalOf(vertices: Float32Array, a: number, b: number, c: number): Vec3 {
  const [x, y, z] = [vertices[a]!, vertices[a + 1]!, vertices[a + 2]!];
  const [ex, ey, ez] = [vertices[b]! - x, vertices[b + 1]! - y, vertices[b + 2]! - z];
  const [fx, fy, fz] = [vertices[c]! - x, vertices[c + 1]! - y, vertices[c + 2]! - z];
  return [ey * fz - ez * fy, ez * fx - ex * fz, ex * fy - ey * fx];
}

/** @returns whether the vertex was where it should be. */
function move(vertices: Float32Array, at: number, motion: Motion): boolean {
  if (motion.is === 'shift') {
    if (Math.abs(vertices[at + motion.k]! - motion.from) > NEAR_MM) return false;
    vertices[at + motion.k] = motion.to;
    return true;
  }
  const { i, j, u, v, from, to, cosHalf } = motion;
  const [du, dv] = [vertices[at + i]! - u, vertices[at + j]! - v];
  const distance = Math.hypot(du, dv);
  if (distance > from + NEAR_MM || distance < from * cosHalf - NEAR_MM) return false;
  vertices[at + i] = u + (du * to) / from;
  vertices[at + j] = v + (dv * to) / from;
  return true;
}

/** Borders of bodies are known exactly; where none is there, the mesh says where the box ends. */
function carryBox(before: Box, { vertices }: KernelMesh, bodies: readonly CellBody[]): Box {
  const min: [number, number, number] = [Infinity, Infinity, Infinity];
  const max: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  for (let i = 0; i < vertices.length; i++) {
    const k = i % 3;
    min[k] = Math.min(min[k]!, vertices[i]!);
    max[k] = Math.max(max[k]!, vertices[i]!);
  }
  const exact = (k: number, rounded: number): number =>
    [before.min[k]!, before.max[k]!, ...bodies.flatMap((body) => [body.min[k]!, body.max[k]!])].find(
      (value) => Math.fround(value) === rounded,
    ) ?? rounded;
  const all = (of: typeof min) => [exact(0, of[0]), exact(1, of[1]), exact(2, of[2])] as const;
  return { min: all(min), max: all(max) };
}
