import { ARBOR_PAST_DRIVEN_FACE, ARBOR_PAST_FREE_FACE } from '../practice.ts';
import { endOf, latheStand, workPieces } from '../setups/lathe-stand.ts';
import type { Scene } from '../setups/scene.ts';
import type { World } from '../setups/world.ts';
import { asking } from './asking.ts';
import type { Question } from './question.ts';
import { isTurning } from './turning.ts';

/**
 * An arbor must stand past each face of its work: at the driven end far enough for the dog (as long as it is drawn, else one
 * diameter of the arbor) or for the jaws, at the other a quarter of its diameter (both common practice, no source).
 *
 *     margin = what stands past the face − what is needed there, the worse of the two ends
 */
export function askArborLength(scene: Scene): readonly Question[] {
  if (!isTurning(scene)) return [];
  const { arbors, bodies, dogs } = workPieces(scene);
  if (arbors.length === 0 || bodies.length === 0) return [];
  const { sense } = latheStand(scene);
  const ask = asking(scene);
  return [
    ask.question('arbor-length', undefined, 2, (world, i) => {
      const end = i === 0 ? 'head' : 'tail';
      const outwards = end === 'head' ? -sense : sense;
      const face = endOf(world, bodies, sense, end);
      const tip = endOf(world, arbors, sense, end);
      const diameter = diameterAt(world, arbors, tip);
      const dog = end === 'head' ? world.extentOf(dogs) : undefined;
      const needs = dog ? dog[1] - dog[0] : diameter * (end === 'head' ? ARBOR_PAST_DRIVEN_FACE : ARBOR_PAST_FREE_FACE);
      return { has: outwards * (tip - face), needs, at: face };
    }),
  ];
}

/** Across the arbor that ends at the place. */
function diameterAt(world: World, arbors: readonly number[], tip: number): number {
  const last = arbors.find((i) => {
    const along = world.boxOf(i)?.along;
    return along && (along[0] === tip || along[1] === tip);
  });
  const [low, high] = world.boxOf(last ?? arbors[0]!)!.across[0];
  return high - low;
}
