import type { Scene } from '../setups/scene.ts';
import { askArborLength } from './arbor-length.ts';
import { askCrossTravel } from './cross-travel.ts';
import { askDrillPress } from './drill-press.ts';
import { askFacePlate } from './face-plate.ts';
import { askInVise } from './in-vise.ts';
import { askJaws } from './jaws.ts';
import { askOnTable } from './on-table.ts';
import { askOverBed } from './over-bed.ts';
import { askOverSaddle } from './over-saddle.ts';
import type { Question } from './question.ts';
import { askSaw } from './saw.ts';
import { askSteadyRange } from './steady-range.ts';
import { askStraightCuts } from './straight-cuts.ts';
import { askTailstock } from './tailstock.ts';
import { askToolBlock } from './tool-block.ts';

/** Each asks what it knows how to judge, and nothing where it has no say. A new kind of verdict is a file beside these. */
const askers: readonly ((scene: Scene) => readonly Question[])[] = [
  askOverBed,
  askOverSaddle,
  askToolBlock,
  askTailstock,
  askArborLength,
  askFacePlate,
  askJaws,
  askSteadyRange,
  askCrossTravel,
  askDrillPress,
  askStraightCuts,
  askOnTable,
  askInVise,
  askSaw,
];

/** All that is to be judged of a set-up on its machine. */
export const questionsOf = (scene: Scene): readonly Question[] => askers.flatMap((ask) => ask(scene));
