import type { Kernel, KernelMesh, KernelSolid } from './manifold/kernel.ts';
import { addLeftOut, FIRST, GAUSS, gapAt, SECOND, SUMS, SURFACE, VOLUME } from './mesh/left-out.ts';
import { NONE, neighboursOf, nextSide } from './mesh/neighbours.ts';
import { RADIUS, ROW, roundTable } from './mesh/round-table.ts';
import { shellsOf } from './mesh/shells.ts';
import type { Source } from './mesh/source.ts';
import { createSums, type Sums } from './mesh/sums.ts';
import type { MassProperties, Vec3 } from './placed.ts';

/** The face number of all walls. */
const WALL = 0xffff_ffff;

/** Faces that meet at less than this (sine) run into one another; their border is left where the mesh has it. */
const TANGENT = 0.1;

/** Volume, surface and moments of volume of a piece of metal, about a point near it; what lies side by side adds up. */
export interface SolidSums {
  readonly about: Vec3;
  readonly volumeMm3: number;
  readonly areaMm2: number;
  /** ∫x dV, ∫y dV, ∫z dV. */
  readonly first: Vec3;
  /** ∫x² dV, ∫y² dV, ∫z² dV, ∫xy dV, ∫yz dV, ∫zx dV. */
  readonly second: readonly [number, number, number, number, number, number];
  /** By how much the solid holds more than its mesh, which comes rounded to 24 bits. */
  readonly scale: number;
}

/** What is known of a solid besides its mesh. */
export interface Whole {
  readonly min: Vec3;
  readonly max: Vec3;
  /** Its volume in mm³ with flat facets, given that of its rounded mesh. */
  volume(ofMesh: number): number;
}

/**
 * The sums over a solid that the kernel holds.
 *
 * The kernel's solid has flat facets with their corners on the true surfaces. Volume of that is the kernel's, in float64; its
 * surface and moments are summed over its triangles. To each is added, facet by facet, what lies between the facet and the
 * round surface that it stands for, integrated over what is left of the facet after all cutting. That is exact for whole
 * cylinders and cones, and leaves errors of the fourth order of a facet's angle where round surfaces cut one another.
 *
 * @param sourceOf the body whose mesh the kernel knows by that number.
 * @param walls the number of the box that the solid was cut to, whose faces are no surface of the part.
 */
export function sumsOf(
  mesh: KernelMesh,
  whole: Whole,
  sourceOf: (source: number) => Source,
  walls?: number,
): SolidSums {
  const { vertices, triangles } = mesh;
  const { min, max } = whole;
  const middle: Vec3 = [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2, (min[2] + max[2]) / 2];
  const flat = createSums(SUMS);
  const left = new Float64Array(SUMS);
  const patches = patchesOf(mesh, sourceOf, walls);
  const corners = new Float64Array(9);
  // In the order of the runs: sums come out the same to the last bit however the kernel came to the solid.
  for (const { from, to } of mesh.runs) {
    for (let t = from; t < to; t++) {
      for (let k = 0; k < 3; k++) {
        const at = 3 * triangles[3 * t + k]!;
        corners[3 * k] = vertices[at]! - middle[0];
        corners[3 * k + 1] = vertices[at + 1]! - middle[1];
        corners[3 * k + 2] = vertices[at + 2]! - middle[2];
      }
      addTetrahedron(flat, corners);
      if (patches.faceOf[t] === WALL) continue;
      flat.add(SURFACE, areaOf(corners));
      const table = patches.tables[patches.tableOf[t]!]!;
      const row = patches.rowOf[t]!;
      if (!Number.isNaN(table[row + RADIUS]!)) addLeftOut(left, table, row, middle, corners);
    }
  }
  left[SURFACE]! += borders(mesh, patches);
  const exact = whole.volume(flat.of(VOLUME));
  // The mesh came rounded to 24 bits, which thin walls far from the origin feel; its moments follow the volume.
  const scale = exact / flat.of(VOLUME);
  const sum = (index: number) => scale * flat.of(index) + left[index]!;
  return {
    about: middle,
    volumeMm3: exact + left[VOLUME]!,
    areaMm2: flat.of(SURFACE) + left[SURFACE]!,
    first: [sum(FIRST), sum(FIRST + 1), sum(FIRST + 2)],
    second: [sum(SECOND), sum(SECOND + 1), sum(SECOND + 2), sum(SECOND + 3), sum(SECOND + 4), sum(SECOND + 5)],
    scale,
  };
}

