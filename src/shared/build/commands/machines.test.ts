import { describe, expect, test } from 'vitest';
import { sampleLathe, samplePlans } from '../../../../tests/support/sample-plans.ts';
import { idSource, type MachineId } from '../../base/ids.ts';
import { genericMachines } from '../../tables/generic-machines.ts';
import { apply, invert } from '../diff.ts';
import { buildOf, machinesOf, recordOf, settingsOf } from '../look-up.ts';
import type { Build } from '../records.ts';
import { refusalWords } from '../refusals.ts';
import { type CommandId, type ParamsOf, runCommand } from './registry.ts';

let seed = 7;
const newId = idSource(() => {
  seed = (Math.imul(seed, 1103515245) + 12345) >>> 0;
  return seed;
});
const sample = buildOf(samplePlans());
const inches = (build: Build): Build =>
  new Map([...build, [settingsOf(build).id, { ...settingsOf(build), lengthUnit: 'in' as const }]]);

const run = <I extends CommandId>(build: Build, id: I, params: ParamsOf<I>) =>
  runCommand(build, id, params, { newId, now: '2026-11-25T00:00:00.000Z' });

function edited<I extends CommandId>(build: Build, id: I, params: ParamsOf<I>): { build: Build; label: string } {
  const result = run(build, id, params);
  if (!result.ok) throw new Error(`${result.error.code} ${JSON.stringify(refusalWords(result.error))}`);
  const next = apply(build, result.value.diff);
  expect(apply(next, invert(result.value.diff))).toEqual(build);
  return { build: next, label: result.value.label };
}

describe('machines', () => {
  test.each(genericMachines.map((row) => [row.id, row] as const))('one begins with the generic row %s', (id, row) => {
    const { build, label } = edited(inches(sample), 'machine-add', { type: row.type, generic: id });
    expect(label).toBe(`add machine ${row.name}`);
    expect(machinesOf(build).at(-1)).toMatchObject({
      name: row.name,
      figures: row.figures,
      generic: true,
      note: expect.stringMatching(/no source/),
    });
  });

  test('one is empty without a row, and its lengths get the unit of the build they are written in', () => {
    const { build } = edited(sample, 'machine-add', {
      type: 'vise',
      set: { figures: { opening: '125', jawWidth: '4"', jawDepth: 'about 40' } },
      before: sampleLathe.id,
    });
    const vise = machinesOf(build).find(({ type }) => type === 'vise')!;
    expect(machinesOf(build)[0]).toBe(vise);
    expect(vise).toMatchObject({ name: 'vise', generic: false });
    expect(vise.figures).toEqual({ opening: '125 mm', jawWidth: '4"', jawDepth: 'about 40' });
    const inch = edited(inches(sample), 'machine-add', { type: 'vise', set: { figures: { opening: '5' } } });
    expect(machinesOf(inch.build).at(-1)?.figures).toEqual({ opening: '5 in' });
  });

  test('figures change one by one, and an empty one is unknown', () => {
    const set = edited(sample, 'machine-set', { machine: sampleLathe.id, set: { figures: { swingOverBed: '280' } } });
    expect(set.label).toBe('set swing over bed of big lathe to 280');
    expect(recordOf(set.build, 'machine', sampleLathe.id)?.figures).toEqual({
      ...sampleLathe.figures,
      swingOverBed: '280 mm',
    });
    const cleared = edited(set.build, 'machine-set', { machine: sampleLathe.id, set: { figures: { power: ' ' } } });
    expect(cleared.label).toBe('clear motor power of big lathe');
    expect(recordOf(cleared.build, 'machine', sampleLathe.id)?.figures).not.toHaveProperty('power');
  });

  test('another type keeps figures that it has no use for', () => {
    const { build } = edited(sample, 'machine-set', { machine: sampleLathe.id, set: { type: 'vise' } });
    expect(recordOf(build, 'machine', sampleLathe.id)?.figures).toMatchObject({ power: '1/2 hp' });
  });

  test('one moves, and goes from the set-ups on it', () => {
    const moved = edited(sample, 'machine-move', {
      machine: 'machine:drill00001' as MachineId,
      before: sampleLathe.id,
    });
    expect(machinesOf(moved.build).map(({ name }) => name)).toEqual(['drill', 'big lathe']);
    const gone = edited(moved.build, 'machine-remove', { machines: [sampleLathe.id] });
    expect(gone.label).toBe('remove machine big lathe from 1 set-up');
    expect(recordOf(gone.build, 'setup', 'setup:full')).not.toHaveProperty('machine');
  });

  test('those of the shop come in one step: known ones in their place, new ones at the end', () => {
    const newer = { ...sampleLathe, name: 'lathe with new chuck', figures: { swingOverBed: '260 mm' }, order: 99 };
    const vise = {
      ...sampleLathe,
      id: 'machine:vise000001' as MachineId,
      name: 'vise',
      type: 'vise' as const,
      bed: [],
    };
    const { build, label } = edited(sample, 'machines-take', { machines: [newer, vise] });
    expect(label).toBe('take 2 machines from the shop');
    expect(machinesOf(build).map(({ name }) => name)).toEqual(['lathe with new chuck', 'drill', 'vise']);
    expect(recordOf(build, 'machine', newer.id)).toEqual({
      ...newer,
      bed: [
        { across: '-90 mm', down: '125 mm' },
        { across: '90 mm', down: '125 mm' },
      ],
      order: sampleLathe.order,
    });
    expect(recordOf(build, 'setup', 'setup:full')?.machine).toBe(newer.id);
    expect(edited(sample, 'machines-take', { machines: [vise] }).label).toBe('take machine vise from the shop');
  });

  test.each<[string, () => ReturnType<typeof run>, string]>([
    [
      'a row that is not there',
      () => run(sample, 'machine-add', { type: 'lathe', generic: 'lathe-9000' }),
      'generic-machine-unknown',
    ],
    [
      'a row of another type',
      () => run(sample, 'machine-add', { type: 'vise', generic: 'lathe-65' }),
      'generic-machine-unknown',
    ],
    [
      'no such machine',
      () => run(sample, 'machine-set', { machine: 'machine:x' as MachineId, set: {} }),
      'machine-not-found',
    ],
    ['no name', () => run(sample, 'machine-set', { machine: sampleLathe.id, set: { name: ' ' } }), 'name-empty'],
    [
      'a figure without a key',
      () => run(sample, 'machine-set', { machine: sampleLathe.id, set: { figures: { '': '1' } } }),
      'field-refused',
    ],
    [
      'no type',
      () => run(sample, 'machine-set', { machine: sampleLathe.id, set: { type: 'anvil' as never } }),
      'field-refused',
    ],
    ['nothing from the shop', () => run(sample, 'machines-take', { machines: [] }), 'nothing-given'],
    [
      'rubbish from the shop',
      () => run(sample, 'machines-take', { machines: [{ ...sampleLathe, name: '' }] }),
      'field-refused',
    ],
    ['nothing to remove', () => run(sample, 'machine-remove', { machines: [] }), 'nothing-given'],
    [
      'a place before none',
      () => run(sample, 'machine-move', { machine: sampleLathe.id, before: 'machine:x' as MachineId }),
      'machine-not-found',
    ],
  ])('refused: %s', (_, attempt, code) => {
    expect(attempt()).toMatchObject({ ok: false, error: { code } });
  });
});

