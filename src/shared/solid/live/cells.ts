import type { Vec3 } from '../placed.ts';
import type { Box } from '../solid-leaf.ts';

/** Planes that part a space into cells, per axis, rising; none along an axis that is not parted. */
export type Planes = readonly [readonly number[], readonly number[], readonly number[]];

/** A room between planes, by its number along each axis. */
export interface Cell extends Box {
  readonly at: readonly [number, number, number];
}

/** Where planes may lie within a step of their grid: at no place that a drawing would name, so that no face of a body lies in one. */
const OFFSET = 0.381966011250105;
/** Places for a plane in each step of the grid. */
const CHOICES = 16;
/** Bodies up to this many are not worth parting. */
const FEW = 6;
/** Steps that the largest size of a part holds at first: at least this many, less than twice as many. */
const STEPS = 4;
/** A part that is thinner than this many steps is not parted along its thickness. */
const THIN = 1.5;
/** The outermost cells reach out to so many times the power of two that the part stays within: it may grow without changing them. */
const BEYOND = 4;

/**
 * The planes for a part that lies in a box: one in each step of a grid, where it goes through the fewest of the bodies. Its
 * places are the same for all parts of about that size, so that an edit seldom moves a plane.
 */
export function planesFor({ min, max }: Box, bodies: readonly Box[]): Planes {
  const largest = Math.max(...[0, 1, 2].map((k) => max[k]! - min[k]!));
  if (bodies.length <= FEW || !(largest > 0)) return [[], [], []];
  let step = 2 ** Math.floor(Math.log2(largest / STEPS));
  for (;;) {
    const planes = [0, 1, 2].map((k) => planesAlong(k, min[k]!, max[k]!, step, bodies)) as unknown as Planes;
    const cells = planes.reduce((product, along) => product * (along.length + 1), 1);
    if (2 * cells <= bodies.length) return planes;
    step *= 2;
  }
}

function planesAlong(k: number, from: number, to: number, step: number, bodies: readonly Box[]): readonly number[] {
  const planes: number[] = [];
  if (to - from < THIN * step) return planes;
  for (let i = Math.floor(from / step); i * step < to; i++) {
    let best: number | undefined;
    let fewest = Infinity;
    for (let j = 0; j < CHOICES; j++) {
      // From the middle of the step outwards, so that of equal places the one nearest to it is taken.
      const choice = CHOICES / 2 + (j % 2 === 0 ? j / 2 : -(j + 1) / 2);
      const at = (i + (choice + OFFSET) / CHOICES) * step;
      if (at <= from || at >= to) continue;
      const crossed = bodies.reduce((n, { min, max }) => (min[k]! < at && at < max[k]! ? n + 1 : n), 0);
      if (crossed >= fewest) continue;
      fewest = crossed;
      best = at;
    }
    if (best !== undefined) planes.push(best);
  }
  return planes;
}

/** The cells between the planes; those at the ends reach well beyond the box. */
export function cellsBetween(planes: Planes, { min, max }: Box): readonly Cell[] {
  const size = 2 ** Math.ceil(Math.log2(Math.max(1, ...[0, 1, 2].map((k) => Math.max(-min[k]!, max[k]!)))));
  const bounds = planes.map((along) => [-BEYOND * size, ...along, BEYOND * size]);
  const [xs, ys, zs] = bounds as [number[], number[], number[]];
  const cells: Cell[] = [];
  for (let i = 0; i + 1 < xs.length; i++) {
    for (let j = 0; j + 1 < ys.length; j++) {
      for (let k = 0; k + 1 < zs.length; k++) {
        cells.push({
          at: [i, j, k],
          min: [xs[i]!, ys[j]!, zs[k]!] satisfies Vec3,
          max: [xs[i + 1]!, ys[j + 1]!, zs[k + 1]!] satisfies Vec3,
        });
      }
    }
  }
  return cells;
}
