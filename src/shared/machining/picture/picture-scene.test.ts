import { describe, expect, test } from 'vitest';
import { sketchBodies } from '../../../../tests/support/sketch-bodies.ts';
import type { MachineId, OperationId, SetupId } from '../../base/ids.ts';
import { buildOf } from '../../build/look-up.ts';
import { defaultMachine, type Machine } from '../../build/machine.ts';
import { defaultOperation, type Operation } from '../../build/operation.ts';
import { defaultSetup, type Setup } from '../../build/setup.ts';
import { createWorks } from '../../check/create-works.ts';

import { numbersOf } from '../../plan/numbers.ts';
import { resolveWork } from '../setups/resolve-work.ts';
import { type Scene, sceneOf } from '../setups/scene.ts';
import { sweepPieces } from '../swept/sweep-pieces.ts';
import type { Judged } from './judged.ts';
import { pictureScene } from './picture-scene.ts';
import type { LatheScene, TableScene } from './scene.ts';
import { seenWork } from './seen-work.ts';

/** A block X 0 to 100, Y −30 to 30, Z 0 to 40 with a boss of ø 20 on its end, X 100 to 130, about Y 0, Z 10. */
function part() {
  const sketch = sketchBodies();
  const { at, size, body } = sketch;
  body({
    type: 'block',
    x: [at('X', 0), at('X', 100)],
    y: [at('Y', -30), at('Y', 30)],
    z: [at('Z', 0), at('Z', 40)],
  });
  body({
    type: 'cylinder',
    axis: 'X',
    centre: [at('Y', 0), at('Z', 10)],
    ends: [at('X', 100), at('X', 130)],
    diameter: size('diameter', 20),
  });
  return sketch;
}

const lathe: Machine = {
  ...defaultMachine('machine:l' as MachineId, 'lathe', 'lathe', 1),
  figures: {
    swingOverBed: '180 mm',
    swingOverSaddle: '160 mm',
    swingOverCrossSlide: '100 mm',
    saddleHead: '50 mm',
    saddleTail: '60 mm',
    crossSlideWidth: '70 mm',
    headCentreLength: '30 mm',
    toolBlockWidth: '40 mm',
    toolOverhang: '20 mm',
    toolHeight: '12 mm',
  },
};

function sceneFor(machine: Machine, fields: Partial<Setup>, operation?: Partial<Operation>) {
  const sketch = part();
  const id = sketch.part.id;
  const setup: Setup = {
    ...defaultSetup('setup:s' as SetupId, id, 'set-up', 1),
    machine: machine.id,
    line: { axis: 'X', through: [sketch.at('Y', 0), sketch.at('Z', 10)] },
    ...fields,
  };
  const step: Operation = {
    ...defaultOperation('operation:o' as OperationId, id, 'turn the boss', 'turn', 1),
    setup: setup.id,
    cut: {
      ends: [
        { station: sketch.at('X', 100), beyond: '' },
        { station: sketch.at('X', 130), beyond: '' },
      ],
      diameter: { written: '20 mm' },
      inner: { written: '' },
    },
    ...operation,
  };
  const build = buildOf([...sketch.records(), machine, setup, step]);
  const works = createWorks(build);
  const input = {
    setup,
    numbers: numbersOf(works.drawing, (one) => build.get(one)),
    lengthUnit: 'mm' as const,
    machines: [machine],
    partOf: () => ({
      part: sketch.part,
      bodies: works.solids.bodiesOf(id),
      operations: [step],
      figures: undefined,
      material: undefined,
    }),
    materialNamed: () => undefined,
  };
  const work = resolveWork(input);
  const scene: Scene = sceneOf(input, work, work.worlds!, setup, machine);
  const { worlds } = scene;
  const judged: Judged = {
    profile: sweepPieces(worlds.pieces, worlds.drawn.line),
    extent: worlds.drawn.extentOf(worlds.adding),
    barrelOut: undefined,
    hits: [],
  };
  return { scene, judged, shown: pictureScene(scene, judged), part: id };
}

/** Of the block about (Y 0, Z 10): its corners at Y ±30 and Z 40, 30 above the line. */
const CORNER = Math.hypot(30, 30);

