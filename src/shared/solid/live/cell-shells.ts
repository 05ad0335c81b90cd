import type { KernelMesh } from '../manifold/kernel.ts';

/** A triangle on a wall, in the two axes across it. */
type Flat = readonly [number, number, number, number, number, number];

/** The closed surfaces within one cell, and where its walls cut through them. */
export interface CellShells {
  /** Signed volume of each, mm³; less than nothing for a hollow. */
  readonly volumes: readonly number[];
  /** Per side of the cell, see `SIDES`: which shell has which triangles on that wall. */
  readonly walls: readonly ReadonlyMap<number, readonly Flat[]>[];
}

/** Sides of a cell by the facet numbers of its box: the axis that the wall lies across, and whether the cell lies below it. */
export const SIDES = [
  { axis: 1, below: false },
  { axis: 0, below: true },
  { axis: 1, below: true },
  { axis: 0, below: false },
  { axis: 2, below: false },
  { axis: 2, below: true },
] as const;

export function shellsOf({ vertices, triangles, facetOf, runs }: KernelMesh, walls: number | undefined): CellShells {
  const group = Uint32Array.from({ length: vertices.length / 3 }, (_, i) => i);
  const rootOf = (i: number) => rootIn(group, i);
  for (let i = 0; i < triangles.length; i += 3) {
    const root = rootOf(triangles[i]!);
    group[rootOf(triangles[i + 1]!)] = root;
    group[rootOf(triangles[i + 2]!)] = root;
  }
  const numbers = new Map<number, number>();
  const origins: number[] = [];
  const volumes: number[] = [];
  const shellAt = (corner: number): number => {
    const root = rootOf(corner);
    let number = numbers.get(root);
    if (number === undefined) {
      number = numbers.size;
      numbers.set(root, number);
      origins.push(3 * corner);
      volumes.push(0);
    }
    return number;
  };
  for (let i = 0; i < triangles.length; i += 3) {
    const shell = shellAt(triangles[i]!);
    // Each is measured from a corner of its own: far from the origin little would be left of a small one.
    volumes[shell]! += tetrahedron(vertices, origins[shell]!, triangles, i);
  }
  const onWalls = SIDES.map(() => new Map<number, Flat[]>());
  for (const { source, from, to } of runs) {
    if (source !== walls) continue;
    for (let t = from; t < to; t++) {
      const side = facetOf[t]!;
      const shell = shellAt(triangles[3 * t]!);
      const list = onWalls[side]!.get(shell) ?? [];
      onWalls[side]!.set(shell, list);
      list.push(flatOf(vertices, triangles, t, SIDES[side]!.axis));
    }
  }
  return { volumes, walls: onWalls };
}

export function rootIn(group: Uint32Array, i: number): number {
  let at = i;
  while (group[at] !== at) {
    group[at] = group[group[at]!]!;
    at = group[at]!;
  }
  return at;
}

function tetrahedron(vertices: Float32Array, o: number, triangles: Uint32Array, i: number): number {
  const [a, b, c] = [3 * triangles[i]!, 3 * triangles[i + 1]!, 3 * triangles[i + 2]!];
  const [ox, oy, oz] = [vertices[o]!, vertices[o + 1]!, vertices[o + 2]!];
  const [ax, ay, az] = [vertices[a]! - ox, vertices[a + 1]! - oy, vertices[a + 2]! - oz];
  const [bx, by, bz] = [vertices[b]! - ox, vertices[b + 1]! - oy, vertices[b + 2]! - oz];
  const [cx, cy, cz] = [vertices[c]! - ox, vertices[c + 1]! - oy, vertices[c + 2]! - oz];
  return (ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx)) / 6;
}

function flatOf(vertices: Float32Array, triangles: Uint32Array, t: number, axis: 0 | 1 | 2): Flat {
  const [u, v] = [axis === 0 ? 1 : 0, axis === 2 ? 1 : 2];
  return [0, 1, 2].flatMap((k) => {
    const at = 3 * triangles[3 * t + k]!;
    return [vertices[at + u]!, vertices[at + v]!];
  }) as unknown as Flat;
}

/** Overlaps narrower than this are rounding, mm. */
const CLEAR_MM = 1e-4;

/** Whether two triangles of one plane share an area: no side of either parts them. */
export function shareArea(a: Flat, b: Flat): boolean {
  return !isParted(a, b) && !isParted(b, a);
}

function isParted(a: Flat, b: Flat): boolean {
  for (let k = 0; k < 6; k += 2) {
    const [x, y] = [a[k]!, a[k + 1]!];
    const [ex, ey] = [a[(k + 2) % 6]! - x, a[(k + 3) % 6]! - y];
    const length = Math.hypot(ex, ey);
    if (length === 0) return true;
    const out = (px: number, py: number) => (ex * (py - y) - ey * (px - x)) / length;
    // The third corner says which side is the inner one.
    const inner = out(a[(k + 4) % 6]!, a[(k + 5) % 6]!);
    const sign = Math.sign(inner);
    const depth = Math.max(sign * out(b[0], b[1]), sign * out(b[2], b[3]), sign * out(b[4], b[5]));
    if (Math.abs(inner) <= CLEAR_MM || depth <= CLEAR_MM) return true;
  }
  return false;
}
