import type { PartMesh } from '../solid/placed.ts';

/** A mesh whose triangles share their corners, with a number for each face of each body. */
export interface WeldedMesh {
  /** x, y, z of each corner. */
  readonly points: Float64Array;
  readonly triangles: Uint32Array;
  /** Per triangle: index into `bodies` of the mesh. */
  readonly bodyOf: Uint32Array;
  /** Per triangle: a number that triangles of one face of one body share. */
  readonly faceOf: Uint32Array;
  readonly faceCount: number;
  /** Length of the diagonal of its box. */
  readonly size: number;
}

/**
 * Joins corners that lie at the very same place and drops triangles that thereby vanish. Meshes come in single precision
 * from a kernel whose neighbouring triangles have bit-equal corners, so nothing nearby but different may be joined.
 */
export function weld(mesh: PartMesh): WeldedMesh {
  const count = mesh.vertices.length / 3;
  const { points, weldedOf } = weldPoints(mesh.vertices, count);
  const triangleCount = mesh.triangles.length / 3;
  const triangles = new Uint32Array(mesh.triangles.length);
  const bodyOf = new Uint32Array(triangleCount);
  const faceOf = new Uint32Array(triangleCount);
  const faces = new Map<number, number>();
  let kept = 0;
  for (let t = 0; t < triangleCount; t++) {
    const a = weldedOf[mesh.triangles[3 * t]!]!;
    const b = weldedOf[mesh.triangles[3 * t + 1]!]!;
    const c = weldedOf[mesh.triangles[3 * t + 2]!]!;
    if (a === b || b === c || c === a) continue;
    triangles.set([a, b, c], 3 * kept);
    const body = mesh.bodyOf[t]!;
    bodyOf[kept] = body;
    // Faces have 32 bits and bodies 16: their pair is a safe integer.
    const key = body * 2 ** 32 + mesh.faceOf[t]!;
    let face = faces.get(key);
    if (face === undefined) {
      face = faces.size;
      faces.set(key, face);
    }
    faceOf[kept] = face;
    kept++;
  }
  return {
    points,
    triangles: triangles.slice(0, 3 * kept),
    bodyOf: bodyOf.slice(0, kept),
    faceOf: faceOf.slice(0, kept),
    faceCount: faces.size,
    size: diagonal(points),
  };
}

function weldPoints(vertices: Float32Array, count: number) {
  const weldedOf = new Uint32Array(count);
  const points = new Float64Array(3 * count);
  // Adding zero turns -0 into 0, so that equal places have equal bits.
  const floats = Float32Array.from(vertices, (value) => value + 0);
  const bits = new Int32Array(floats.buffer);
  const slots = 2 ** Math.ceil(Math.log2(2 * count + 2));
  const table = new Int32Array(slots).fill(-1);
  let kept = 0;
  for (let i = 0; i < count; i++) {
    let slot =
      (Math.imul(bits[3 * i]!, 73856093) ^
        Math.imul(bits[3 * i + 1]!, 19349663) ^
        Math.imul(bits[3 * i + 2]!, 83492791)) >>>
      0;
    slot = (slot ^ (slot >>> 15)) & (slots - 1);
    for (;;) {
      const other = table[slot]!;
      if (other < 0) {
        table[slot] = kept;
        weldedOf[i] = kept;
        for (let k = 0; k < 3; k++) points[3 * kept + k] = floats[3 * i + k]!;
        kept++;
        break;
      }
      const same =
        points[3 * other] === floats[3 * i] &&
        points[3 * other + 1] === floats[3 * i + 1] &&
        points[3 * other + 2] === floats[3 * i + 2];
      if (same) {
        weldedOf[i] = other;
        break;
      }
      slot = (slot + 1) & (slots - 1);
    }
  }
  return { points: points.slice(0, 3 * kept), weldedOf };
}

function diagonal(points: Float64Array): number {
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  for (let i = 0; i < points.length; i++) {
    low[i % 3] = Math.min(low[i % 3]!, points[i]!);
    high[i % 3] = Math.max(high[i % 3]!, points[i]!);
  }
  return points.length === 0 ? 0 : Math.hypot(high[0]! - low[0]!, high[1]! - low[1]!, high[2]! - low[2]!);
}
