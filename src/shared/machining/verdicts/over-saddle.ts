import { type HeadTool, type LatheStand, latheStand, stretchBetween } from '../setups/lathe-stand.ts';
import { knownCuts, type Scene } from '../setups/scene.ts';
import type { World } from '../setups/world.ts';
import { asking } from './asking.ts';
import { atMostOf, farthestTerm } from './farthest-term.ts';
import type { Question, Term } from './question.ts';
import { saddleFor } from './saddle-at.ts';
import { isTurning, latheWay, unknownCuts } from './turning.ts';

/**
 * Over the wings of the saddle and over the cross slide, wherever the saddle must stand for a cut and nowhere else.
 *
 *     margin = half the swing over it − greatest radius of what turns there
 *
 * Wings: from `saddleHead` before the tool's edge to `saddleTail` behind it, at `swingOverSaddle`, for every place of the edge along the cut.
 * Cross slide: half of `crossSlideWidth` to each side, at `swingOverCrossSlide`. The chuck and the face plate turn too.
 */
export function askOverSaddle(scene: Scene): readonly Question[] {
  if (!isTurning(scene)) return [];
  const stand = latheStand(scene);
  const missing = unknownCuts(scene).map(({ error: { operation, unknown } }) => {
    const ask = asking(scene);
    ask.miss(...unknown);
    return ask.question('over-saddle', operation.id, 0, () => undefined);
  });
  const asked = knownCuts(scene).flatMap((cut) => {
    const way = latheWay(cut);
    if (way === undefined || way === 'drilled') return [];
    return (['over-saddle', 'over-cross-slide'] as const).map((kind) => {
      const ask = asking(scene);
      const edge = saddleFor(cut, stand.sense, ask);
      const isWing = kind === 'over-saddle';
      const allowed = ask.figure(isWing ? 'swingOverSaddle' : 'swingOverCrossSlide') / 2;
      const half = isWing ? 0 : ask.figure('crossSlideWidth') / 2;
      const [towardsHead, towardsTail] = isWing ? [ask.figure('saddleHead'), ask.figure('saddleTail')] : [half, half];
      const pieces = scene.worlds.adding;
      const turnsWith = headPiece(scene, stand);
      const term: Question['term'] = (world, i) => {
        const [head, tail] = edge!(world);
        const [from, to] = [head - towardsHead, tail + towardsTail];
        const piece = pieces[i];
        if (piece === undefined) return turnsWith?.(world, from, to, allowed);
        return farthestTerm(world, piece, stretchBetween(stand.sense * from, stand.sense * to), allowed);
      };
      return ask.question(kind, cut.operation.id, pieces.length + 1, term, atMostOf(scene, allowed));
    });
  });
  return [...missing, ...asked];
}

type HeadTerm = (world: World, from: number, to: number, allowed: number) => Term | undefined;

/** The chuck or plate that turns with the work, as far as it is known: a lathe's own passes over its own saddle, or nearly so. */
function headPiece(scene: Scene, stand: LatheStand): HeadTerm | undefined {
  const { head, sense } = stand;
  const radius = head && headRadius(scene, head);
  const length = head && scene.figures.values.get(head.lengthKey);
  if (radius === undefined || length === undefined || stand.unknown.length > 0) return undefined;
  return (world, from, to, allowed) => {
    const nose = sense * stand.nose(world);
    if (from >= nose + length || to <= nose) return undefined;
    return { has: allowed, needs: radius, at: sense * (nose + length) };
  };
}

/** How far a chuck with its jaws opened, or the face plate, reaches from the line; undefined where it is not known. */
export function headRadius({ figures }: Pick<Scene, 'figures'>, head: HeadTool): number | undefined {
  const diameter = figures.values.get(head.diameterKey);
  if (diameter === undefined) return undefined;
  return diameter / 2 + (head.is === 'chuck' ? (figures.values.get('jawReach') ?? 0) : 0);
}
