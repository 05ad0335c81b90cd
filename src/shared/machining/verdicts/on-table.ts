import type { Axis } from '../../build/station.ts';
import type { Scene } from '../setups/scene.ts';
import { levelAxes, tableStand } from '../setups/table-stand.ts';
import type { World } from '../setups/world.ts';
import { asking } from './asking.ts';
import type { Question, Term } from './question.ts';

const tables = ['drill press', 'milling machine', 'shaper', 'planer'] as const;

/**
 * What is clamped to a table, or stands on a surface plate, should lie on it: its two level sizes against length and width, the
 * longer along the longer; the worse of the two is told.
 */
export function askOnTable(scene: Scene): readonly Question[] {
  const { type, setup } = scene;
  const isPlate = type === 'surface plate';
  const isTable = (tables as readonly string[]).includes(type) && setup.holding.as === 'clamped to the table';
  if (!isPlate && !isTable) return [];
  const ask = asking(scene);
  const stand = tableStand(scene);
  ask.miss(...stand.unknown);
  const sides = isPlate
    ? [ask.figure('plateLength'), ask.figure('plateWidth')]
    : [ask.figure('tableLength'), ask.figure('tableWidth')];
  const [longer, shorter] = [Math.max(...sides), Math.min(...sides)];
  const level = (world: World, up: Axis) => levelAxes(up).map((axis) => stand.across(world, axis));
  return [
    ask.question(isPlate ? 'on-plate' : 'on-table', undefined, 2, (world, i): Term => {
      const sizes = stand.upright.map((up) => level(world, up));
      const needs = sizes.map((two) => (i === 0 ? Math.max(...two) : Math.min(...two)));
      return { has: i === 0 ? longer : shorter, needs: Math.max(...needs) };
    }),
  ];
}
