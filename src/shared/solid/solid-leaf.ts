import { err, ok, type Result } from '../base/result.ts';
import type { ClosedMesh, Kernel, KernelSolid, MeshFault } from './manifold/kernel.ts';
import type { BodyMesh } from './mesh/body-mesh.ts';
import { meshOfShape, movedMesh } from './mesh/mesh-of-shape.ts';
import type { Fineness } from './mesh/segments.ts';
import { facetNumber, type Source } from './mesh/source.ts';
import type { ExactShape, Move, Vec3 } from './placed.ts';

/** The solid of one body with all its copies. */
export interface Leaf extends Source {
  readonly shape: ExactShape;
  readonly solid: KernelSolid;
  /** The numbers by which the kernel knows its triangles. */
  readonly sources: readonly number[];
  readonly min: Vec3;
  readonly max: Vec3;
}

/** Makes the solid of a body; whoever asks for it releases `solid`. */
export function makeLeaf(
  kernel: Kernel,
  shape: ExactShape,
  moves: readonly Move[],
  fineness: Fineness,
): Result<Leaf, MeshFault> {
  const { body, meshes } = meshesOf(shape, moves, fineness);
  const first = kernel.reserve(meshes.length);
  const sources = meshes.map((_, i) => first + i);
  const taken = takeAll(kernel, meshes, sources);
  if (!taken.ok) return taken;
  return ok({ body, moves, shape, solid: taken.value, sources, ...kernel.boxOf(taken.value) });
}

/** A millionth of a millimetre holds about a thousand of these steps; a power of two, so that rounding to them is exact. */
const STEPS_PER_MM = 2 ** 30;

/**
 * Places that are the same on the drawing come out a rounding apart where one is worked out by a mirror or a turn. The kernel
 * takes them at their word: faces 1e-14 mm apart leave a crack, or none, as it happens to come to them. On a grid they are one.
 */
export const onGrid = (mm: number): number => Math.round(mm * STEPS_PER_MM) / STEPS_PER_MM + 0;

/** A body with all its copies: one mesh where they stand apart, which costs no union, else one for each. */
export function meshesOf(
  shape: ExactShape,
  moves: readonly Move[],
  fineness: Fineness,
): { readonly body: BodyMesh; readonly meshes: readonly ClosedMesh[] } {
  const body = meshOfShape(shape, fineness);
  const copies = moves.map((move, copy): ClosedMesh => {
    const mesh = movedMesh(body.mesh, move);
    const facetOf = mesh.facetOf.map((facet) => facetNumber(body, copy, facet));
    return { ...mesh, vertices: mesh.vertices.map(onGrid), facetOf };
  });
  return { body, meshes: standApart(copies) ? [joined(copies)] : copies };
}

/** The solid of some meshes, each known by its number; whoever asks for it releases it. */
export function takeAll(
  kernel: Kernel,
  meshes: readonly ClosedMesh[],
  sources: readonly number[],
): Result<KernelSolid, MeshFault> {
  const solids: KernelSolid[] = [];
  try {
    for (const [i, mesh] of meshes.entries()) {
      const taken = kernel.take(mesh, sources[i]);
      if (!taken.ok) return taken;
      solids.push(taken.value.solid);
    }
    const solid = solids.length === 1 ? solids.pop() : kernel.unite(solids);
    return solid ? ok(solid) : err('no triangles');
  } finally {
    for (const solid of solids) kernel.release(solid);
  }
}

export function boxOf({ vertices }: ClosedMesh): { readonly min: Vec3; readonly max: Vec3 } {
  const min: [number, number, number] = [Infinity, Infinity, Infinity];
  const max: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  for (let i = 0; i < vertices.length; i++) {
    const k = i % 3;
    min[k] = Math.min(min[k]!, vertices[i]!);
    max[k] = Math.max(max[k]!, vertices[i]!);
  }
  return { min, max };
}

export interface Box {
  readonly min: Vec3;
  readonly max: Vec3;
}

/** Whether one box lies within another, borders included. */
export const isWithin = (inner: Box, outer: Box): boolean =>
  inner.min.every((from, k) => from >= outer.min[k]!) && inner.max.every((to, k) => to <= outer.max[k]!);

/** Whether two boxes have a point in common, borders included. */
export const overlap = (a: Box, b: Box): boolean =>
  a.min.every((from, k) => from <= b.max[k]!) && b.min.every((from, k) => from <= a.max[k]!);

function standApart(copies: readonly ClosedMesh[]): boolean {
  const boxes = copies.map(boxOf).sort((a, b) => a.min[0] - b.min[0]);
  return boxes.every((box, i) => {
    for (let j = i + 1; j < boxes.length && boxes[j]!.min[0] <= box.max[0]; j++)
      if (overlap(box, boxes[j]!)) return false;
    return true;
  });
}

function joined(copies: readonly ClosedMesh[]): ClosedMesh {
  const [first] = copies;
  if (first && copies.length === 1) return first;
  const count = (of: (mesh: ClosedMesh) => { readonly length: number }) =>
    copies.reduce((sum, mesh) => sum + of(mesh).length, 0);
  const vertices = new Float64Array(count((mesh) => mesh.vertices));
  const triangles = new Uint32Array(count((mesh) => mesh.triangles));
  const facetOf = new Uint32Array(triangles.length / 3);
  let [v, t] = [0, 0];
  for (const mesh of copies) {
    vertices.set(mesh.vertices, v);
    const base = v / 3;
    triangles.set(
      mesh.triangles.map((corner) => corner + base),
      t,
    );
    facetOf.set(mesh.facetOf, t / 3);
    v += mesh.vertices.length;
    t += mesh.triangles.length;
  }
  return { vertices, triangles, facetOf };
}
