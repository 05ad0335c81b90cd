import type { CastingSolid } from '../casting-solid.ts';

/** Triangles of a painted surface at most, about. */
const MOST_TRIANGLES = 80_000;

/** A surface fine enough to be coloured by its corners. */
export interface PaintedMesh {
  readonly vertices: Float32Array;
  readonly triangles: Uint32Array;
  /** Modulus at each vertex, mm. */
  readonly moduli: Float32Array;
}

/**
 * The surface with its long edges halved until none is longer than asked: a large flat face has corners only at its outline, and
 * could not show what is thick behind its middle. An edge is halved for both of its triangles alike, so that no gaps open.
 *
 * @param modulusAt of a place on the surface
 */
export function paintMesh(
  { vertices, triangles }: Pick<CastingSolid['mesh'], 'vertices' | 'triangles'>,
  longestMm: number,
  modulusAt: (x: number, y: number, z: number) => number,
): PaintedMesh {
  let fine = halved(vertices, triangles, longestMm);
  for (let longest = 2 * longestMm; !fine; longest *= 2) fine = halved(vertices, triangles, longest);
  const moduli = new Float32Array(fine.vertices.length / 3);
  for (let i = 0; i < moduli.length; i++) {
    moduli[i] = modulusAt(fine.vertices[3 * i]!, fine.vertices[3 * i + 1]!, fine.vertices[3 * i + 2]!);
  }
  return { ...fine, moduli };
}

function halved(given: Float32Array, triangles: Uint32Array, longestMm: number) {
  const vertices = Array.from(given);
  const most = Math.max(MOST_TRIANGLES, triangles.length / 3);
  const middles = new Map<number, number>();
  const BASE = 2 ** 26;
  const middle = (a: number, b: number): number => {
    const key = a < b ? a * BASE + b : b * BASE + a;
    const known = middles.get(key);
    if (known !== undefined) return known;
    const made = vertices.length / 3;
    for (let k = 0; k < 3; k++) vertices.push((vertices[3 * a + k]! + vertices[3 * b + k]!) / 2);
    middles.set(key, made);
    return made;
  };
  const square = (a: number, b: number): number => {
    let sum = 0;
    for (let k = 0; k < 3; k++) sum += (vertices[3 * a + k]! - vertices[3 * b + k]!) ** 2;
    return sum;
  };
  const stack = Array.from(triangles);
  const done: number[] = [];
  const limit = longestMm ** 2;
  while (stack.length > 0) {
    const c = stack.pop()!;
    const b = stack.pop()!;
    const a = stack.pop()!;
    const [ab, bc, ca] = [square(a, b), square(b, c), square(c, a)];
    const longest = Math.max(ab, bc, ca);
    if (longest <= limit) {
      done.push(a, b, c);
      if (done.length > 3 * most) return undefined;
    } else if (ab === longest) {
      const m = middle(a, b);
      stack.push(a, m, c, m, b, c);
    } else if (bc === longest) {
      const m = middle(b, c);
      stack.push(a, b, m, a, m, c);
    } else {
      const m = middle(c, a);
      stack.push(a, b, m, m, b, c);
    }
  }
  return { vertices: Float32Array.from(vertices), triangles: Uint32Array.from(done) };
}
