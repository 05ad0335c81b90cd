import type { Manifold, ManifoldToplevel, Mesh } from 'manifold-3d';
import { assert } from '../../base/assert.ts';
import { err, ok, type Result } from '../../base/result.ts';
import { cutting } from './cutting.ts';
import {
  type ClosedMesh,
  type Kernel,
  KernelFault,
  type KernelMesh,
  type KernelSolid,
  type MeshFault,
} from './kernel.ts';

/** Where the kernel's WebAssembly lies. In Node it finds the file beside itself; a window hands in its address. */
export interface KernelSource {
  readonly wasmUrl?: string;
}

/** Loads the kernel; each call gives one with memory of its own. */
export async function loadKernel({ wasmUrl }: KernelSource = {}): Promise<Kernel> {
  // Loaded only when it is needed: half a megabyte that a start without solids can do without.
  const { default: load } = await import('manifold-3d');
  const module = await (wasmUrl === undefined ? load() : load({ locateFile: () => wasmUrl }));
  module.setup();
  return kernelOver(module);
}

const faultOf: Readonly<Record<string, MeshFault>> = {
  NotManifold: 'not closed',
  NonFiniteVertex: 'not finite',
  VertexOutOfBounds: 'not closed',
  ResultTooLarge: 'too large',
};

/** What a thrown error of the kernel means for the mesh that was handed in. */
function faultIn(error: unknown): MeshFault {
  const { code, message } = error as { readonly code?: string; readonly message?: string };
  const status = code ?? Object.keys(faultOf).find((name) => message?.includes(name));
  return faultOf[status ?? ''] ?? 'not taken';
}

function kernelOver(module: ManifoldToplevel): Kernel {
  const { Manifold: Solid, Mesh: KernelsMesh } = module;
  const alive = new Set<Manifold>();

  const raw = (solid: KernelSolid): Manifold => {
    const found = solid as unknown as Manifold;
    assert(alive.has(found), 'a solid is not used after its release');
    return found;
  };

  /** Works a lazy result out now, so that its cost falls here and what it was made of may go. */
  function keep(made: Manifold): KernelSolid | undefined {
    const status = made.status();
    const nothing = status === 'NoError' && made.isEmpty();
    if (status !== 'NoError' || nothing) made.delete();
    if (nothing) return undefined;
    if (status !== 'NoError') throw new KernelFault(`The kernel gave up on a solid: ${status}.`);
    alive.add(made);
    return made as unknown as KernelSolid;
  }

  const reserve = (count: number): number => Solid.reserveIDs(count);

  function take(
    mesh: ClosedMesh,
    source = reserve(1),
  ): Result<{ readonly solid: KernelSolid; readonly source: number }, MeshFault> {
    if (mesh.triangles.length === 0) return err('no triangles');
    if (!mesh.vertices.every(Number.isFinite)) return err('not finite');
    let made: Manifold;
    try {
      made = exactly(module, mesh, meshFor(KernelsMesh, mesh, source));
    } catch (error) {
      return err(faultIn(error));
    }
    const volume = made.volume();
    if (!made.isEmpty() && volume > 0) {
      const solid = keep(made);
      if (solid) return ok({ solid, source });
    }
    made.delete();
    return err(volume < 0 ? 'inside out' : 'no triangles');
  }

  return {
    take,
    reserve,
    unite: (solids) => {
      const [first] = solids;
      if (first === undefined) return undefined;
      return keep(solids.length === 1 ? raw(first).translate([0, 0, 0]) : Solid.union(solids.map(raw)));
    },
    subtract: (from, what) => keep(raw(from).subtract(raw(what))),
    intersect: (a, b) => keep(raw(a).intersect(raw(b))),
    volumeOf: (solid) => raw(solid).volume(),
    areaOf: (solid) => raw(solid).surfaceArea(),
    boxOf: (solid) => raw(solid).boundingBox(),
    meshOf: (solid) => readMesh(raw(solid).getMesh()),
    ...cutting(module, raw, keep),
    release: (solid) => {
      const found = raw(solid);
      alive.delete(found);
      found.delete();
    },
    get live() {
      return alive.size;
    },
  };
}