describe('the unit of lengths', () => {
  test('changes, and what is written in machines, set-ups and operations keeps its size', () => {
    const { build } = edited(sample, 'settings-set', { set: { lengthUnit: 'in' }, keepSizes: true });
    expect(recordOf(build, 'machine', sampleLathe.id)).toMatchObject({
      figures: sampleLathe.figures,
      bed: [
        { across: '-90 mm', down: '125 mm' },
        { across: '90 mm', down: '125 mm' },
      ],
    });
    const setup = recordOf(build, 'setup', 'setup:full')!;
    expect(setup.allowance).toBe('3 mm');
    expect(setup.fixtures[0]?.ends.map(({ beyond }) => beyond)).toEqual(['-20 mm', '20 mm']);
    expect(setup.fixtures[1]).toMatchObject({
      ends: [{ beyond: 'part:x' }, { beyond: '' }],
      shape: {
        across: [
          ['station:no', '10 mm'],
          ['-5 mm', '5 mm'],
        ],
      },
    });
    expect(setup.holding).toMatchObject({ ends: [{ beyond: '' }, { beyond: '-2 mm' }], diameter: { written: '' } });
    expect(recordOf(build, 'setup', 'setup:arm2')?.holding).toMatchObject({ diameter: { written: '30 mm' } });
    const bored = recordOf(build, 'operation', 'operation:bore')!;
    expect(bored.cut?.inner.written).toBe('20 mm');
    expect(bored.tool).toMatchObject({ overhang: '90 mm', angle: '75', teeth: 1 });
    expect(bored.chosen).toMatchObject({ rpm: '200', feed: '0.1 mm', depth: '0.5 mm', minutes: '1 h' });
  });

  test('a feed keeps what it is counted by', () => {
    const fed = edited(sample, 'operation-set', {
      changes: [{ operation: 'operation:bore' as never, set: { chosen: { feed: '0.1/rev' } } }],
    });
    const { build } = edited(fed.build, 'settings-set', { set: { lengthUnit: 'in' }, keepSizes: true });
    expect(recordOf(build, 'operation', 'operation:bore')?.chosen.feed).toBe('0.1 mm/rev');
  });
});
