import type { CellGrid } from './cell-grid.ts';
import type { CutSurface } from './cut-into-cells.ts';

/** Cells with less metal than this share of a cube are left to their neighbours. */
const DUST = 1e-4;

/** The cells that hold metal, numbered from 0; what a casting's heat flows through. */
export interface MetalCells {
  readonly grid: CellGrid;
  readonly count: number;
  /** Place in the grid of each cell of metal. */
  readonly placeOf: Int32Array;
  /** Number of the cell of metal at each place of the grid; −1: air. */
  readonly numberOf: Int32Array;
  readonly volumeOf: Float64Array;
  readonly areaOf: Float64Array;
}

/** Steps to the six neighbours in the grid, forward ones first. */
export const neighbourSteps = ({ counts }: CellGrid): readonly number[] => {
  const [x, xy] = [counts[0], counts[0] * counts[1]];
  return [1, x, xy, -1, -x, -xy];
};

/** All metal and all surface, surface that lies in a cell without metal given to the neighbour with most of it. */
export function metalCells({ grid, volumes, areas }: CutSurface): MetalCells {
  const least = DUST * grid.cellMm ** 3;
  const numberOf = new Int32Array(grid.total).fill(-1);
  let count = 0;
  for (let place = 0; place < grid.total; place++) if (volumes[place]! > least) numberOf[place] = count++;
  const placeOf = new Int32Array(count);
  const volumeOf = new Float64Array(count);
  const areaOf = new Float64Array(count);
  const steps = neighbourSteps(grid);
  for (let place = 0; place < grid.total; place++) {
    const number = numberOf[place]!;
    if (number >= 0) {
      placeOf[number] = place;
      volumeOf[number] = volumes[place]!;
      areaOf[number]! += areas[place]!;
    } else if (areas[place]! > 0) {
      const to = fullest(volumes, numberOf, place, steps);
      if (to >= 0) areaOf[to]! += areas[place]!;
    }
  }
  return { grid, count, placeOf, numberOf, volumeOf, areaOf };
}

function fullest(volumes: Float64Array, numberOf: Int32Array, place: number, steps: readonly number[]): number {
  let best = -1;
  let most = 0;
  for (const step of steps) {
    const number = numberOf[place + step] ?? -1;
    if (number < 0 || volumes[place + step]! <= most) continue;
    most = volumes[place + step]!;
    best = number;
  }
  return best;
}
