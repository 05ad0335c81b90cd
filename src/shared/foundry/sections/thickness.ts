import type { Pieces } from '../../base/pieces.ts';
import type { Vec3 } from '../../solid/placed.ts';
import { cross, dot, minus } from '../../solid/vectors.ts';
import type { CastingSolid } from '../casting-solid.ts';
import type { CutSurface } from './cut-into-cells.ts';

/** Places on the surface from which thickness is measured, about. */
const SAMPLES = 6_000;
const BATCH = 500;
/** A wall lies between faces whose outward normals stand at more than about 127° to one another. */
const FACING = -0.6;

/** Thickness square to the surface at one place. */
export interface Thickness {
  readonly triangle: number;
  readonly at: Vec3;
  /** From face to face; undefined where the metal does not end in a face that looks the other way. */
  readonly mm: number | undefined;
  /** Surface that it stands for. */
  readonly areaMm2: number;
}

/**
 * Thickness of the metal under places spread evenly over the surface: straight in, square to the surface, to where the metal
 * ends. Exact at each place, to the facets of the mesh.
 */
export function* thicknesses({ mesh, areaMm2 }: CastingSolid, cut: CutSurface): Pieces<readonly Thickness[]> {
  const { vertices, triangles } = mesh;
  const lists = triangleLists(cut);
  const found: Thickness[] = [];
  const each = areaMm2 / SAMPLES;
  let owed = each / 2;
  let rank = 0;
  for (let triangle = 0; 3 * triangle < triangles.length; triangle++) {
    const [a, b, c] = cornersOf(vertices, triangles, triangle);
    const [u, v] = [minus(b, a), minus(c, a)];
    const normal = cross(u, v);
    const twice = Math.hypot(...normal);
    if (!(twice > 1e-9)) continue;
    const outward: Vec3 = [normal[0] / twice, normal[1] / twice, normal[2] / twice];
    owed += twice / 2;
    for (; owed >= each; owed -= each) {
      if (++rank % BATCH === 0) yield;
      // the plastic number's sequence fills a square evenly; folded over its diagonal, a triangle
      let [s, t] = [(rank * 0.7548776662466927) % 1, (rank * 0.5698402909980532) % 1];
      if (s + t > 1) [s, t] = [1 - s, 1 - t];
      const at: Vec3 = [a[0] + s * u[0] + t * v[0], a[1] + s * u[1] + t * v[1], a[2] + s * u[2] + t * v[2]];
      found.push({ triangle, at, mm: wayOut(mesh, lists, cut, at, outward, triangle), areaMm2: each });
    }
  }
  return found;
}

interface TriangleLists {
  /** By cell: where its list begins; one more for the end. */
  readonly starts: Int32Array;
  readonly triangles: Int32Array;
}

function triangleLists({ grid, pieces, cellOf, triangleOf }: CutSurface): TriangleLists {
  const starts = new Int32Array(grid.total + 1);
  for (let i = 0; i < pieces; i++) starts[cellOf[i]! + 1]! += 1;
  for (let cell = 0; cell < grid.total; cell++) starts[cell + 1]! += starts[cell]!;
  const next = starts.slice();
  const triangles = new Int32Array(pieces);
  for (let i = 0; i < pieces; i++) triangles[next[cellOf[i]!]!++] = triangleOf[i]!;
  return { starts, triangles };
}

/** From a place on the surface straight in, cell by cell, to the first triangle that metal ends at. */
function wayOut(
  { vertices, triangles }: CastingSolid['mesh'],
  lists: TriangleLists,
  { grid }: CutSurface,
  from: Vec3,
  outward: Vec3,
  own: number,
): number | undefined {
  const { cellMm, counts, origin } = grid;
  const way: Vec3 = [-outward[0], -outward[1], -outward[2]];
  const cell = [0, 1, 2].map((k) => Math.floor((from[k]! - origin[k]!) / cellMm));
  const step = way.map((part) => (part > 0 ? 1 : -1));
  const perCell = way.map((part) => (Math.abs(part) > 1e-12 ? cellMm / Math.abs(part) : Infinity));
  const next = [0, 1, 2].map((k) => {
    const wall = origin[k]! + (cell[k]! + (step[k]! > 0 ? 1 : 0)) * cellMm;
    return Math.abs(way[k]!) > 1e-12 ? (wall - from[k]!) / way[k]! : Infinity;
  });
  let best = Infinity;
  let leaving = -1;
  for (;;) {
    const place = cell[0]! + counts[0] * (cell[1]! + counts[1] * cell[2]!);
    for (let i = lists.starts[place]!; i < lists.starts[place + 1]!; i++) {
      const triangle = lists.triangles[i]!;
      if (triangle === own) continue;
      const t = hit(vertices, triangles, triangle, from, way);
      if (t === undefined || t >= best) continue;
      best = t;
      leaving = triangle;
    }
    const k = next[0]! <= next[1]! ? (next[0]! <= next[2]! ? 0 : 2) : next[1]! <= next[2]! ? 1 : 2;
    if (best <= next[k]!) break;
    cell[k]! += step[k]!;
    next[k]! += perCell[k]!;
    if (cell[k]! < 0 || cell[k]! >= counts[k]!) break;
  }
  if (leaving < 0) return undefined;
  const [a, b, c] = cornersOf(vertices, triangles, leaving);
  const normal = cross(minus(b, a), minus(c, a));
  return dot(normal, outward) / Math.hypot(...normal) < FACING ? best : undefined;
}

/** How far along the way a triangle is left from behind; undefined where it is not, or is met from its front. */
function hit(
  vertices: Float32Array,
  triangles: Uint32Array,
  triangle: number,
  from: Vec3,
  way: Vec3,
): number | undefined {
  const [a, b, c] = cornersOf(vertices, triangles, triangle);
  const [u, v] = [minus(b, a), minus(c, a)];
  const p = cross(way, v);
  const det = dot(u, p);
  // seen from behind, a triangle runs clockwise
  if (det > -1e-12) return undefined;
  const w = minus(from, a);
  const s = dot(w, p) / det;
  if (s < -1e-6 || s > 1 + 1e-6) return undefined;
  const q = cross(w, u);
  const t = dot(way, q) / det;
  if (t < -1e-6 || s + t > 1 + 1e-6) return undefined;
  const far = dot(v, q) / det;
  return far > 1e-4 ? far : undefined;
}

function cornersOf(vertices: Float32Array, triangles: Uint32Array, triangle: number): readonly [Vec3, Vec3, Vec3] {
  const at = (corner: number): Vec3 => {
    const i = 3 * triangles[3 * triangle + corner]!;
    return [vertices[i]!, vertices[i + 1]!, vertices[i + 2]!];
  };
  return [at(0), at(1), at(2)];
}
