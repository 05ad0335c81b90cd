import type { Piece } from '../setup-check.ts';
import { type Pose, poseOf, sweepsTheSame } from './pose.ts';
import { clear, nothingFound, type Reach } from './reach.ts';
import { reachOfShape } from './reach-of-shape.ts';
import { SLIVER_MM, type Stretch, type SweepLine, type SweepPiece } from './sweep-piece.ts';
import { createTakers } from './takers.ts';

/** One copy of one piece that adds, as it is swept. */
export interface SweptCopy {
  readonly piece: Piece;
  /** Its place in the list of pieces, and which of that piece's moves it is. */
  readonly index: number;
  readonly copy: number;
  readonly reach: Reach;
  /** How far it reaches anywhere along the line; never less than the truth. */
  readonly greatest: number;
}

/** Pieces made ready to be swept about a line: ask for as many stretches as need be. */
export interface Sweeper {
  readonly line: SweepLine;
  /** Of each of several copies that sweep the very same, one. Farthest first. */
  readonly copies: readonly SweptCopy[];
  /** Where the whole begins and ends along the line; undefined when nothing adds. */
  readonly extent: Stretch | undefined;
  /**
   * Puts the farthest of all that lies between `from` and `to` (from < to) into `cell`.
   *
   * @param among what `rivalsIn` found for a stretch that holds this one; all copies when absent
   */
  lookWithin(from: number, to: number, cell: Cell, among?: readonly Rival[]): void;
  /** The copies that have something in the stretch, farthest first: for one that is looked at in many parts. */
  rivalsIn(from: number, to: number): readonly Rival[];
}

/** A copy in a stretch. */
export interface Rival {
  /** Into the sweeper's `copies`. */
  readonly by: number;
  /** How far it reaches there; never less than the truth. */
  readonly greatest: number;
}

/** What lies in a stretch. */
export interface Cell {
  /** 0 where there is nothing. */
  most: number;
  /** Of a point that no piece takes away; 0 where none is sure. */
  least: number;
  /** The point of `most`, whether or not it is taken away again: along the line, and across it from the line. */
  x: number;
  y: number;
  z: number;
  /** Into the sweeper's `copies`; −1 where there is nothing. */
  by: number;
  /** About how far it reaches everywhere in the stretch. */
  even: number;
}

export const emptyCell = (): Cell => ({ most: 0, least: 0, x: 0, y: 0, z: 0, by: -1, even: 0 });

export function createSweeper(pieces: readonly SweepPiece[], line: SweepLine): Sweeper {
  const copies = pieces.flatMap((piece, index) => (piece.adds ? copiesOf(piece, index, line) : []));
  copies.sort((a, b) => b.greatest - a.greatest);
  const found = nothingFound();
  const mayTake = createTakers(pieces, line);
  const all = copies.map(({ greatest }, by): Rival => ({ by, greatest }));
  return {
    line,
    copies,
    extent:
      copies.length === 0
        ? undefined
        : [Math.min(...copies.map(({ reach }) => reach.lo)), Math.max(...copies.map(({ reach }) => reach.hi))],
    lookWithin(from, to, cell, among = all) {
      cell.most = 0;
      cell.least = 0;
      cell.even = 0;
      cell.by = -1;
      for (const { by, greatest } of among) {
        if (greatest <= cell.least) break;
        const { reach, index } = copies[by]!;
        if (reach.hi - from <= SLIVER_MM || to - reach.lo <= SLIVER_MM) continue;
        clear(found, cell.least);
        reach.within(from, to, found);
        if (found.most > cell.most || (cell.by < 0 && found.most >= 0)) {
          cell.most = found.most;
          cell.by = by;
          cell.x = found.x;
          cell.y = found.y;
          cell.z = found.z;
        }
        if (found.even > cell.even) cell.even = found.even;
        if (found.least > cell.least && !mayTake(index, found.x, found.y, found.z)) cell.least = found.least;
      }
    },
    rivalsIn(from, to) {
      const rivals: Rival[] = [];
      for (const { by, greatest } of all) {
        const { reach } = copies[by]!;
        if (reach.hi - from <= SLIVER_MM || to - reach.lo <= SLIVER_MM) continue;
        clear(found, -1);
        reach.within(from, to, found);
        if (found.most >= 0) rivals.push({ by, greatest: Math.min(greatest, found.most) });
      }
      return rivals.sort((a, b) => b.greatest - a.greatest);
    },
  };
}

function copiesOf(piece: SweepPiece, index: number, line: SweepLine): SweptCopy[] {
  const poses: Pose[] = [];
  const copies: SweptCopy[] = [];
  const found = nothingFound();
  piece.moves.forEach((move, copy) => {
    const pose = poseOf(piece.shape, move, line);
    if (poses.some((before) => sweepsTheSame(before, pose))) return;
    poses.push(pose);
    const reach = reachOfShape(piece.shape, piece.grow, pose);
    clear(found, -1);
    reach.within(reach.lo, reach.hi, found);
    copies.push({ piece: copyOf(piece.piece, copy), index, copy, reach, greatest: found.most });
  });
  return copies;
}

const copyOf = (piece: Piece, copy: number): Piece =>
  piece.is === 'fixture' || copy === 0 ? piece : { ...piece, copy: piece.copy + copy };
