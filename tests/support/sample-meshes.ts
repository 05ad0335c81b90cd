import type { CodedMesh } from '../../src/shared/build/mesh-code.ts';
import type { Vec3 } from '../../src/shared/solid/placed.ts';

const boxTriangles = [
  [0, 2, 1],
  [0, 3, 2],
  [4, 5, 6],
  [4, 6, 7],
  [0, 1, 5],
  [0, 5, 4],
  [1, 2, 6],
  [1, 6, 5],
  [2, 3, 7],
  [2, 7, 6],
  [3, 0, 4],
  [3, 4, 7],
].flat();

/** A box from one corner to the opposite one, faces outwards. */
export function boxMesh([x0, y0, z0]: Vec3, [x1, y1, z1]: Vec3): CodedMesh {
  const ring = [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ];
  const vertices = [z0, z1].flatMap((z) => ring.flatMap(([x, y]) => [x!, y!, z]));
  return { vertices: Float64Array.from(vertices), triangles: Uint32Array.from(boxTriangles) };
}

/** Several meshes in one, nothing joined. */
export function together(...meshes: readonly CodedMesh[]): CodedMesh {
  const vertices: number[] = [];
  const triangles: number[] = [];
  for (const mesh of meshes) {
    const base = vertices.length / 3;
    vertices.push(...mesh.vertices);
    for (const corner of mesh.triangles) triangles.push(base + corner);
  }
  return { vertices: Float64Array.from(vertices), triangles: Uint32Array.from(triangles) };
}

/** Every triangle the other way round. */
export function insideOut({ vertices, triangles }: CodedMesh): CodedMesh {
  return { vertices, triangles: triangles.map((_, i) => triangles[i - (i % 3) + [0, 2, 1][i % 3]!]!) };
}

/** Every triangle with corners of its own, as files without shared corners have them. */
export function apart({ vertices, triangles }: CodedMesh): CodedMesh {
  const places = [...triangles].flatMap((corner) => [...vertices.subarray(corner * 3, corner * 3 + 3)]);
  return { vertices: Float64Array.from(places), triangles: Uint32Array.from(triangles, (_, i) => i) };
}

/** A ring of square section turned about Z, of so many flat pieces: a body with a hole through it. */
export function ringMesh(pieces: number, inner: number, outer: number, height: number): CodedMesh {
  const vertices: number[] = [];
  const triangles: number[] = [];
  const section: readonly (readonly [number, number])[] = [
    [inner, 0],
    [outer, 0],
    [outer, height],
    [inner, height],
  ];
  for (let i = 0; i < pieces; i++) {
    const angle = (2 * Math.PI * i) / pieces;
    for (const [r, z] of section) vertices.push(r * Math.cos(angle), r * Math.sin(angle), z);
    for (let k = 0; k < 4; k++) {
      const here = i * 4;
      const there = ((i + 1) % pieces) * 4;
      const next = (k + 1) % 4;
      triangles.push(here + k, there + k, there + next, here + k, there + next, here + next);
    }
  }
  return insideOutIfNeeded({ vertices: Float64Array.from(vertices), triangles: Uint32Array.from(triangles) });
}

function insideOutIfNeeded(mesh: CodedMesh): CodedMesh {
  return meshVolume(mesh) > 0 ? mesh : insideOut(mesh);
}

/** Sum of the signed tetrahedra from the origin: plain, for comparison. */
export function meshVolume({ vertices, triangles }: CodedMesh): number {
  let sum = 0;
  for (let i = 0; i < triangles.length; i += 3) {
    const [a, b, c] = [0, 1, 2].map((k) => [...vertices.subarray(triangles[i + k]! * 3, triangles[i + k]! * 3 + 3)]);
    sum +=
      a![0]! * (b![1]! * c![2]! - b![2]! * c![1]!) +
      a![1]! * (b![2]! * c![0]! - b![0]! * c![2]!) +
      a![2]! * (b![0]! * c![1]! - b![1]! * c![0]!);
  }
  return sum / 6;
}
