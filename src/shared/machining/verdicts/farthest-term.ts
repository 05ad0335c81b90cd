import type { Piece } from '../setup-check.ts';
import type { Scene } from '../setups/scene.ts';
import type { World } from '../setups/world.ts';
import type { Stretch } from '../swept/sweep-piece.ts';
import type { Term } from './question.ts';

/** How far a piece reaches within a stretch against a radius that is allowed there; undefined where it does not come there. */
export function farthestTerm(world: World, piece: number, stretch: Stretch, allowed: number): Term | undefined {
  const far = world.reachOf(piece, stretch);
  if (!far) return undefined;
  return { has: allowed, needs: far.most, at: far.at, piece: pieceWith(world, piece, far.copy) };
}

/** The margin of each piece if it reached into the stretch as far as it does anywhere. */
export const atMostOf =
  ({ worlds }: Pick<Scene, 'worlds'>, allowed: number) =>
  (carrier: number): { readonly piece: number; readonly margin: number } | undefined => {
    const piece = worlds.adding[carrier];
    return piece === undefined ? undefined : { piece, margin: allowed - worlds.greatestOf(piece) };
  };

/** The piece, with the copy of it that carries. */
function pieceWith(world: World, index: number, copy: number): Piece {
  const { piece } = world.recipeOf(index);
  return piece.is === 'body' ? { ...piece, copy } : piece;
}
