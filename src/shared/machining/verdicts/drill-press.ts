import { cutWithin } from '../setups/cuts.ts';
import { knownCuts, type Scene } from '../setups/scene.ts';
import { tableStand } from '../setups/table-stand.ts';
import { asking } from './asking.ts';
import type { Question } from './question.ts';
import { leastDirection, reachTowards } from './reach-across.ts';
import { unknownCuts } from './turning.ts';

/**
 * On a drill press, the set-up's line being the spindle.
 *
 * - in-throat: `throat` against how far the work reaches from the line on its shortest side (it may be turned round on the table).
 * - daylight: `daylight` (on the foot of the machine `daylightBase` where that is more and the work is not in a vise) against `chuckLength` + the drill's free length +
 *   the height of the drilled face over the table.
 * - quill-travel: `quillTravel` against the length of the cut.
 * - chuck-range: the drill's diameter against `chuckLeast` and `chuckMost`.
 */
export function askDrillPress(scene: Scene): readonly Question[] {
  if (scene.type !== 'drill press') return [];
  const { setup, worlds } = scene;
  const throat = asking(scene);
  const has = throat.figure('throat');
  const shortest = leastDirection(worlds);
  const questions: Question[] = [
    throat.question('in-throat', undefined, 1, (world) => ({ has, needs: reachTowards(world, worlds, shortest) })),
  ];
  for (const { error } of unknownCuts(scene)) {
    const ask = asking(scene);
    ask.miss(...error.unknown);
    questions.push(ask.question('daylight', error.operation.id, 0, () => undefined));
  }
  const sense = setup.headEnd === 'low' ? 1 : -1;
  for (const cut of knownCuts(scene)) {
    const { operation, overhangMm, toolDiameter } = cut;
    const ask = asking(scene);
    const stand = tableStand(scene);
    ask.miss(...stand.unknown);
    const table = ask.figure('daylight');
    const base = setup.holding.as === 'vise' ? undefined : ask.figureIfKnown('daylightBase');
    const chuck = ask.figure('chuckLength');
    if (overhangMm === undefined) ask.miss({ is: 'field', field: 'tool/overhang' });
    questions.push(
      ask.question('daylight', operation.id, 1, (world) => {
        const [low, high] = cutWithin(cut, world);
        const extent = world.extentOf(worlds.adding) ?? [low, high];
        const foot = stand.seat ? world.place(stand.seat) : extent[sense === 1 ? 1 : 0];
        const face = sense === 1 ? low : high;
        return {
          has: Math.max(table, base ?? 0),
          needs: Math.max(0, sense * (foot - face)) + chuck + (overhangMm ?? 0),
          at: face,
        };
      }),
    );
    const quill = asking(scene);
    const travel = quill.figure('quillTravel');
    questions.push(
      quill.question('quill-travel', operation.id, 1, (world) => {
        const [low, high] = cutWithin(cut, world);
        return { has: travel, needs: high - low, at: sense === 1 ? low : high };
      }),
    );
    if (!toolDiameter) continue;
    const range = asking(scene);
    const [least, most] = [range.figureIfKnown('chuckLeast') ?? 0, range.figure('chuckMost')];
    questions.push(
      range.question('chuck-range', operation.id, 2, (world, i) => {
        const across = world.amount(toolDiameter);
        return i === 0 ? { has: across, needs: least } : { has: most, needs: across };
      }),
    );
  }
  return questions;
}
