import type { CodedMesh } from '../../build/mesh-code.ts';
import type { Vec3 } from '../placed.ts';
import type { Edges } from './edges.ts';

/** A piece of surface that hangs together, closed in itself. */
export interface Shell {
  readonly triangles: readonly number[];
  /** Signed: negative when its faces look inwards, as those of a cavity do. */
  readonly volume: number;
  readonly min: Vec3;
  readonly max: Vec3;
}

/** Number of the shell of every triangle. */
export function shellNumbers(
  { triangles }: CodedMesh,
  { ring }: Edges,
): { readonly of: Int32Array; readonly count: number } {
  const of = new Int32Array(triangles.length / 3).fill(-1);
  const waiting: number[] = [];
  let count = 0;
  for (let first = 0; first < of.length; first++) {
    if (of[first] !== -1) continue;
    of[first] = count;
    waiting.push(first);
    for (let triangle = waiting.pop(); triangle !== undefined; triangle = waiting.pop()) {
      for (let half = triangle * 3; half < triangle * 3 + 3; half++) {
        // The next of the ring is enough: it leads on to the others.
        const neighbour = Math.floor(ring[half]! / 3);
        if (of[neighbour] !== -1) continue;
        of[neighbour] = count;
        waiting.push(neighbour);
      }
    }
    count++;
  }
  return { of, count };
}

export function shellsOf(
  mesh: CodedMesh,
  numbers: { readonly of: Int32Array; readonly count: number },
): readonly Shell[] {
  const lists: number[][] = Array.from({ length: numbers.count }, () => []);
  numbers.of.forEach((shell, triangle) => {
    lists[shell]!.push(triangle);
  });
  return lists.map((triangles) => {
    const { min, max } = boxOf(mesh, triangles);
    return { triangles, min, max, volume: volumeOf(mesh, triangles, min) };
  });
}

function boxOf({ vertices, triangles }: CodedMesh, list: readonly number[]): Pick<Shell, 'min' | 'max'> {
  const min: [number, number, number] = [Infinity, Infinity, Infinity];
  const max: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  for (const triangle of list) {
    for (let k = 0; k < 3; k++) {
      for (let axis = 0; axis < 3; axis++) {
        const value = vertices[triangles[triangle * 3 + k]! * 3 + axis]!;
        if (value < min[axis]!) min[axis] = value;
        if (value > max[axis]!) max[axis] = value;
      }
    }
  }
  return { min, max };
}

/** Sum of the signed tetrahedra from one point; a point of the shell's own box keeps the digits. */
function volumeOf({ vertices, triangles }: CodedMesh, list: readonly number[], from: Vec3): number {
  let sum = 0;
  const place = (triangle: number, k: number, axis: number): number =>
    vertices[triangles[triangle * 3 + k]! * 3 + axis]! - from[axis]!;
  for (const t of list) {
    const [ax, ay, az] = [place(t, 0, 0), place(t, 0, 1), place(t, 0, 2)];
    const [bx, by, bz] = [place(t, 1, 0), place(t, 1, 1), place(t, 1, 2)];
    const [cx, cy, cz] = [place(t, 2, 0), place(t, 2, 1), place(t, 2, 2)];
    sum += ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx);
  }
  return sum / 6;
}

const boxHolds = (outer: Shell, inner: Shell): boolean =>
  [0, 1, 2].every((axis) => outer.min[axis]! <= inner.min[axis]! && outer.max[axis]! >= inner.max[axis]!);

/** Whether the one shell lies inside the other; shells do not cross. */
export function liesWithin(mesh: CodedMesh, inner: Shell, outer: Shell): boolean {
  if (inner === outer || !boxHolds(outer, inner)) return false;
  return Math.abs(turnsAround(mesh, outer, middleOf(mesh, inner.triangles[0]!))) > 0.5;
}

const middleOf = ({ vertices, triangles }: CodedMesh, triangle: number): Vec3 => {
  const at = (axis: number): number =>
    [0, 1, 2].reduce((sum, k) => sum + vertices[triangles[triangle * 3 + k]! * 3 + axis]!, 0) / 3;
  return [at(0), at(1), at(2)];
};

/** How often a shell goes round a point: the solid angles of its triangles, over a full sphere (van Oosterom, Strackee 1983). */
function turnsAround({ vertices, triangles }: CodedMesh, shell: Shell, point: Vec3): number {
  let sum = 0;
  const corner = (triangle: number, k: number): Vec3 => {
    const vertex = triangles[triangle * 3 + k]! * 3;
    return [vertices[vertex]! - point[0], vertices[vertex + 1]! - point[1], vertices[vertex + 2]! - point[2]];
  };
  const dot = (p: Vec3, q: Vec3): number => p[0] * q[0] + p[1] * q[1] + p[2] * q[2];
  for (const triangle of shell.triangles) {
    const [a, b, c] = [corner(triangle, 0), corner(triangle, 1), corner(triangle, 2)];
    const [la, lb, lc] = [Math.hypot(...a), Math.hypot(...b), Math.hypot(...c)];
    const triple =
      a[0] * (b[1] * c[2] - b[2] * c[1]) + a[1] * (b[2] * c[0] - b[0] * c[2]) + a[2] * (b[0] * c[1] - b[1] * c[0]);
    sum += 2 * Math.atan2(triple, la * lb * lc + dot(a, b) * lc + dot(b, c) * la + dot(c, a) * lb);
  }
  return sum / (4 * Math.PI);
}
