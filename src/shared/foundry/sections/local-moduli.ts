import type { Pieces } from '../../base/pieces.ts';
import { type MetalCells, neighbourSteps } from './metal-cells.ts';

/** Rounds of the solver between two yields, and at most. */
const BATCH = 6;
const MOST_ROUNDS = 400;
/** Solved when what is left over is this share of what was given. */
const LEFT_OVER = 1e-3;

/**
 * The surface that each cell's metal is cooled by, mm² per mm³: surface and metal are both spread over what lies within about
 * `reaches` of a cell, through metal only. a − ∇·(ℓ² ∇a) = surface density, nothing passing out. Whatever is spread stays in all:
 * Σ a V = Σ A, so that a casting whose sections are all alike has everywhere its own V/A, to the shape of the spread.
 *
 * @param reaches ℓ of each cell, mm
 * @returns 1/mm, by cell
 */
export function* surfacePerVolume(metal: MetalCells, reaches: Float32Array): Pieces<Float64Array> {
  const { count, volumeOf, areaOf } = metal;
  const { links, weights } = linksOf(metal, reaches);
  const diagonal = Float64Array.from(volumeOf);
  for (let link = 0; link < links.length; link += 2) {
    diagonal[links[link]!]! += weights[link / 2]!;
    diagonal[links[link + 1]!]! += weights[link / 2]!;
  }
  const times = (x: Float64Array, into: Float64Array): void => {
    for (let i = 0; i < count; i++) into[i] = diagonal[i]! * x[i]!;
    for (let k = 0; k < weights.length; k++) {
      const [i, j, w] = [links[2 * k]!, links[2 * k + 1]!, weights[k]!];
      into[i]! -= w * x[j]!;
      into[j]! -= w * x[i]!;
    }
  };
  // Conjugate gradients with the diagonal as preconditioner, begun at the mean.
  let [area, volume] = [0, 0];
  for (let i = 0; i < count; i++) {
    area += areaOf[i]!;
    volume += volumeOf[i]!;
  }
  const x = new Float64Array(count).fill(area / volume);
  const residue = new Float64Array(count);
  const product = new Float64Array(count);
  times(x, product);
  let [given, error] = [0, 0];
  const direction = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    residue[i] = areaOf[i]! - product[i]!;
    direction[i] = residue[i]! / diagonal[i]!;
    error += residue[i]! * direction[i]!;
    given += areaOf[i]! ** 2 / diagonal[i]!;
  }
  for (let round = 1; round <= MOST_ROUNDS && error > LEFT_OVER ** 2 * given; round++) {
    times(direction, product);
    let along = 0;
    for (let i = 0; i < count; i++) along += direction[i]! * product[i]!;
    const step = error / along;
    let next = 0;
    for (let i = 0; i < count; i++) {
      x[i]! += step * direction[i]!;
      residue[i]! -= step * product[i]!;
      next += residue[i]! ** 2 / diagonal[i]!;
    }
    const keep = next / error;
    error = next;
    for (let i = 0; i < count; i++) direction[i] = residue[i]! / diagonal[i]! + keep * direction[i]!;
    if (round % BATCH === 0) yield;
  }
  return x;
}

/** Pairs of neighbours that metal joins, and how freely it lets through: ℓ² times the open share of the wall, in mm³. */
function linksOf({ grid, count, placeOf, numberOf, volumeOf }: MetalCells, reaches: Float32Array) {
  const [x, y, z] = neighbourSteps(grid);
  const cube = grid.cellMm ** 3;
  const links = new Int32Array(6 * count);
  const weights = new Float64Array(3 * count);
  let pairs = 0;
  for (let cell = 0; cell < count; cell++) {
    for (const step of [x!, y!, z!]) {
      const other = numberOf[placeOf[cell]! + step]!;
      if (other < 0) continue;
      const open = Math.min(volumeOf[cell]!, volumeOf[other]!) / cube;
      const reach = Math.min(reaches[cell]!, reaches[other]!);
      links[2 * pairs] = cell;
      links[2 * pairs + 1] = other;
      weights[pairs++] = reach ** 2 * open * grid.cellMm;
    }
  }
  return { links: links.subarray(0, 2 * pairs), weights: weights.subarray(0, pairs) };
}