describe('a turning set-up in the places of its picture', () => {
  test('low end to the headstock: places count from the headmost point', () => {
    const shown = sceneFor(lathe, {}).shown as LatheScene;
    expect(shown.extent).toEqual([0, 130]);
    expect(shown.nose).toBe(-30);
    expect(shown.swept[0]?.from).toBe(0);
    expect(Math.max(...shown.swept.map(({ most }) => most))).toBeCloseTo(CORNER, 9);
    expect(shown.swept.at(-1)).toMatchObject({ to: 130, most: 10 });
    expect(shown.cuts).toMatchObject([{ from: 100, to: 130, radius: 10, way: 'outside', name: 'turn the boss' }]);
    expect(shown.bed.radius).toBe(90);
    expect(shown.saddle).toMatchObject({ wingRadius: 80, towardsHead: 50, towardsTail: 60, slideWidth: 70 });
  });

  test('end for end the same is mirrored along the bed', () => {
    const shown = sceneFor(lathe, { headEnd: 'high' }).shown as LatheScene;
    expect(shown.extent).toEqual([0, 130]);
    expect(shown.cuts).toMatchObject([{ from: 0, to: 30 }]);
    expect(shown.swept[0]).toMatchObject({ from: 0, most: 10 });
    expect(shown.swept.at(-1)?.to).toBe(130);
    expect(shown.frame.along).toEqual({ axis: 'X', sign: -1, zero: 130 });
    const steps = shown.swept.map(({ from }) => from);
    expect(steps).toEqual([...steps].sort((a, b) => a - b));
  });

  test('what is not known of the lathe stays out of it', () => {
    const bare = sceneFor({ ...lathe, figures: { swingOverBed: '180 mm' } }, {}).shown as LatheScene;
    expect(bare.nose).toBeUndefined();
    expect(bare.saddle).toEqual({
      wingRadius: undefined,
      towardsHead: undefined,
      towardsTail: undefined,
      slideRadius: undefined,
      slideWidth: undefined,
      toolHeight: undefined,
      blockWidth: undefined,
      toolOverhang: undefined,
    });
  });

  test('without a kernel its bodies stand for the solid, from each side where it is', () => {
    const { scene, shown, part: id } = sceneFor(lathe, { headEnd: 'high' });
    const work = { pieces: scene.worlds.pieces, line: scene.worlds.drawn.line, part: id, mesh: undefined };
    const box = (side: 'front' | 'end' | 'above') => {
      const points = seenWork(work, shown!.frame, side).cover.flat();
      const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
      return [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
    };
    const close = (found: readonly number[], wanted: readonly number[]) => {
      for (const [i, one] of found.entries()) expect(one).toBeCloseTo(wanted[i]!, 6);
    };
    // Along the bed the boss is at the head now; Z 0 to 40 lies from 10 under the line to 30 over it.
    close(box('front'), [0, 130, -10, 30]);
    close(box('end'), [-30, 30, -10, 30]);
    close(box('above'), [0, 130, -30, 30]);
  });
});

describe('work on a table in the places of its picture', () => {
  const drill: Machine = {
    ...defaultMachine('machine:d' as MachineId, 'drill', 'drill press', 1),
    figures: { throat: '100 mm', daylight: '300 mm', chuckLength: '50 mm' },
  };

  test('under a spindle the line stands upright, and heights count from the seat', () => {
    const { at } = part();
    const { shown } = sceneFor(
      drill,
      {
        headEnd: 'high',
        holding: { as: 'clamped to the table', seat: { station: at('X', 0), beyond: '' } },
      },
      {
        process: 'drill',
        tool: { edge: 'HSS', diameter: { written: '6 mm' }, overhang: '60 mm', teeth: 2, angle: '' },
      },
    );
    const table = shown as TableScene;
    expect(table).toMatchObject({ is: 'table', isUpright: true, size: { up: [0, 130] } });
    // Least towards the column: Z 0 lies 10 before the line.
    expect(table.frame.back).toMatchObject({ axis: 'Z', sign: -1 });
    expect(table.size.back).toEqual([-30, 10]);
    expect(table.cuts).toMatchObject([{ from: 100, to: 130, toolRadius: 3, toolLength: 60 }]);
    expect(table.has).toMatchObject({ throat: 100, daylight: 300, chuckLength: 50 });
  });

  test('a mill’s table lies under the seat, the line across the picture', () => {
    const { at } = part();
    const mill: Machine = {
      ...drill,
      id: 'machine:m' as MachineId,
      type: 'milling machine',
      figures: { travelX: '200 mm' },
    };
    const { shown } = sceneFor(
      mill,
      { holding: { as: 'clamped to the table', seat: { station: at('Z', 0), beyond: '' } } },
      { process: 'mill' },
    );
    const table = shown as TableScene;
    expect(table).toMatchObject({ isUpright: false, size: { up: [0, 40], back: [-30, 30] } });
    expect(table.frame.up).toEqual({ axis: 'Z', sign: 1, zero: 0 });
    expect(table.cuts).toMatchObject([{ radius: 10 }]);
    const [from, to] = [table.cuts[0]!.from, table.cuts[0]!.to];
    expect(to - from).toBeCloseTo(30, 9);
  });

  test('it is not known how it lies: no picture', () => {
    expect(sceneFor(drill, { holding: { as: 'between centres' } }).shown).toBeDefined();
    const shaper: Machine = { ...drill, id: 'machine:s' as MachineId, type: 'shaper', figures: {} };
    expect(sceneFor(shaper, { holding: { as: 'clamped to the table' } }).shown).toBeUndefined();
  });
});
