import type { Cut } from '../setups/cuts.ts';
import { type LatheStand, latheStand, workPieces } from '../setups/lathe-stand.ts';
import { knownCuts, type Scene } from '../setups/scene.ts';
import type { World } from '../setups/world.ts';
import { asking } from './asking.ts';
import type { Question } from './question.ts';
import { alongBed } from './saddle-at.ts';
import { barrelOver } from './tailstock-reach.ts';
import { shiftFor } from './tool-stand.ts';
import { isTurning, latheWay } from './turning.ts';

/**
 * Whether the work (or the drill) finds room between head and tailstock, and whether the barrel comes out far enough.
 *
 * - barrel-travel: for a cut near the tail end the saddle stands before the tailstock, and the barrel must reach over it:
 *   needed = place of the edge + `saddleTail` − front of the barrel, which lies `tailCentreLength` behind the point; a saddle that stands aside of its edge
 *   (`tool-stand.ts`) needs that much more or less. A drill needs the length of its cut.
 * - between-centres: between centres, `betweenCentres` less what the barrel must come out beyond `tailOverhang`, against the length between the two points
 *   (arbor ends included; centres stand outside of it). With one centre in the tailstock, how far its point can stand from the nose against where the work ends.
 *   For a drill, the same to the barrel against the work's face and the drill's free length.
 */
export function askTailstock(scene: Scene): readonly Question[] {
  if (!isTurning(scene)) return [];
  const stand = latheStand(scene);
  const drilled = knownCuts(scene).filter((cut) => latheWay(cut) === 'drilled');
  return [
    ...askLength(scene, stand),
    ...(stand.tailPoint ? barrelQuestions(scene, stand) : []),
    ...drilled.flatMap((cut) => drillQuestions(scene, stand, cut)),
  ];
}

type Needed = (world: World) => number;

function barrelQuestions(scene: Scene, stand: LatheStand): readonly Question[] {
  return knownCuts(scene).flatMap((cut) => {
    const ask = asking(scene);
    const needed = barrelOver(stand, cut, ask, shiftFor(scene, stand, cut));
    if (!needed) return [];
    const travel = ask.figure('barrelTravel');
    return [
      ask.question('barrel-travel', cut.operation.id, 1, (world) => ({
        has: travel,
        needs: needed(world),
        at: stand.tailPoint?.(world),
      })),
    ];
  });
}

function askLength(scene: Scene, stand: LatheStand): readonly Question[] {
  const { tailPoint, sense } = stand;
  if (!tailPoint) return [];
  const ask = asking(scene);
  const most = ask.figure('betweenCentres');
  // Cuts of which too little is known say so in a verdict of their own.
  const needs = knownCuts(scene).flatMap((cut) => {
    const own = asking(scene);
    const needed = barrelOver(stand, cut, own, shiftFor(scene, stand, cut));
    return needed && own.unknown.length === 0 ? [needed] : [];
  });
  const overhang = ask.figureIfKnown('tailOverhang') ?? 0;
  const beyond: Needed = (world) => Math.max(0, ...needs.map((needed) => needed(world) - overhang));
  if (scene.setup.holding.as === 'between centres') {
    const { centred } = workPieces(scene);
    return [
      ask.question('between-centres', undefined, 1, (world) => {
        const [low, high] = world.extentOf(centred) ?? [0, 0];
        return { has: most - beyond(world), needs: high - low, at: tailPoint(world) };
      }),
    ];
  }
  const centre = ask.figure('headCentreLength');
  ask.miss(...stand.unknown);
  return [
    ask.question('between-centres', undefined, 1, (world) => ({
      has: centre + most - beyond(world),
      needs: sense * (tailPoint(world) - stand.nose(world)),
      at: tailPoint(world),
    })),
  ];
}

function drillQuestions(scene: Scene, stand: LatheStand, cut: Cut): readonly Question[] {
  const { sense } = stand;
  const feed = asking(scene);
  const travel = feed.figure('barrelTravel');
  const barrel = feed.question('barrel-travel', cut.operation.id, 1, (world) => {
    const [from, to] = alongBed(cut, world, sense);
    return { has: travel, needs: to - from, at: sense * to };
  });
  const ask = asking(scene);
  if (cut.overhangMm === undefined) ask.miss({ is: 'field', field: 'tool/overhang' });
  const length = cut.overhangMm ?? Number.NaN;
  const head = ask.figure('headCentreLength');
  const tail = ask.figure('tailCentreLength');
  const most = ask.figure('betweenCentres');
  const overhang = ask.figureIfKnown('tailOverhang') ?? 0;
  ask.miss(...stand.unknown);
  const room = ask.question('between-centres', cut.operation.id, 1, (world) => {
    const [, face] = alongBed(cut, world, sense);
    return {
      has: head + most + tail + overhang,
      needs: face - sense * stand.nose(world) + length,
      at: sense * face,
    };
  });
  return [barrel, room];
}
