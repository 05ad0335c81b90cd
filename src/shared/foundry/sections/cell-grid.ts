import type { Bounds } from '../../solid/bounds.ts';
import type { Vec3 } from '../../solid/placed.ts';

/** Cells of metal that a casting is cut into at most, about. */
const MOST_OF_METAL = 60_000;
/** Cells of the box about it at most, about. */
const MOST_OF_BOX = 1_500_000;
/** Cells are never smaller, mm. */
const LEAST_CELL_MM = 0.4;

/** A box in cubes, one cube of air all round. */
export interface CellGrid {
  readonly origin: Vec3;
  readonly cellMm: number;
  readonly counts: readonly [number, number, number];
  readonly total: number;
}

/** The grid for a casting, as fine as its size allows. */
export function gridFor({ min, max }: Bounds, volumeMm3: number, cells = MOST_OF_METAL): CellGrid {
  const sides = [0, 1, 2].map((k) => Math.max(max[k]! - min[k]!, 1e-6));
  const box = sides[0]! * sides[1]! * sides[2]!;
  const cellMm = Math.max(
    LEAST_CELL_MM,
    Math.cbrt(volumeMm3 / cells),
    Math.cbrt((box * cells) / MOST_OF_METAL / MOST_OF_BOX),
  );
  // Off by a third of a cell, so that faces at round places do not lie on the borders of cells.
  const counts = sides.map((side) => Math.ceil(side / cellMm) + 3) as [number, number, number];
  const origin = [0, 1, 2].map((k) => min[k]! - 1.32 * cellMm) as unknown as Vec3;
  return { origin, cellMm, counts, total: counts[0] * counts[1] * counts[2] };
}
