import type { MeshShape } from '../placed.ts';
import type { BodyMesh } from './body-mesh.ts';

/** Facets that meet at less than this are taken to belong to one smooth face, in degrees. */
const SMOOTH_DEG = 20;

/** A mesh from outside, its triangles gathered into smooth faces: what it stands for is not known, so none is round. */
export function importedMesh({ vertices, triangles }: MeshShape): BodyMesh {
  const count = triangles.length / 3;
  const group = Uint32Array.from({ length: count }, (_, i) => i);
  const rootOf = (i: number): number => {
    let at = i;
    while (group[at] !== at) {
      group[at] = group[group[at]!]!;
      at = group[at]!;
    }
    return at;
  };
  const normals = normalsOf(vertices, triangles);
  const cos = Math.cos((SMOOTH_DEG * Math.PI) / 180);
  const across = new Map<number, number>();
  const places = vertices.length / 3;
  for (let t = 0; t < count; t++) {
    for (let k = 0; k < 3; k++) {
      const from = triangles[3 * t + k]!;
      const to = triangles[3 * t + ((k + 1) % 3)]!;
      const other = across.get(to * places + from);
      if (other === undefined) {
        across.set(from * places + to, t);
        continue;
      }
      const dot =
        normals[3 * t]! * normals[3 * other]! +
        normals[3 * t + 1]! * normals[3 * other + 1]! +
        normals[3 * t + 2]! * normals[3 * other + 2]!;
      if (dot >= cos) group[rootOf(t)] = rootOf(other);
    }
  }
  const numbers = new Map<number, number>();
  const facetOf = new Uint32Array(count);
  for (let t = 0; t < count; t++) {
    const root = rootOf(t);
    const number = numbers.get(root) ?? numbers.size;
    numbers.set(root, number);
    facetOf[t] = number;
  }
  const facets = Array.from({ length: numbers.size }, (_, face) => ({ face, round: undefined }));
  return { mesh: { vertices, triangles, facetOf }, facets, axis: 'Z', faces: facets.length };
}

/** Unit normals of the triangles; zero for one without area. */
function normalsOf(vertices: Float64Array, triangles: Uint32Array): Float64Array {
  const normals = new Float64Array(triangles.length);
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [3 * triangles[t]!, 3 * triangles[t + 1]!, 3 * triangles[t + 2]!] as const;
    const e = [0, 1, 2].map((k) => vertices[b + k]! - vertices[a + k]!) as [number, number, number];
    const f = [0, 1, 2].map((k) => vertices[c + k]! - vertices[a + k]!) as [number, number, number];
    const x = e[1] * f[2] - e[2] * f[1];
    const y = e[2] * f[0] - e[0] * f[2];
    const z = e[0] * f[1] - e[1] * f[0];
    const length = Math.hypot(x, y, z) || 1;
    normals[t] = x / length;
    normals[t + 1] = y / length;
    normals[t + 2] = z / length;
  }
  return normals;
}
