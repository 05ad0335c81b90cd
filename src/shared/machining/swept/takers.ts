import { createHolder, type Holds } from '../../solid/holds-point.ts';
import { boxOfPieces } from './box-of-pieces.ts';
import { pointFrom } from './pose.ts';
import type { SweepLine, SweepPiece } from './sweep-piece.ts';

/** Whether any piece may take the point (seen from the line) away from the piece at `index` of the list. */
export type MayTake = (index: number, x: number, y: number, z: number) => boolean;

interface Taker {
  readonly index: number;
  readonly part: string;
  /** Seen from the line: low and high along it, then across it. */
  readonly box: readonly [number, number, number, number, number, number];
  readonly holds: Holds;
}

/** A point this near to the box about a taker is looked at closely, mm. */
const NEAR_MM = 1e-6;

/** The pieces of the list that take away, each from what stands before it in its own part. */
export function createTakers(pieces: readonly SweepPiece[], line: SweepLine): MayTake {
  const takers: Taker[] = [];
  pieces.forEach((piece, index) => {
    if (piece.adds || piece.piece.is === 'fixture') return;
    for (const move of piece.moves) {
      // As though it added: the box is asked for.
      const box = boxOfPieces([{ ...piece, adds: true, moves: [move], grow: 0 }], line);
      if (!box) continue;
      const { along, across } = box;
      takers.push({
        index,
        part: piece.piece.part,
        box: [along[0].at, along[1].at, across[0][0].at, across[0][1].at, across[1][0].at, across[1][1].at],
        holds: createHolder(piece.shape, move),
      });
    }
  });
  return (index, x, y, z) => {
    const { piece } = pieces[index]!;
    if (piece.is === 'fixture') return false;
    for (const taker of takers) {
      const [x0, x1, y0, y1, z0, z1] = taker.box;
      if (x < x0 - NEAR_MM || x > x1 + NEAR_MM || y < y0 - NEAR_MM || y > y1 + NEAR_MM) continue;
      if (z < z0 - NEAR_MM || z > z1 + NEAR_MM || taker.index < index || taker.part !== piece.part) continue;
      if (taker.holds(pointFrom(line, x, y, z))) return true;
    }
    return false;
  };
}
