import type { Machine } from '../../build/machine.ts';
import { readFigures } from '../../plan/machine-figures-read.ts';
import type { Scene } from '../setups/scene.ts';
import type { World } from '../setups/world.ts';
import { type Asking, asking } from './asking.ts';
import type { Question } from './question.ts';

/**
 * In a vise: `opening` against the length that is held, and `jawDepth` against how deep it is held; the worse of the two. A machine that has no vise of its own takes
 * the one of the shop's that fits best. A saw has one that opens to `viseOpening`.
 */
export function askInVise(scene: Scene): readonly Question[] {
  const { holding } = scene.setup;
  if (holding.as !== 'vise') return [];
  if (scene.type === 'vise' || scene.type === 'bandsaw') return [askOne(scene)];
  const vises = scene.machines.filter(({ type }) => type === 'vise');
  if (vises.length === 0) {
    const ask = asking(scene);
    ask.miss({ is: 'field', field: 'vise' });
    return [ask.question('in-vise', undefined, 0, () => undefined)];
  }
  const questions = vises.map((vise) => askOne(sceneWith(scene, vise)));
  return [questions.reduce((best, one) => (roomOf(one, scene) > roomOf(best, scene) ? one : best))];
}

const sceneWith = (scene: Scene, vise: Machine): Scene => ({
  ...scene,
  machine: vise,
  type: 'vise',
  figures: readFigures(vise, scene.lengthUnit),
});

/** What a vise leaves as drawn; one that is not known comes last. */
function roomOf({ unknown, carriers, term }: Question, { worlds }: Scene): number {
  if (unknown.length > 0) return -Infinity;
  const terms = Array.from({ length: carriers }, (_, i) => term(worlds.drawn, i));
  return Math.min(...terms.map((one) => (one ? one.has - one.needs : Infinity)));
}

function askOne(scene: Scene): Question {
  const { holding } = scene.setup;
  const ask = asking(scene);
  const isVise = scene.type === 'vise';
  const opening = ask.figure(isVise ? 'opening' : 'viseOpening');
  if (holding.as !== 'vise') return ask.question('in-vise', undefined, 0, () => undefined);
  const from = ask.place(holding.ends?.[0], 'holding/ends');
  const to = ask.place(holding.ends?.[1], 'holding/ends');
  const held = (world: World) => ({ has: opening, needs: Math.abs(world.place(to) - world.place(from)) });
  const depth = isVise ? depthTerm(scene, ask) : undefined;
  if (!depth) return ask.question('in-vise', undefined, 1, held);
  return ask.question('in-vise', undefined, 2, (world, i) => (i === 0 ? held(world) : depth(world)));
}

/** How deep it is held, where that is said. */
function depthTerm({ setup: { holding } }: Scene, ask: Asking) {
  if (holding.as !== 'vise') return undefined;
  const { depth } = holding;
  if (depth.size === undefined && depth.written.trim() === '') return undefined;
  const jaws = ask.figure('jawDepth');
  const amount = ask.amount(depth, 'length', 'holding/depth');
  return (world: World) => ({ has: jaws, needs: world.amount(amount) });
}
