import type { Pieces } from '../../base/pieces.ts';
import type { CastingSolid } from '../casting-solid.ts';
import type { CellGrid } from './cell-grid.ts';

/** A closed surface cut along the walls of a grid: exact but for rounding, however thin the metal is. */
export interface CutSurface {
  readonly grid: CellGrid;
  /** Metal in each cell, mm³. */
  readonly volumes: Float64Array;
  /** Surface in each cell, mm². */
  readonly areas: Float32Array;
  /** The pieces that triangles fall into: which triangle, in which cell, and how large it is there, mm². */
  readonly pieces: number;
  readonly triangleOf: Int32Array;
  readonly cellOf: Int32Array;
  readonly areaOf: Float32Array;
}

/** A triangle cut by three pairs of planes has nine corners at most. */
const CORNERS = 12;
/** Pieces between two yields. */
const BATCH = 6_000;

type Polygon = { readonly at: Float64Array; count: number };
const polygon = (): Polygon => ({ at: new Float64Array(3 * CORNERS), count: 0 });

/**
 * Cuts the surface of a casting along the walls of the grid. The volume of metal in each cell follows by the divergence theorem:
 * a piece of surface that looks along +X has metal behind it, to the near wall of its own cell and through all cells before it.
 */
export function* cutIntoCells({ mesh }: Pick<CastingSolid, 'mesh'>, grid: CellGrid): Pieces<CutSurface> {
  const { vertices, triangles } = mesh;
  const { cellMm, counts, origin, total } = grid;
  const volumes = new Float64Array(total);
  /** Surface that looks along X less that which looks against it, mm². */
  const facing = new Float64Array(total);
  const areas = new Float32Array(total);
  const list = createPieceList();
  let due = BATCH;
  const [slab, bar, piece, rest, restOfSlab, restOfBar] = [0, 1, 2, 3, 4, 5].map(polygon) as [
    Polygon,
    Polygon,
    Polygon,
    Polygon,
    Polygon,
    Polygon,
  ];
  for (let t = 0; t < triangles.length; t += 3) {
    if (list.count() > due) {
      due += BATCH;
      yield;
    }
    rest.count = 3;
    for (let corner = 0; corner < 3; corner++) {
      const from = 3 * triangles[t + corner]!;
      for (let k = 0; k < 3; k++) rest.at[3 * corner + k] = (vertices[from + k]! - origin[k]!) / cellMm;
    }
    const normal = normalOf(rest);
    if (!normal) continue;
    const [nx, ny, nz] = normal;
    const lastZ = cellRange(rest, 2)[1];
    for (let z = cellRange(rest, 2)[0]; z <= lastZ; z++) {
      split(rest, 2, z + 1, slab, z === lastZ);
      if (slab.count < 3) continue;
      copy(slab, restOfSlab);
      const [fromY, lastY] = cellRange(slab, 1);
      for (let y = fromY; y <= lastY; y++) {
        split(restOfSlab, 1, y + 1, bar, y === lastY);
        if (bar.count < 3) continue;
        copy(bar, restOfBar);
        const [fromX, lastX] = cellRange(bar, 0);
        for (let x = fromX; x <= lastX; x++) {
          split(restOfBar, 0, x + 1, piece, x === lastX);
          const area = measureArea(piece, nx, ny, nz);
          if (!(area > 0)) continue;
          const cell = x + counts[0] * (y + counts[1] * z);
          volumes[cell]! += nx * area * (middleX - x);
          facing[cell]! += nx * area;
          areas[cell]! += area * cellMm * cellMm;
          list.push(t / 3, cell, area * cellMm * cellMm);
        }
      }
    }
  }
  yield;
  const cube = cellMm ** 3;
  for (let row = 0; row < total; row += counts[0]) {
    let beyond = 0;
    for (let cell = row + counts[0] - 1; cell >= row; cell--) {
      volumes[cell] = Math.min(1, Math.max(0, volumes[cell]! + beyond)) * cube;
      beyond += facing[cell]!;
    }
  }
  return { grid, volumes, areas, ...list.taken() };
}

