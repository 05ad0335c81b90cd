import { axesAcross } from '../../build/body-uses.ts';
import type { Scene } from '../setups/scene.ts';
import { tableStand } from '../setups/table-stand.ts';
import { asking } from './asking.ts';
import type { Question } from './question.ts';
import { leastReachAlong } from './reach-across.ts';

/**
 * On a bandsaw, the line being the way of the cut: `cutHeight` against the height of the work; `throat` against how far it reaches from the
 * cut towards the frame, the less of its two sides.
 */
export function askSaw(scene: Scene): readonly Question[] {
  if (scene.type !== 'bandsaw') return [];
  const stand = tableStand(scene);
  const high = asking(scene);
  high.miss(...stand.unknown);
  const cutHeight = high.figure('cutHeight');
  const height = high.question('saw-height', undefined, 1, (world) => ({ has: cutHeight, needs: stand.height(world) }));
  const deep = asking(scene);
  deep.miss(...stand.unknown);
  const throat = deep.figure('throat');
  const across = axesAcross(scene.setup.line.axis);
  return [
    height,
    deep.question('in-throat', undefined, 1, (world) => {
      const needs = stand.upright.map((up) => leastReachAlong(world, scene.worlds, across[0] === up ? 1 : 0));
      return { has: throat, needs: Math.max(...needs) };
    }),
  ];
}
