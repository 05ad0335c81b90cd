import type { BodyId } from '../../../shared/base/ids.ts';
import { NONE, neighboursOf, nextSide } from '../../../shared/solid/mesh/neighbours.ts';
import type { PartMesh } from '../../../shared/solid/placed.ts';

/** A solid made ready to be shown: shaded triangles, and the edges between its faces. All arrays may be handed over. */
export interface Picture {
  /** x, y, z of each corner, mm. A corner stands once for each face that it lies on. */
  readonly positions: Float32Array;
  /** Unit normals of the corners: smooth within a face, broken between faces. */
  readonly normals: Float32Array;
  readonly triangles: Uint32Array;
  /** Per triangle: index into `bodies`. */
  readonly bodyOf: Uint16Array;
  /** Two ends of each edge, x, y, z, mm. */
  readonly edges: Float32Array;
  readonly bodies: readonly BodyId[];
}

/** Faces that meet at less than this are one to the eye: no edge is drawn between them. */
const SMOOTH_COS = Math.cos((1 * Math.PI) / 180);

/** Works out corners, normals and edges of a mesh. */
export function pictureOf({ vertices, triangles, bodyOf, faceOf, bodies }: PartMesh): Picture {
  const flat = flatNormals(vertices, triangles);
  const faces = numberFaces(bodyOf, faceOf);
  const corners = splitCorners(vertices, triangles, faces, flat);
  const edges = edgesBetween(vertices, triangles, faces, flat);
  return { ...corners, bodyOf: Uint16Array.from(bodyOf), edges, bodies };
}

/** Normal of each triangle, its length being twice the area, so that large triangles weigh more in a mean. */
function flatNormals(vertices: Float32Array, triangles: Uint32Array): Float64Array {
  const normals = new Float64Array(triangles.length);
  for (let i = 0; i < triangles.length; i += 3) {
    const [a, b, c] = [triangles[i]! * 3, triangles[i + 1]! * 3, triangles[i + 2]! * 3];
    const [ax, ay, az] = [vertices[a]!, vertices[a + 1]!, vertices[a + 2]!];
    const [ux, uy, uz] = [vertices[b]! - ax, vertices[b + 1]! - ay, vertices[b + 2]! - az];
    const [vx, vy, vz] = [vertices[c]! - ax, vertices[c + 1]! - ay, vertices[c + 2]! - az];
    normals[i] = uy * vz - uz * vy;
    normals[i + 1] = uz * vx - ux * vz;
    normals[i + 2] = ux * vy - uy * vx;
  }
  return normals;
}

/** One number for each face of each body, per triangle. */
function numberFaces(bodyOf: Uint16Array, faceOf: Uint32Array): Uint32Array {
  const numbers = new Map<number, number>();
  const faces = new Uint32Array(faceOf.length);
  for (let t = 0; t < faceOf.length; t++) {
    // Exact: 16 bits of body and 32 of face fit into the 53 of a number.
    const key = bodyOf[t]! * 2 ** 32 + faceOf[t]!;
    let number = numbers.get(key);
    if (number === undefined) {
      number = numbers.size;
      numbers.set(key, number);
    }
    faces[t] = number;
  }
  return faces;
}

function splitCorners(
  vertices: Float32Array,
  triangles: Uint32Array,
  faces: Uint32Array,
  flat: Float64Array,
): Pick<Picture, 'positions' | 'normals' | 'triangles'> {
  const count = vertices.length / 3;
  // The corners of a vertex as a chain: few faces meet in one, so that a walk is quicker than a table of pairs.
  const first = new Int32Array(count).fill(-1);
  const nextOf = new Int32Array(triangles.length);
  const faceAt = new Uint32Array(triangles.length);
  const vertexAt = new Uint32Array(triangles.length);
  const index = new Uint32Array(triangles.length);
  const sums = new Float64Array(triangles.length * 3);
  let corners = 0;
  for (let i = 0; i < triangles.length; i++) {
    const vertex = triangles[i]!;
    const t = Math.floor(i / 3);
    let at = first[vertex]!;
    while (at !== -1 && faceAt[at] !== faces[t]) at = nextOf[at]!;
    if (at === -1) {
      at = corners++;
      nextOf[at] = first[vertex]!;
      first[vertex] = at;
      faceAt[at] = faces[t]!;
      vertexAt[at] = vertex;
    }
    index[i] = at;
    for (let k = 0; k < 3; k++) sums[at * 3 + k]! += flat[t * 3 + k]!;
  }
  const positions = new Float32Array(corners * 3);
  const normals = new Float32Array(corners * 3);
  for (let c = 0; c < corners; c++) {
    const [x, y, z] = [sums[c * 3]!, sums[c * 3 + 1]!, sums[c * 3 + 2]!];
    const length = Math.hypot(x, y, z) || 1;
    normals.set([x / length, y / length, z / length], c * 3);
    const v = vertexAt[c]! * 3;
    positions.set(vertices.subarray(v, v + 3), c * 3);
  }
  return { positions, normals, triangles: index };
}

function edgesBetween(
  vertices: Float32Array,
  triangles: Uint32Array,
  faces: Uint32Array,
  flat: Float64Array,
): Float32Array {
  const neighbours = neighboursOf(triangles, vertices.length / 3);
  const found: number[] = [];
  for (let side = 0; side < triangles.length; side++) {
    const other = neighbours[side]!;
    const t = Math.floor(side / 3);
    if (other === NONE || other < t || faces[other] === faces[t] || isSmooth(flat, t, other)) continue;
    const [from, to] = [triangles[side]! * 3, triangles[nextSide(side)]! * 3];
    found.push(vertices[from]!, vertices[from + 1]!, vertices[from + 2]!);
    found.push(vertices[to]!, vertices[to + 1]!, vertices[to + 2]!);
  }
  return Float32Array.from(found);
}

function isSmooth(flat: Float64Array, s: number, t: number): boolean {
  const [a, b] = [s * 3, t * 3];
  const dot = flat[a]! * flat[b]! + flat[a + 1]! * flat[b + 1]! + flat[a + 2]! * flat[b + 2]!;
  const lengths = Math.hypot(flat[a]!, flat[a + 1]!, flat[a + 2]!) * Math.hypot(flat[b]!, flat[b + 1]!, flat[b + 2]!);
  return dot >= SMOOTH_COS * lengths;
}
