import type { Pieces } from '../../base/pieces.ts';
import type { MetalCells } from './metal-cells.ts';

/** Ways to a neighbour by a face, an edge and a corner of a cube, in sides of it: within 8 % of the true distance, all told. */
const FACE = 1;
const EDGE = 4 / 3;
const CORNER = 5 / 3;
/** A corner of a cube lies 1.73 radii from the middle of the ball in it. */
const COVERED = 1.75;
/** And a cell may be touched by no more than its own corner, in sides of it. */
const SLACK = 1.8;

interface Step {
  readonly by: number;
  readonly length: number;
}

/** To all 26 neighbours; the later 13 of them lead back in the grid's order. */
function allSteps([nx, ny]: readonly [number, number, number]): readonly Step[] {
  const steps: Step[] = [];
  for (let z = -1; z <= 1; z++) {
    for (let y = -1; y <= 1; y++) {
      for (let x = -1; x <= 1; x++) {
        const apart = Math.abs(x) + Math.abs(y) + Math.abs(z);
        const length = apart === 1 ? FACE : apart === 2 ? EDGE : CORNER;
        if (apart > 0) steps.push({ by: x + nx * (y + ny * z), length });
      }
    }
  }
  return steps.sort((a, b) => b.by - a.by);
}

/** Depth of the middle of each cell under the surface, mm; of a cell that the surface passes through, by how full it is. */
export function depthsOf({ grid, count, placeOf, numberOf, volumeOf }: MetalCells): Float32Array {
  const cube = grid.cellMm ** 3;
  const depths = new Float32Array(count);
  for (let cell = 0; cell < count; cell++) {
    const full = volumeOf[cell]! / cube;
    depths[cell] = full > 0.999 ? Infinity : Math.max(full - 0.5, 0.1 * full);
  }
  const steps = allSteps(grid.counts);
  const half = steps.length / 2;
  const relax = (cell: number, from: number, to: number): void => {
    const place = placeOf[cell]!;
    let best = depths[cell]!;
    for (let k = from; k < to; k++) {
      const other = numberOf[place + steps[k]!.by]!;
      const depth = (other < 0 ? -0.5 : depths[other]!) + steps[k]!.length;
      if (depth < best) best = depth;
    }
    depths[cell] = best;
  };
  for (let cell = 0; cell < count; cell++) relax(cell, half, steps.length);
  for (let cell = count - 1; cell >= 0; cell--) relax(cell, 0, half);
  for (let cell = 0; cell < count; cell++) depths[cell]! *= grid.cellMm;
  return depths;
}

/** The middle of the metal over each cell. */
export interface Middles {
  /** The cell in the middle, by cell; a middle is its own. */
  readonly of: Int32Array;
  /** Radius of the ball about the middle that the metal just holds, mm, by cell. */
  readonly radii: Float32Array;
}

/** Uphill in depth from each cell, as long as the ball about where it leads still covers the cell, corners of boxes included. */
export function* middlesOf(metal: MetalCells, depths: Float32Array): Pieces<Middles> {
  const { grid, count, placeOf } = metal;
  const uphill = uphillOf(metal, depths);
  yield;
  const of = new Int32Array(count);
  const radii = new Float32Array(count);
  for (let cell = 0; cell < count; cell++) {
    let at = cell;
    for (let next = uphill[at]!; next !== at; next = uphill[at]!) {
      const apart = distance(grid.counts, placeOf[cell]!, placeOf[next]!);
      if (apart * grid.cellMm > COVERED * depths[next]! + SLACK * grid.cellMm) break;
      at = next;
    }
    of[cell] = at;
    radii[cell] = radiusAt(metal, depths, at);
  }
  return { of, radii };
}

function uphillOf({ grid, count, placeOf, numberOf }: MetalCells, depths: Float32Array): Int32Array {
  const steps = allSteps(grid.counts);
  const uphill = new Int32Array(count);
  for (let cell = 0; cell < count; cell++) {
    let best = cell;
    let rise = 1e-6 * grid.cellMm;
    for (const { by, length } of steps) {
      const other = numberOf[placeOf[cell]! + by]!;
      if (other < 0) continue;
      const gain = (depths[other]! - depths[cell]!) / length;
      if (gain > rise) [best, rise] = [other, gain];
    }
    uphill[cell] = best;
  }
  return uphill;
}

/**
 * The true middle lies between cells: where depth rises by less than a cell's side from one to the next, the ridge is between
 * them. Along a wall depth does not change at all, which says nothing; so the axis that says most holds.
 */
function radiusAt({ grid, placeOf, numberOf }: MetalCells, depths: Float32Array, cell: number): number {
  const { cellMm, counts } = grid;
  const here = depths[cell]!;
  let more = cellMm / 2;
  for (const step of [1, counts[0], counts[0] * counts[1]]) {
    let best = -cellMm / 2;
    for (const by of [step, -step]) {
      const other = numberOf[placeOf[cell]! + by]!;
      if (other >= 0) best = Math.max(best, depths[other]!);
    }
    more = Math.min(more, Math.max(0, (cellMm + best - here) / 2));
  }
  return here + more;
}

function distance([nx, ny]: readonly [number, number, number], a: number, b: number): number {
  const x = (a % nx) - (b % nx);
  const y = (Math.floor(a / nx) % ny) - (Math.floor(b / nx) % ny);
  const z = Math.floor(a / (nx * ny)) - Math.floor(b / (nx * ny));
  return Math.hypot(x, y, z);
}
