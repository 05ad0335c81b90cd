import type { CodedMesh } from '../../../shared/build/mesh-code.ts';
import { edgesOf } from '../../../shared/solid/formats/edges.ts';
import { turnedRound } from '../../../shared/solid/formats/face-alike.ts';
import { liesWithin, type Shell, shellNumbers, shellsOf } from '../../../shared/solid/formats/shells.ts';
import { compacted } from '../../../shared/solid/formats/weld.ts';
import type { Kernel, KernelSolid } from '../../../shared/solid/manifold/kernel.ts';

const meet = (a: Shell, b: Shell): boolean =>
  [0, 1, 2].every((axis) => a.min[axis]! <= b.max[axis]! && b.min[axis]! <= a.max[axis]!);

/**
 * Makes one body of several that reach into each other, as those of an assembly may: otherwise what lies in two of them
 * would count twice.
 *
 * @param kernel loaded only where bodies come near each other
 * @returns the mesh as the kernel gives it, single precision; undefined where nothing overlaps, or the kernel cannot take it
 */
export async function uniteBodies(mesh: CodedMesh, kernel: () => Promise<Kernel>): Promise<CodedMesh | undefined> {
  const numbers = shellNumbers(mesh, edgesOf(mesh));
  const shells = shellsOf(mesh, numbers);
  const bodies = shells.filter(({ volume }) => volume > 0);
  if (!bodies.some((body, i) => bodies.some((other, k) => k > i && meet(body, other)))) return undefined;
  const { take, unite, subtract, meshOf, volumeOf, release } = await kernel();
  const made: KernelSolid[] = [];
  const keep = (solid: KernelSolid | undefined): KernelSolid | undefined => {
    if (solid) made.push(solid);
    return solid;
  };
  const taken = (shell: Shell): KernelSolid | undefined => {
    const list = new Uint32Array(shell.triangles.length * 3);
    shell.triangles.forEach((triangle, i) => {
      list.set(mesh.triangles.subarray(triangle * 3, triangle * 3 + 3), i * 3);
    });
    const triangles = shell.volume < 0 ? turnedRound(list, () => true) : list;
    const solid = take({ ...compacted(mesh.vertices, triangles), facetOf: new Uint32Array(shell.triangles.length) });
    return solid.ok ? keep(solid.value.solid) : undefined;
  };
  try {
    const whole: KernelSolid[] = [];
    for (const body of bodies) {
      let solid = taken(body);
      for (const cavity of cavitiesOf(mesh, body, shells)) {
        const hollow = taken(cavity);
        if (!solid || !hollow) return undefined;
        solid = keep(subtract(solid, hollow));
      }
      if (!solid) return undefined;
      whole.push(solid);
    }
    const all = keep(unite(whole));
    if (!all) return undefined;
    const apart = whole.reduce((sum, solid) => sum + volumeOf(solid), 0);
    // Near each other and yet apart: the mesh of the file is the better one.
    if (Math.abs(volumeOf(all) - apart) <= apart * 1e-9) return undefined;
    const { vertices, triangles } = meshOf(all);
    return { vertices: Float64Array.from(vertices), triangles };
  } finally {
    for (const solid of made) release(solid);
  }
}

/** Cavities of which the body is the innermost that holds them. */
function cavitiesOf(mesh: CodedMesh, body: Shell, shells: readonly Shell[]): readonly Shell[] {
  return shells.filter(
    (cavity) =>
      cavity.volume < 0 &&
      liesWithin(mesh, cavity, body) &&
      !shells.some(
        (between) =>
          between !== body &&
          between.volume > 0 &&
          liesWithin(mesh, cavity, between) &&
          liesWithin(mesh, between, body),
      ),
  );
}
