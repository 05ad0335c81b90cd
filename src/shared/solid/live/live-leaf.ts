import type { ClosedMesh, Kernel, KernelSolid } from '../manifold/kernel.ts';
import type { Source } from '../mesh/source.ts';
import type { ExactShape, Move, Vec3 } from '../placed.ts';
import { type Box, boxOf, meshesOf, takeAll } from '../solid-leaf.ts';

/** A body with all its copies, of few facets; the kernel takes it in when it is first needed there. */
export interface LiveLeaf extends Source, Box {
  readonly shape: ExactShape;
  /** One for each of the meshes: the numbers by which the kernel knows their triangles. */
  readonly sources: readonly number[];
  /** A single one where no two copies can meet. */
  readonly meshes: readonly ClosedMesh[];
  /** It stays the leaf's. Undefined when the kernel does not take it. */
  solid(): KernelSolid | undefined;
  release(): void;
}

export function createLiveLeaf(kernel: Kernel, shape: ExactShape, moves: readonly Move[]): LiveLeaf {
  const { body, meshes } = meshesOf(shape, moves, 'coarse');
  const first = kernel.reserve(meshes.length);
  const sources = meshes.map((_, i) => first + i);
  let taken: { readonly solid: KernelSolid | undefined } | undefined;
  return {
    body,
    moves,
    shape,
    sources,
    meshes,
    ...boxAround(meshes),
    solid: () => {
      if (!taken) {
        const made = takeAll(kernel, meshes, sources);
        taken = { solid: made.ok ? made.value : undefined };
      }
      return taken.solid;
    },
    release: () => {
      if (taken?.solid) kernel.release(taken.solid);
      taken = undefined;
    },
  };
}

function boxAround(meshes: readonly ClosedMesh[]): Box {
  const boxes = meshes.map(boxOf);
  const at = (of: 'min' | 'max', pick: (...values: number[]) => number) =>
    [0, 1, 2].map((k) => pick(...boxes.map((box) => box[of][k]!))) as unknown as Vec3;
  return { min: at('min', Math.min), max: at('max', Math.max) };
}