const meshFor = (KernelsMesh: ManifoldToplevel['Mesh'], mesh: ClosedMesh, source: number): Mesh =>
  new KernelsMesh({
    numProp: 3,
    vertProperties: Float32Array.from(mesh.vertices),
    triVerts: mesh.triangles,
    runIndex: Uint32Array.of(0, mesh.triangles.length),
    runOriginalID: Uint32Array.of(source),
    faceID: mesh.facetOf,
  });

/**
 * The kernel's meshes come in with float32 places only, and it puts the vertices in an order of its own. It lets places
 * be moved in float64 though: each is moved by the rounding that it suffered, found again by its rounded place.
 */
function exactly({ Manifold: Solid }: ManifoldToplevel, mesh: ClosedMesh, rounded: Mesh): Manifold {
  const { vertices } = mesh;
  const coarse = Solid.ofMesh(rounded);
  const placeOf = roundedPlaces(vertices);
  let moved: Manifold | undefined;
  try {
    moved = coarse.warpBatch((verts, count) => {
      for (let i = 0; i < count * 3; i += 3) {
        const from = placeOf(verts[i]!, verts[i + 1]!, verts[i + 2]!);
        if (from === undefined) continue;
        verts[i] = vertices[from]!;
        verts[i + 1] = vertices[from + 1]!;
        verts[i + 2] = vertices[from + 2]!;
      }
    });
    // The tolerance that came with float32 would melt small edges together in every later step.
    return moved.setTolerance(0);
  } finally {
    coarse.delete();
    moved?.delete();
  }
}

/** Finds where a vertex stands in a list by its place rounded to float32; of several with one rounded place, the last. */
function roundedPlaces(vertices: Float64Array): (x: number, y: number, z: number) => number | undefined {
  const rounded = Float32Array.from(vertices);
  const size = 2 ** Math.ceil(Math.log2(Math.max(2, vertices.length)));
  // A table of starts, three times as roomy as the list; a slot that is taken passes on to the next.
  const table = new Int32Array(size).fill(-1);
  const floats = new Float32Array(3);
  const bits = new Uint32Array(floats.buffer);
  const isAt = (i: number) => rounded[i] === floats[0] && rounded[i + 1] === floats[1] && rounded[i + 2] === floats[2];
  /** The slot of a place: the one that holds it, or a free one. */
  const slotOf = (x: number, y: number, z: number): number => {
    // Zero is added so that both of its signs come to one.
    floats[0] = x + 0;
    floats[1] = y + 0;
    floats[2] = z + 0;
    let hash = Math.imul(bits[0]!, 0x9e3779b1) ^ Math.imul(bits[1]!, 0x85ebca77) ^ Math.imul(bits[2]!, 0xc2b2ae3d);
    hash = Math.imul(hash ^ (hash >>> 15), 0x2c1b3c6d);
    let slot = (hash ^ (hash >>> 13)) & (size - 1);
    while (table[slot] !== -1 && !isAt(table[slot]!)) slot = (slot + 1) & (size - 1);
    return slot;
  };
  for (let i = 0; i < vertices.length; i += 3) table[slotOf(vertices[i]!, vertices[i + 1]!, vertices[i + 2]!)] = i;
  return (x, y, z) => {
    const found = table[slotOf(x, y, z)]!;
    return found === -1 ? undefined : found;
  };
}

function readMesh(mesh: Mesh): KernelMesh {
  assert(mesh.numProp === 3 && mesh.mergeFromVert.length === 0, 'vertices carry their place alone');
  const runs = Array.from(mesh.runOriginalID, (source, i) => ({
    source,
    from: mesh.runIndex[i]! / 3,
    to: mesh.runIndex[i + 1]! / 3,
  }));
  // The kernel also lists the meshes of which nothing is left.
  return {
    vertices: mesh.vertProperties,
    triangles: mesh.triVerts,
    facetOf: mesh.faceID,
    runs: runs.filter(({ from, to }) => to > from),
  };
}
