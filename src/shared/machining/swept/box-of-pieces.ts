import { boundsOfCopy } from '../../solid/bounds.ts';
import { grownShape } from './grown-shape.ts';
import { frameOf } from './pose.ts';
import type { Stretch, SweepLine, SweepPiece } from './sweep-piece.ts';

/** A face of the box, and what reaches it. */
export interface BoxFace {
  /** mm: along the line from the datum; across it from the line. */
  readonly at: number;
  /** Into the pieces, and which of that piece's moves. */
  readonly index: number;
  readonly copy: number;
}

type Faces = readonly [low: BoxFace, high: BoxFace];

/** The box that just holds what adds, seen from the line: along it, and across it on the first and the second axis. */
export interface PieceBox {
  readonly along: Faces;
  readonly across: readonly [first: Faces, second: Faces];
}

/**
 * The box about all pieces that add, stock included; exact for every shape but what is taken away again, which counts as there.
 * Undefined when nothing adds.
 */
export function boxOfPieces(pieces: readonly SweepPiece[], line: SweepLine): PieceBox | undefined {
  const rows = frameOf(line);
  const origin = [0, line.u, line.v];
  const faces: [BoxFace, BoxFace][] = [];
  pieces.forEach(({ shape, moves, adds, grow }, index) => {
    if (!adds) return;
    const grown = grownShape(shape, grow);
    const slack = shape.is === 'mesh' ? grow : 0;
    moves.forEach((move, copy) => {
      const { min, max } = boundsOfCopy(grown, move);
      rows.forEach((row, k) => {
        const low = min[row]! - slack - origin[k]!;
        const high = max[row]! + slack - origin[k]!;
        const before = faces[k];
        if (!before)
          faces[k] = [
            { at: low, index, copy },
            { at: high, index, copy },
          ];
        else {
          if (low < before[0].at) before[0] = { at: low, index, copy };
          if (high > before[1].at) before[1] = { at: high, index, copy };
        }
      });
    });
  });
  const [along, first, second] = faces;
  return along && first && second && { along, across: [first, second] };
}

/** Where one piece begins and ends along the line, stock included; undefined when it does not add. */
export function extentOfPiece(piece: SweepPiece, line: SweepLine): Stretch | undefined {
  const box = boxOfPieces([piece], line);
  return box && [box.along[0].at, box.along[1].at];
}
