import type { Axis } from '../../build/station.ts';
import type { Piece, SweptProfile } from '../setup-check.ts';
import { SLIVER_MM, type SweepLine, type SweepPiece } from './sweep-piece.ts';
import { type Cell, createSweeper, type Rival, type Sweeper } from './sweeper.ts';

export interface SweepOptions {
  /** Places along the line at which cells must end besides the corners of the pieces: the ends of a gap, of a cut, of jaws. */
  readonly edges?: readonly number[];
  /** Cells are cut finer where r changes by more than this within them. 0.5 mm. */
  readonly stepMm?: number;
  /** No more cells than this are made by cutting finer; those at corners and `edges` are always there. 160. */
  readonly mostCells?: number;
}

/** No cell is cut into pieces shorter than this, mm. */
const SHORTEST_MM = 0.05;

/**
 * The greatest radius of the pieces swept about the line. In each cell `most` is never less than the distance from the line to any
 * point of theirs, up to slivers of `SLIVER_MM`, and `least` is the distance of a real point within the cell that no piece takes away (0 where none
 * is sure). What is taken away is left out of account in `most`: a mesh of the finished solid can say it closer
 * (`sweep-mesh.ts`, `tighter.ts`).
 *
 * Exact (most = least) for straight and round outlines drawn out along the line or square to it, for what is turned about an
 * axis parallel or square to the line, and for meshes; within 1e-5 mm for what lies askew. With stock all round see `grown-shape.ts`.
 */
export const sweepPieces = (pieces: readonly SweepPiece[], line: SweepLine, options: SweepOptions = {}): SweptProfile =>
  profileOf(createSweeper(pieces, line), options);

/** The same of pieces that are ready already. */
export function profileOf(sweeper: Sweeper, options: SweepOptions = {}): SweptProfile {
  const { extent, copies, line } = sweeper;
  const pieces = copies.map(({ piece }) => piece);
  if (!extent) return emptyProfile(line.axis);
  const [lo, hi] = extent;
  const places = [lo, hi];
  for (const { reach } of copies) for (const x of reach.breaks) places.push(x);
  for (const x of options.edges ?? []) if (x > lo && x < hi) places.push(x);
  const cells = cutFiner(sweeper, cellsBetween(sweeper, distinct(places)), options);
  return profileFrom(line.axis, cells, pieces);
}

export const emptyProfile = (axis: Axis): SweptProfile => ({
  axis,
  edges: new Float64Array(0),
  most: new Float64Array(0),
  least: new Float64Array(0),
  by: new Int32Array(0),
  pieces: [],
});

interface Cut extends Cell {
  readonly from: number;
  readonly to: number;
  /** The copies that any part of the cell may ask for; undefined until it is cut. */
  readonly among: readonly Rival[] | undefined;
}

function look(sweeper: Sweeper, from: number, to: number, among: readonly Rival[] | undefined): Cut {
  const cell: Cut = { from, to, among, most: 0, least: 0, x: 0, y: 0, z: 0, by: -1, even: 0 };
  sweeper.lookWithin(from, to, cell, among);
  return cell;
}

const cellsBetween = (sweeper: Sweeper, edges: readonly number[]): Cut[] =>
  edges.slice(1).map((to, i) => look(sweeper, edges[i]!, to, undefined));

/** In rising order, none nearer to the one before than a sliver. */
export function distinct(places: number[]): readonly number[] {
  const rising = Float64Array.from(places).sort();
  const found: number[] = [];
  for (const x of rising) if (found.length === 0 || x - found.at(-1)! > SLIVER_MM) found.push(x);
  return found;
}

/** Halves cells, those that are the farthest off first, until all are close enough or there are as many as may be. */
function cutFiner(sweeper: Sweeper, cells: Cut[], options: SweepOptions): readonly Cut[] {
  const { stepMm = 0.5, mostCells = 160 } = options;
  // Only where r changes: a bound that stays ahead of `least`, as where something is taken away, stays so in shorter cells.
  const excess = ({ most, even, from, to, by }: Cut) =>
    by < 0 || to - from < 2 * SHORTEST_MM ? 0 : (most - even) / stepMm;
  let now = cells;
  while (now.length < mostCells) {
    const off = now.map(excess);
    const over = off.filter((one) => one > 1).sort((a, b) => b - a);
    if (over.length === 0) break;
    const limit = over[Math.min(over.length, mostCells - now.length) - 1]!;
    let room = mostCells - now.length;
    const next: Cut[] = [];
    now.forEach((cell, i) => {
      if (off[i]! <= 1 || off[i]! < limit || room <= 0) {
        next.push(cell);
        return;
      }
      room--;
      const middle = (cell.from + cell.to) / 2;
      const among = cell.among ?? sweeper.rivalsIn(cell.from, cell.to);
      next.push(look(sweeper, cell.from, middle, among), look(sweeper, middle, cell.to, among));
    });
    now = next;
  }
  return now;
}

function profileFrom(axis: Axis, cells: readonly Cut[], all: readonly Piece[]): SweptProfile {
  // Of the pieces, those alone that carry something.
  const numbers = new Map<number, number>();
  const pieces: Piece[] = [];
  const by = Int32Array.from(cells, (cell) => {
    if (cell.by < 0) return -1;
    let number = numbers.get(cell.by);
    if (number === undefined) {
      number = pieces.push(all[cell.by]!) - 1;
      numbers.set(cell.by, number);
    }
    return number;
  });
  return {
    axis,
    edges: Float64Array.from([...cells.map(({ from }) => from), ...cells.slice(-1).map(({ to }) => to)]),
    most: Float64Array.from(cells, ({ most }) => most),
    least: Float64Array.from(cells, ({ least }) => least),
    by,
    pieces,
  };
}
