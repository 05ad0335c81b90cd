import { type Cut, leastRadius } from '../setups/cuts.ts';
import { endOf, type LatheStand, latheStand, workPieces } from '../setups/lathe-stand.ts';
import { knownCuts, type Scene } from '../setups/scene.ts';
import { asking } from './asking.ts';
import { type Block, besideTerm, headTerm, reachFor, tailTerm } from './block-terms.ts';
import { atMostOf } from './farthest-term.ts';
import type { Question } from './question.ts';
import { alongBed } from './saddle-at.ts';
import { toolStandFor } from './tool-stand.ts';
import { isTurning, latheWay } from './turning.ts';

/**
 * Room for the tool: its block beside the work, beside what the spindle carries, and beside the tailstock; and whether a bar or a drill is long
 * enough.
 *
 * The block is `toolBlockWidth` wide along the bed and stands back from the line by the least radius that the edge comes to and the tool's reach before it
 * (`tool.overhang` of the operation, else `toolOverhang`). How it is set about the edge is told by `tool-stand.ts`, for the whole cut.
 *
 * - tool-reach: reach − (greatest radius of the work beside the cut, within the block's width − least radius of the cut). Stock that the cut itself
 *   takes off is left out. Of a boring bar: its free length − how deep the cut lies in the work. Of a drill: its free length − length of the cut.
 * - tool-block-head: the better of the room along the bed from the block to the jaws' ends (or the face plate), and of the
 *   room from their radius to the block.
 * - tool-block-tail: the same from the block to the front of the barrel, which lies `tailCentreLength` behind the point of the centre.
 */
export function askToolBlock(scene: Scene): readonly Question[] {
  if (!isTurning(scene)) return [];
  const stand = latheStand(scene);
  return knownCuts(scene).flatMap((cut) => {
    const way = latheWay(cut);
    if (way === 'outside') return outside(scene, stand, cut);
    if (way === 'inside') return [askBar(scene, stand, cut)];
    return way === 'drilled' ? [askDrill(scene, cut)] : [];
  });
}

function outside(scene: Scene, stand: LatheStand, cut: Cut): readonly Question[] {
  const { adding } = scene.worlds;
  const id = cut.operation.id;
  const ask = asking(scene);
  ask.figure('toolBlockWidth');
  reachFor(cut, ask);
  const least = leastRadius(cut, scene.worlds.drawn);
  if (least === undefined) ask.miss({ is: 'field', field: 'cut/diameter' });
  const block = toolStandFor(scene, stand, cut)?.block;
  const beside: Question['term'] = (world, i) => besideTerm(scene, stand, cut, block!, world, adding[i]!);
  const questions = [
    ask.question('tool-reach', id, adding.length, beside, atMostOf(scene, (block?.reach ?? 0) + (least ?? 0))),
  ];
  const head = headQuestion(scene, stand, cut, block, ask.unknown);
  const tail = tailQuestion(scene, stand, cut, block, ask.unknown);
  return [...questions, ...(head ? [head] : []), ...(tail ? [tail] : [])];
}

function headQuestion(
  scene: Scene,
  stand: LatheStand,
  cut: Cut,
  block: Block | undefined,
  unknown: Question['unknown'],
): Question | undefined {
  const { head } = stand;
  if (!head) return undefined;
  const ask = asking(scene);
  ask.miss(...unknown, ...stand.unknown);
  ask.figure(head.lengthKey);
  const term = block && headTerm(scene, stand, cut, block, scene.worlds.drawn);
  // Beside the jaws and not along the bed: then their radius must be known.
  if (term && term.has < term.needs) {
    ask.figure(head.diameterKey);
    if (head.is === 'chuck') ask.figure('jawReach');
  }
  return ask.question('tool-block-head', cut.operation.id, 1, (world) => headTerm(scene, stand, cut, block!, world));
}

function tailQuestion(
  scene: Scene,
  stand: LatheStand,
  cut: Cut,
  block: Block | undefined,
  unknown: Question['unknown'],
): Question | undefined {
  if (!stand.tailPoint) return undefined;
  const ask = asking(scene);
  ask.miss(...unknown);
  ask.figure('tailCentreLength');
  const term = block && tailTerm(scene, stand, cut, block, scene.worlds.drawn);
  if (term && term.has < term.needs) ask.figure('barrelDiameter');
  return ask.question('tool-block-tail', cut.operation.id, 1, (world) => tailTerm(scene, stand, cut, block!, world));
}

/** A boring bar: the block stays outside of the work, and no centre may stand in the bore. */
function askBar(scene: Scene, stand: LatheStand, cut: Cut): Question {
  const ask = asking(scene);
  const { sense, tailPoint } = stand;
  const { adding } = scene.worlds;
  const { bodies } = workPieces(scene);
  if (cut.overhangMm === undefined) ask.miss({ is: 'field', field: 'tool/overhang' });
  const length = cut.overhangMm ?? Number.NaN;
  return ask.question('tool-reach', cut.operation.id, 1, (world) => {
    const [deepest] = alongBed(cut, world, sense);
    const face = sense * endOf(world, bodies.length > 0 ? bodies : adding, sense, 'tail');
    // With a centre in the far end there is no way in at all.
    return { has: tailPoint ? 0 : length, needs: Math.max(0, face - deepest), at: sense * deepest };
  });
}

function askDrill(scene: Scene, cut: Cut): Question {
  const ask = asking(scene);
  if (cut.overhangMm === undefined) ask.miss({ is: 'field', field: 'tool/overhang' });
  const length = cut.overhangMm ?? Number.NaN;
  return ask.question('tool-reach', cut.operation.id, 1, (world) => {
    const [from, to] = alongBed(cut, world, 1);
    return { has: length, needs: to - from, at: from };
  });
}