function createPieceList() {
  let room = 1 << 14;
  let count = 0;
  let triangleOf = new Int32Array(room);
  let cellOf = new Int32Array(room);
  let areaOf = new Float32Array(room);
  const grown = <A extends Int32Array | Float32Array>(from: A, to: A): A => {
    to.set(from);
    return to;
  };
  return {
    push(triangle: number, cell: number, area: number): void {
      if (count === room) {
        room *= 2;
        triangleOf = grown(triangleOf, new Int32Array(room));
        cellOf = grown(cellOf, new Int32Array(room));
        areaOf = grown(areaOf, new Float32Array(room));
      }
      triangleOf[count] = triangle;
      cellOf[count] = cell;
      areaOf[count] = area;
      count++;
    },
    count: () => count,
    taken: () => ({
      pieces: count,
      triangleOf: triangleOf.subarray(0, count),
      cellOf: cellOf.subarray(0, count),
      areaOf: areaOf.subarray(0, count),
    }),
  };
}

function normalOf({ at }: Polygon): readonly [number, number, number] | undefined {
  const [ux, uy, uz] = [at[3]! - at[0]!, at[4]! - at[1]!, at[5]! - at[2]!];
  const [vx, vy, vz] = [at[6]! - at[0]!, at[7]! - at[1]!, at[8]! - at[2]!];
  const [x, y, z] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
  const length = Math.hypot(x, y, z);
  return length > 1e-12 ? [x / length, y / length, z / length] : undefined;
}

/** The middle of the last piece that was measured, along X, in cells. */
let middleX = 0;

/** Area of a flat polygon, in squares of cells. */
function measureArea({ at, count }: Polygon, nx: number, ny: number, nz: number): number {
  if (count < 3) return 0;
  const [ox, oy, oz] = [at[0]!, at[1]!, at[2]!];
  let twice = 0;
  let moment = 0;
  for (let i = 1; i + 1 < count; i++) {
    const [ux, uy, uz] = [at[3 * i]! - ox, at[3 * i + 1]! - oy, at[3 * i + 2]! - oz];
    const [vx, vy, vz] = [at[3 * i + 3]! - ox, at[3 * i + 4]! - oy, at[3 * i + 5]! - oz];
    const one = nx * (uy * vz - uz * vy) + ny * (uz * vx - ux * vz) + nz * (ux * vy - uy * vx);
    twice += one;
    moment += one * (ox + (ux + vx) / 3);
  }
  middleX = twice > 0 ? moment / twice : ox;
  return twice / 2;
}

function cellRange({ at, count }: Polygon, axis: number): [number, number] {
  let [low, high] = [Infinity, -Infinity];
  for (let i = 0; i < count; i++) {
    const value = at[3 * i + axis]!;
    if (value < low) low = value;
    if (value > high) high = value;
  }
  return [Math.floor(low), Math.floor(high)];
}

function copy(from: Polygon, to: Polygon): void {
  to.count = from.count;
  for (let i = 0; i < 3 * from.count; i++) to.at[i] = from.at[i]!;
}

const after = polygon();

/** Takes what lies before a plane across an axis off a polygon; the rest stays in it. The last cell takes all. */
function split(from: Polygon, axis: number, at: number, before: Polygon, isLast: boolean): void {
  if (isLast) {
    copy(from, before);
    from.count = 0;
    return;
  }
  before.count = 0;
  after.count = 0;
  const { count } = from;
  for (let i = 0; i < count; i++) {
    const next = i + 1 === count ? 0 : i + 1;
    const [here, there] = [from.at[3 * i + axis]! - at, from.at[3 * next + axis]! - at];
    if (here <= 0) put(before, from.at, i);
    if (here >= 0) put(after, from.at, i);
    if ((here < 0 && there > 0) || (here > 0 && there < 0)) {
      const s = here / (here - there);
      for (const part of [before, after]) {
        if (part.count >= CORNERS) continue;
        for (let k = 0; k < 3; k++) {
          part.at[3 * part.count + k] = from.at[3 * i + k]! + s * (from.at[3 * next + k]! - from.at[3 * i + k]!);
        }
        part.at[3 * part.count + axis] = at;
        part.count++;
      }
    }
  }
  copy(after, from);
}

function put(to: Polygon, from: Float64Array, i: number): void {
  if (to.count >= CORNERS) return;
  for (let k = 0; k < 3; k++) to.at[3 * to.count + k] = from[3 * i + k]!;
  to.count++;
}