/** Mass properties of the metal that the sums were taken over. `box` is that of the corners of its mesh. */
export function propertiesOf(
  { about, volumeMm3: volume, areaMm2, first, second }: Omit<SolidSums, 'scale'>,
  box: { readonly min: Vec3; readonly max: Vec3 },
  pieces: number,
): MassProperties {
  const [x, y, z] = [first[0] / volume, first[1] / volume, first[2] / volume];
  const [xx, yy, zz] = [second[0] - volume * x * x, second[1] - volume * y * y, second[2] - volume * z * z];
  const [xy, yz, zx] = [second[3] - volume * x * y, second[4] - volume * y * z, second[5] - volume * z * x];
  return {
    volumeMm3: volume,
    areaMm2,
    centre: [about[0] + x, about[1] + y, about[2] + z],
    boxMin: box.min,
    boxMax: box.max,
    inertia: [yy + zz, zz + xx, xx + yy, xy, yz, zx],
    pieces,
  };
}

/** Mass properties of a whole solid that the kernel holds. */
export function measure(
  kernel: Kernel,
  solid: KernelSolid,
  mesh: KernelMesh,
  sourceOf: (source: number) => Source,
): MassProperties {
  const pieces = shellsOf(mesh.vertices, mesh.triangles).pieces.length;
  const whole = wholeOf(kernel, solid);
  return propertiesOf(sumsOf(mesh, whole, sourceOf), whole, pieces);
}

/** A solid that the kernel holds, in float64. */
export const wholeOf = (kernel: Kernel, solid: KernelSolid): Whole => ({
  ...kernel.boxOf(solid),
  volume: () => kernel.volumeOf(solid),
});

/** @param corners nine numbers. */
function areaOf(corners: Float64Array): number {
  const [ex, ey, ez] = [corners[3]! - corners[0]!, corners[4]! - corners[1]!, corners[5]! - corners[2]!];
  const [fx, fy, fz] = [corners[6]! - corners[0]!, corners[7]! - corners[1]!, corners[8]! - corners[2]!];
  return Math.hypot(ey * fz - ez * fy, ez * fx - ex * fz, ex * fy - ey * fx) / 2;
}

/** The table of walls: one row, flat. */
const FLAT = new Float64Array(ROW).fill(Number.NaN);

/** Where each triangle comes from. */
interface Patches {
  readonly tables: readonly Float64Array[];
  /** Per triangle: index into `tables`, and its row there. */
  readonly tableOf: Uint16Array;
  readonly rowOf: Uint32Array;
  /** Per triangle: a number that the triangles of one face of one copy share. */
  readonly faceOf: Uint32Array;
}

function patchesOf(
  { runs, facetOf }: KernelMesh,
  sourceOf: (source: number) => Source,
  walls: number | undefined,
): Patches {
  const tables: Float64Array[] = [];
  const tableOf = new Uint16Array(facetOf.length);
  const rowOf = new Uint32Array(facetOf.length);
  const faceOf = new Uint32Array(facetOf.length);
  /** One solid may come in several runs. */
  const bases = new Map<Source, number>();
  let faces = 0;
  for (const run of runs) {
    if (run.source === walls) {
      const table = tables.push(FLAT) - 1;
      tableOf.fill(table, run.from, run.to);
      faceOf.fill(WALL, run.from, run.to);
      continue;
    }
    const source = sourceOf(run.source);
    const { facets, faces: perCopy } = source.body;
    const table = tables.push(roundTable(source)) - 1;
    const base = bases.get(source) ?? faces;
    if (base === faces) faces += perCopy * source.moves.length;
    bases.set(source, base);
    for (let t = run.from; t < run.to; t++) {
      const number = facetOf[t]!;
      tableOf[t] = table;
      rowOf[t] = number * ROW;
      faceOf[t] = base + Math.floor(number / facets.length) * perCopy + facets[number % facets.length]!.face;
    }
  }
  return { tables, tableOf, rowOf, faceOf };
}

