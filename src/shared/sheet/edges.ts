import type { WeldedMesh } from './weld.ts';

/** The edges of a mesh and what they are. */
export interface MeshEdges {
  /** Two corners of each edge, the lower number first. */
  readonly ends: Uint32Array;
  /** Two triangles at each edge; the second is {@link NONE} at an open border. */
  readonly sides: Uint32Array;
  /** 1 where two faces meet at an angle (or a face ends): to be drawn from wherever it is seen. */
  readonly sharp: Uint8Array;
  /** Unit normals of the triangles. */
  readonly normals: Float64Array;
  /** Smallest height of each triangle, mm: what its normal can be trusted by. */
  readonly heights: Float64Array;
}

export const NONE = 0xffffffff;

/** Within one face only a bend of more than this is an edge; imported meshes often come as one face. */
const CREASE = (35 * Math.PI) / 180;
/** Least angle between two flat faces that is drawn. */
const LEAST = (0.1 * Math.PI) / 180;
/** Single precision places a corner within this part of the size of the whole. */
const ROUNDING = 2 ** -23;

/**
 * Finds the edges of a mesh. Where a flat face runs smoothly into a rounded one, their first facets stand at half a
 * facet's bend to each other; that is no edge. So the bend along the edge within either face says how much is needed.
 */
export function findEdges(mesh: WeldedMesh): MeshEdges {
  const { normals, heights } = normalsOf(mesh);
  const { ends, sides, crowded } = pairUp(mesh);
  const count = ends.length / 2;
  const bend = new Float64Array(count);
  const sharp = new Uint8Array(count);
  const bendsOf: number[][] = Array.from({ length: mesh.faceCount }, () => []);
  for (let e = 0; e < count; e++) {
    const a = sides[2 * e]!;
    const b = sides[2 * e + 1]!;
    if (b === NONE || crowded.has(e)) {
      sharp[e] = 1;
      continue;
    }
    bend[e] = angleBetween(normals, a, b);
    if (mesh.faceOf[a] !== mesh.faceOf[b]) continue;
    if (bend[e]! > CREASE) sharp[e] = 1;
    else if (bend[e]! > LEAST + noise(mesh, heights, a, b)) bendsOf[mesh.faceOf[a]!]!.push(e);
  }
  for (let e = 0; e < count; e++) {
    const a = sides[2 * e]!;
    const b = sides[2 * e + 1]!;
    if (sharp[e] || b === NONE || mesh.faceOf[a] === mesh.faceOf[b]) continue;
    let least = LEAST + noise(mesh, heights, a, b);
    if (bend[e]! <= least) continue;
    // A facet's bend is below the crease, so beyond it there is no doubt.
    if (bend[e]! <= CREASE) {
      least += 0.55 * (bendAlong(mesh, ends, bend, e, bendsOf[mesh.faceOf[a]!]!) ?? 0);
      least += 0.55 * (bendAlong(mesh, ends, bend, e, bendsOf[mesh.faceOf[b]!]!) ?? 0);
    }
    if (bend[e]! > least) sharp[e] = 1;
  }
  return { ends, sides, sharp, normals, heights };
}

/** The greatest bend of a face over its own edges that run like the given one. */
function bendAlong(
  mesh: WeldedMesh,
  ends: Uint32Array,
  bend: Float64Array,
  edge: number,
  bends: readonly number[],
): number | undefined {
  let most: number | undefined;
  const [x, y, z] = direction(mesh, ends, edge);
  for (const other of bends) {
    if (most !== undefined && bend[other]! <= most) continue;
    const [u, v, w] = direction(mesh, ends, other);
    if (Math.abs(x * u + y * v + z * w) > 0.9) most = bend[other]!;
  }
  return most;
}

function direction({ points }: WeldedMesh, ends: Uint32Array, edge: number): readonly [number, number, number] {
  const a = 3 * ends[2 * edge]!;
  const b = 3 * ends[2 * edge + 1]!;
  const x = points[b]! - points[a]!;
  const y = points[b + 1]! - points[a + 1]!;
  const z = points[b + 2]! - points[a + 2]!;
  const length = Math.hypot(x, y, z) || 1;
  return [x / length, y / length, z / length];
}

/** How far rounding of the corners may turn the normals of two triangles. */
const noise = ({ size }: WeldedMesh, heights: Float64Array, a: number, b: number): number =>
  (4 * ROUNDING * size) / Math.min(heights[a]!, heights[b]!);

function angleBetween(normals: Float64Array, a: number, b: number): number {
  const [ax, ay, az] = [normals[3 * a]!, normals[3 * a + 1]!, normals[3 * a + 2]!];
  const [bx, by, bz] = [normals[3 * b]!, normals[3 * b + 1]!, normals[3 * b + 2]!];
  const cross = Math.hypot(ay * bz - az * by, az * bx - ax * bz, ax * by - ay * bx);
  return Math.atan2(cross, ax * bx + ay * by + az * bz);
}

function normalsOf({ points, triangles }: WeldedMesh) {
  const count = triangles.length / 3;
  const normals = new Float64Array(3 * count);
  const heights = new Float64Array(count);
  for (let t = 0; t < count; t++) {
    const a = 3 * triangles[3 * t]!;
    const b = 3 * triangles[3 * t + 1]!;
    const c = 3 * triangles[3 * t + 2]!;
    const ux = points[b]! - points[a]!;
    const uy = points[b + 1]! - points[a + 1]!;
    const uz = points[b + 2]! - points[a + 2]!;
    const vx = points[c]! - points[a]!;
    const vy = points[c + 1]! - points[a + 1]!;
    const vz = points[c + 2]! - points[a + 2]!;
    const nx = uy * vz - uz * vy;
    const ny = uz * vx - ux * vz;
    const nz = ux * vy - uy * vx;
    const doubled = Math.hypot(nx, ny, nz);
    const longest = Math.max(Math.hypot(ux, uy, uz), Math.hypot(vx, vy, vz), Math.hypot(vx - ux, vy - uy, vz - uz));
    heights[t] = doubled / longest;
    if (doubled === 0) continue;
    normals[3 * t] = nx / doubled;
    normals[3 * t + 1] = ny / doubled;
    normals[3 * t + 2] = nz / doubled;
  }
  return { normals, heights };
}

/** Edges with the triangles at them; `crowded` are those at which more than two meet. */
function pairUp({ points, triangles }: WeldedMesh) {
  const corners = points.length / 3;
  const known = new Map<number, number>();
  const ends = new Uint32Array(2 * triangles.length);
  const sides = new Uint32Array(2 * triangles.length).fill(NONE);
  const crowded = new Set<number>();
  for (let i = 0; i < triangles.length; i++) {
    const from = triangles[i]!;
    const to = triangles[i % 3 === 2 ? i - 2 : i + 1]!;
    const low = Math.min(from, to);
    const high = Math.max(from, to);
    const key = low * corners + high;
    const edge = known.get(key);
    const triangle = (i - (i % 3)) / 3;
    if (edge === undefined) {
      ends[2 * known.size] = low;
      ends[2 * known.size + 1] = high;
      sides[2 * known.size] = triangle;
      known.set(key, known.size);
    } else if (sides[2 * edge + 1] === NONE) sides[2 * edge + 1] = triangle;
    else crowded.add(edge);
  }
  return { ends: ends.slice(0, 2 * known.size), sides: sides.slice(0, 2 * known.size), crowded };
}
