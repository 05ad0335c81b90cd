import { expect } from 'vitest';
import { bodiesOf, buildOf } from '../../src/shared/build/look-up.ts';
import type { BuildRecord } from '../../src/shared/build/records.ts';
import { createDrawing } from '../../src/shared/drawing/create-drawing.ts';
import type { Kernel, KernelSolid } from '../../src/shared/solid/manifold/kernel.ts';
import { loadKernel } from '../../src/shared/solid/manifold/load-kernel.ts';
import { meshOfShape, movedMesh } from '../../src/shared/solid/mesh/mesh-of-shape.ts';
import { placeBodies } from '../../src/shared/solid/place-bodies.ts';
import type { PartMesh, PlacedBody } from '../../src/shared/solid/placed.ts';
import type { BodySketch } from './sketch-bodies.ts';

let kernel: Promise<Kernel> | undefined;

/** The bodies of a sketch where they stand; each must have a shape. */
function placedOf(sketch: BodySketch, more: readonly BuildRecord[] = []): readonly PlacedBody[] {
  const build = buildOf([...sketch.records(), ...more]);
  const bodies = bodiesOf(build, sketch.part.id);
  return placeBodies(sketch.part.id, { bodies, get: (id) => build.get(id) }, createDrawing(build));
}

/** The mesh of a part, its bodies added and taken away plainly one after another. */
export async function meshOfBodies(bodies: readonly PlacedBody[]): Promise<PartMesh> {
  kernel ??= loadKernel();
  const { take, unite, subtract, meshOf } = await kernel;
  const faces = new Map<number, readonly [body: number, face: readonly number[]]>();
  let whole: KernelSolid | undefined;
  bodies.forEach(({ shape, moves, record, problem }, index) => {
    if (!shape) throw new Error(`${record.name} has no shape: ${JSON.stringify(problem)}`);
    const { mesh, facets } = meshOfShape(shape);
    const copies = moves.map((move) => {
      const taken = take(movedMesh(mesh, move));
      if (!taken.ok) throw new Error(`${record.name} is not taken: ${taken.error}`);
      faces.set(taken.value.source, [index, facets.map(({ face }) => face)]);
      return taken.value.solid;
    });
    const body = unite(copies);
    if (!body) throw new Error(`${record.name} is nothing`);
    if (!record.adds) whole = whole && subtract(whole, body);
    else whole = unite(whole ? [whole, body] : [body]);
  });
  if (!whole) throw new Error('nothing is left');
  const { vertices, triangles, facetOf, runs } = meshOf(whole);
  const bodyOf = new Uint16Array(triangles.length / 3);
  const faceOf = new Uint32Array(triangles.length / 3);
  for (const { source, from, to } of runs) {
    const known = faces.get(source);
    expect(known).toBeDefined();
    for (let t = from; t < to; t++) {
      bodyOf[t] = known![0];
      faceOf[t] = known![1][facetOf[t]!]!;
    }
  }
  return { vertices, triangles, bodyOf, faceOf, bodies: bodies.map(({ record }) => record.id) };
}

/** The mesh of a sketch. */
export const meshOfSketch = (sketch: BodySketch): Promise<PartMesh> => meshOfBodies(placedOf(sketch));