/** @param corners nine numbers: with the origin, the corners of the tetrahedron. */
function addTetrahedron({ add }: Sums, corners: Float64Array): void {
  const ax = corners[0]!;
  const ay = corners[1]!;
  const az = corners[2]!;
  const bx = corners[3]!;
  const by = corners[4]!;
  const bz = corners[5]!;
  const cx = corners[6]!;
  const cy = corners[7]!;
  const cz = corners[8]!;
  const six = ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx);
  const sx = ax + bx + cx;
  const sy = ay + by + cy;
  const sz = az + bz + cz;
  const first = six / 24;
  const second = six / 120;
  add(VOLUME, six / 6);
  add(FIRST, first * sx);
  add(FIRST + 1, first * sy);
  add(FIRST + 2, first * sz);
  add(SECOND, second * (ax * ax + bx * bx + cx * cx + sx * sx));
  add(SECOND + 1, second * (ay * ay + by * by + cy * cy + sy * sy));
  add(SECOND + 2, second * (az * az + bz * bz + cz * cz + sz * sz));
  add(SECOND + 3, second * (ax * ay + bx * by + cx * cy + sx * sy));
  add(SECOND + 4, second * (ay * az + by * bz + cy * cz + sy * sz));
  add(SECOND + 5, second * (az * ax + bz * bx + cz * cx + sz * sx));
}

/**
 * Where two faces meet and the true surfaces lie off their facets, the border lies off the side that the facets share; each
 * face gains or loses the strip between.
 *
 * @returns what all faces gain, in mm².
 */
function borders(mesh: KernelMesh, { tables, tableOf, rowOf, faceOf }: Patches): number {
  const { triangles, vertices } = mesh;
  const isRound = (t: number) => !Number.isNaN(tables[tableOf[t]!]![rowOf[t]! + RADIUS]!);
  const neighbours = neighboursOf(triangles, vertices.length / 3);
  const normal = new Float64Array(3);
  const beyond = new Float64Array(3);
  const here = new Float64Array(3);
  const there = new Float64Array(3);
  let gained = 0;
  for (const { from: first, to: last } of mesh.runs) {
    for (let side = 3 * first; side < 3 * last; side++) {
      const t = Math.floor(side / 3);
      if (faceOf[t] === WALL) continue;
      const other = neighbours[side]!;
      if (other === NONE || faceOf[other] === WALL || faceOf[t] === faceOf[other] || (!isRound(t) && !isRound(other)))
        continue;
      if (!putNormal(vertices, triangles, t, normal) || !putNormal(vertices, triangles, other, beyond)) continue;
      const from = 3 * triangles[side]!;
      const to = 3 * triangles[nextSide(side)]!;
      const [x, y, z] = [vertices[from]!, vertices[from + 1]!, vertices[from + 2]!];
      const [ex, ey, ez] = [vertices[to]! - x, vertices[to + 1]! - y, vertices[to + 2]! - z];
      // Length of the side times the sine between the faces: positive where the metal is on the inner side of the angle.
      const lean =
        (ey * normal[2]! - ez * normal[1]!) * beyond[0]! +
        (ez * normal[0]! - ex * normal[2]!) * beyond[1]! +
        (ex * normal[1]! - ey * normal[0]!) * beyond[2]!;
      const square = ex * ex + ey * ey + ez * ez;
      if (Math.abs(lean) <= TANGENT * Math.sqrt(square)) continue;
      for (const [w, weight] of GAUSS) {
        const [px, py, pz] = [x + w * ex, y + w * ey, z + w * ez];
        gapAt(tables[tableOf[t]!]!, rowOf[t]!, px, py, pz, here);
        gapAt(tables[tableOf[other]!]!, rowOf[other]!, px, py, pz, there);
        const shift =
          (there[0]! - here[0]!) * beyond[0]! +
          (there[1]! - here[1]!) * beyond[1]! +
          (there[2]! - here[2]!) * beyond[2]!;
        gained += (weight * square * shift) / lean;
      }
    }
  }
  return gained;
}

/** @returns whether the triangle has an area, and so a normal. */
function putNormal(vertices: Float32Array, triangles: Uint32Array, t: number, normal: Float64Array): boolean {
  const a = 3 * triangles[3 * t]!;
  const b = 3 * triangles[3 * t + 1]!;
  const c = 3 * triangles[3 * t + 2]!;
  const [x, y, z] = [vertices[a]!, vertices[a + 1]!, vertices[a + 2]!];
  const [ex, ey, ez] = [vertices[b]! - x, vertices[b + 1]! - y, vertices[b + 2]! - z];
  const [fx, fy, fz] = [vertices[c]! - x, vertices[c + 1]! - y, vertices[c + 2]! - z];
  const [nx, ny, nz] = [ey * fz - ez * fy, ez * fx - ex * fz, ex * fy - ey * fx];
  const length = Math.sqrt(nx * nx + ny * ny + nz * nz);
  if (length === 0) return false;
  normal[0] = nx / length;
  normal[1] = ny / length;
  normal[2] = nz / length;
  return true;
}
