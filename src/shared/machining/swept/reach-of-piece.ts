import { pointFrom } from './pose.ts';
import type { Farthest, Stretch, SweepLine, SweepPiece } from './sweep-piece.ts';
import { createSweeper, emptyCell, type Sweeper } from './sweeper.ts';

/**
 * The farthest that one piece reaches from the line within the stretch, with the point of it that does, whether or not another piece takes that point away.
 * Undefined when it does not add or has nothing there.
 */
export function reachOfPiece(piece: SweepPiece, line: SweepLine, stretch: Stretch): Farthest | undefined {
  const found = reachWithin(createSweeper([piece], line), stretch);
  return found && { ...found, least: found.pointMm };
}

/** The farthest of all pieces within a stretch. */
export interface FarthestOfAll extends Farthest {
  /** Which of the pieces carries it. */
  readonly index: number;
  /** Distance of `point`; `least` is 0, or less than this, where a piece may take it away. */
  readonly pointMm: number;
}

/** The farthest that the pieces reach within the stretch, exactly where the shapes allow it; undefined when nothing is there. */
export function reachWithin(sweeper: Sweeper, [from, to]: Stretch): FarthestOfAll | undefined {
  const cell = emptyCell();
  if (!(to > from)) return undefined;
  sweeper.lookWithin(from, to, cell);
  const copy = sweeper.copies[cell.by];
  if (!copy) return undefined;
  return {
    most: cell.most,
    least: cell.least,
    at: cell.x,
    point: pointFrom(sweeper.line, cell.x, cell.y, cell.z),
    pointMm: Math.sqrt(cell.y * cell.y + cell.z * cell.z),
    index: copy.index,
    copy: copy.copy,
  };
}
