import { latheStand } from '../setups/lathe-stand.ts';
import { knownCuts, type Scene } from '../setups/scene.ts';
import { asking } from './asking.ts';
import { atMostOf } from './farthest-term.ts';
import type { Question } from './question.ts';
import { saddleFor } from './saddle-at.ts';
import { headPiece, overZone, saddleKinds, saddleZone } from './saddle-terms.ts';
import { shiftFor } from './tool-stand.ts';
import { isTurning, latheWay, unknownCuts } from './turning.ts';

/**
 * Over the wings of the saddle and over the cross slide, wherever the saddle must stand for a cut and nowhere else.
 *
 *     margin = half the swing over it − greatest radius of what turns there
 *
 * Wings: from `saddleHead` before the tool's edge to `saddleTail` behind it, at `swingOverSaddle`, for every place of the edge along the cut.
 * Cross slide: half of `crossSlideWidth` to each side, at `swingOverCrossSlide`. The chuck and the face plate turn too. A saddle that would be
 * struck there may stand aside of its edge (`tool-stand.ts`).
 */
export function askOverSaddle(scene: Scene): readonly Question[] {
  if (!isTurning(scene)) return [];
  const stand = latheStand(scene);
  const missing = unknownCuts(scene).map(({ error: { operation, unknown } }) => {
    const ask = asking(scene);
    ask.miss(...unknown);
    return ask.question('over-saddle', operation.id, 0, () => undefined);
  });
  const turnsWith = headPiece(scene, stand);
  const pieces = scene.worlds.adding;
  const asked = knownCuts(scene).flatMap((cut) => {
    const way = latheWay(cut);
    if (way === undefined || way === 'drilled') return [];
    const shift = shiftFor(scene, stand, cut);
    return saddleKinds.map((kind) => {
      const ask = asking(scene);
      const edge = saddleFor(cut, stand.sense, ask, shift);
      const zone = saddleZone(kind, ask);
      const over = { scene, stand, zone, turnsWith };
      const term: Question['term'] = (world, i) => overZone(over, edge!(world), world, i);
      return ask.question(kind, cut.operation.id, pieces.length + 1, term, atMostOf(scene, zone.allowed));
    });
  });
  return [...missing, ...asked];
}
