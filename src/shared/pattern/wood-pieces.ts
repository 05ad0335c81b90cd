import { axes } from '../build/station.ts';
import { boundsOfCopy } from '../solid/bounds.ts';
import type { Vec3 } from '../solid/placed.ts';
import type { PatternPiece } from './pattern-piece.ts';

/** A piece of wood that a body of the pattern is worked from: the block that just holds it. */
export interface WoodPiece {
  readonly key: string;
  readonly name: string;
  readonly is: PatternPiece['is'];
  readonly count: number;
  /** At the pattern's size along X, Y and Z, without what is planed off. */
  readonly sizeMm: Vec3;
}

/** The list of pieces of a wooden pattern: of each body that adds the block about one of its copies. */
export const woodPieces = (pieces: readonly PatternPiece[], factors: Vec3): readonly WoodPiece[] =>
  pieces.flatMap(({ adds, key, name, is, shape, moves, taper }): readonly WoodPiece[] => {
    const move = moves[0];
    if (!adds || !move) return [];
    const { min, max } = boundsOfCopy(shape, move);
    const sizeMm = axes.map((axis, k) => {
      // Draft widens what lies across the draw, at most by the whole of its height.
      const draw = taper ? axes.indexOf(taper.draw) : k;
      const out = taper && axis !== taper.draw ? 2 * taper.slope * (max[draw]! - min[draw]!) : 0;
      return (max[k]! - min[k]! + out) * factors[k]!;
    });
    return [{ key, name, is, count: moves.length, sizeMm: sizeMm as unknown as Vec3 }];
  });
