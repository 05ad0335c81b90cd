import type { PartMesh } from '../placed.ts';

/** The part of a mesh that files of solids hold: places in mm, three corners to a triangle. */
export type PlainMesh = Pick<PartMesh, 'triangles'> & { readonly vertices: ArrayLike<number> };

const HEAD_BYTES = 84;
const TRIANGLE_BYTES = 50;

/**
 * Binary STL, numbers in mm.
 * @param head at most 80 characters of ASCII; must not begin with "solid", which would pass for the text form.
 */
export function writeStl({ vertices, triangles }: PlainMesh, head: string): Uint8Array {
  const count = triangles.length / 3;
  const bytes = new Uint8Array(HEAD_BYTES + count * TRIANGLE_BYTES);
  const view = new DataView(bytes.buffer);
  for (let i = 0; i < 80; i++) {
    const code = head.charCodeAt(i);
    bytes[i] = Number.isNaN(code) ? 0x20 : code > 31 && code < 127 ? code : 0x3f;
  }
  view.setUint32(80, count, true);
  const corner = (triangle: number, k: number, axis: number): number =>
    vertices[triangles[triangle * 3 + k]! * 3 + axis]!;
  for (let triangle = 0; triangle < count; triangle++) {
    const from = HEAD_BYTES + triangle * TRIANGLE_BYTES;
    const u = [0, 1, 2].map((axis) => corner(triangle, 1, axis) - corner(triangle, 0, axis));
    const v = [0, 1, 2].map((axis) => corner(triangle, 2, axis) - corner(triangle, 0, axis));
    const normal = [u[1]! * v[2]! - u[2]! * v[1]!, u[2]! * v[0]! - u[0]! * v[2]!, u[0]! * v[1]! - u[1]! * v[0]!];
    const length = Math.hypot(...normal);
    for (let axis = 0; axis < 3; axis++) {
      // A triangle without a size has no normal; readers take nought as "work it out".
      view.setFloat32(from + axis * 4, length > 0 ? normal[axis]! / length : 0, true);
      for (let k = 0; k < 3; k++) view.setFloat32(from + 12 + (k * 3 + axis) * 4, corner(triangle, k, axis), true);
    }
  }
  return bytes;
}
