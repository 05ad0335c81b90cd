import { describe, expect, test } from 'vitest';
import { samplePlans } from '../../../../tests/support/sample-plans.ts';
import { idSource, type OperationId, type PartId, type SetupId } from '../../base/ids.ts';
import { apply, invert, isEmpty } from '../diff.ts';
import { buildOf, operationsOf, plansNaming, recordOf, setupsOf } from '../look-up.ts';
import type { Build } from '../records.ts';
import { refusalWords } from '../refusals.ts';
import { validateBuild } from '../validate-build.ts';
import { type CommandId, type ParamsOf, runCommand } from './registry.ts';

let seed = 1;
const newId = idSource(() => {
  seed = (Math.imul(seed, 1103515245) + 12345) >>> 0;
  return seed;
});
const sample = buildOf(samplePlans());
const arm = 'part:arm' as PartId;
const setup = (id: string) => `setup:${id}` as SetupId;
const operation = (id: string) => `operation:${id}` as OperationId;

const run = <I extends CommandId>(build: Build, id: I, params: ParamsOf<I>) =>
  runCommand(build, id, params, { newId, now: '2026-11-25T00:00:00.000Z' });

/** Carries an edit out, sees that it can be taken back and that the build stays whole, and gives its label too. */
function edited<I extends CommandId>(build: Build, id: I, params: ParamsOf<I>): { build: Build; label: string } {
  const result = run(build, id, params);
  if (!result.ok) throw new Error(`${result.error.code} ${JSON.stringify(refusalWords(result.error))}`);
  const next = apply(build, result.value.diff);
  expect(apply(next, invert(result.value.diff))).toEqual(build);
  expect(validateBuild([...next.values()])).toMatchObject({ ok: true });
  return { build: next, label: result.value.label };
}

const refusal = <I extends CommandId>(build: Build, id: I, params: ParamsOf<I>) => {
  const result = run(build, id, params);
  return result.ok ? undefined : { code: result.error.code, ...refusalWords(result.error) };
};

const names = (list: readonly { readonly name: string }[]) => list.map(({ name }) => name);
const at = (name: string, beyond = '') => ({ station: `station:arm-${name}` as never, beyond });

describe('set-ups', () => {
  test('one is added with a name of its own, at its place', () => {
    const first = edited(sample, 'setup-add', { part: arm, before: setup('arm0') });
    expect(names(setupsOf(first.build, arm)).slice(0, 3)).toEqual(['setup:full', 'set-up', 'set-up 0']);
    expect(first.label).toBe('add set-up set-up of arm');
    const second = edited(first.build, 'setup-add', { part: arm, set: { name: ' second side ', headEnd: 'high' } });
    expect(setupsOf(second.build, arm).at(-1)).toMatchObject({ name: 'second side', headEnd: 'high' });
  });

  test('fields change, and what is undefined is taken out', () => {
    const moved = edited(sample, 'setup-set', {
      setup: setup('full'),
      set: { machine: 'machine:drill00001' as never },
    });
    expect(moved.label).toBe('put set-up setup:full of arm on drill');
    const off = edited(moved.build, 'setup-set', { setup: setup('full'), set: { machine: undefined } });
    expect(off.label).toBe('take set-up setup:full of arm off its machine');
    expect(recordOf(off.build, 'setup', 'setup:full')).not.toHaveProperty('machine');
    const held = edited(off.build, 'setup-set', {
      setup: setup('full'),
      set: {
        holding: {
          as: 'four-jaw chuck',
          ends: undefined,
          diameter: { written: '30' },
          inside: false,
          tailCentre: true,
        },
      },
    });
    expect(held.label).toBe('hold set-up setup:full of arm in the four-jaw chuck');
    expect(recordOf(held.build, 'setup', 'setup:full')?.holding).toStrictEqual({
      as: 'four-jaw chuck',
      diameter: { written: '30' },
      inside: false,
      tailCentre: true,
    });
    const same = edited(held.build, 'setup-set', { setup: setup('full'), set: { headEnd: 'high' } });
    expect(same.build).toEqual(held.build);
  });

  test('a fixture without a name is called after what it is', () => {
    const fixture = recordOf(sample, 'setup', 'setup:full')!.fixtures[0]!;
    const { build } = edited(sample, 'setup-set', {
      setup: setup('arm0'),
      set: { fixtures: [{ ...fixture, name: '  ', what: 'driving dog' }] },
    });
    expect(recordOf(build, 'setup', 'setup:arm0')?.fixtures[0]?.name).toBe('driving dog');
  });

  test('a copy stands behind the first, without its operations', () => {
    const { build, label } = edited(sample, 'setup-copy', { setup: setup('arm1') });
    expect(label).toBe('copy set-up set-up 1 of arm');
    const list = setupsOf(build, arm);
    expect(names(list).slice(1, 4)).toEqual(['set-up 0', 'set-up 1', 'set-up 1 2']);
    const { id: _, name: __, order: ___, ...copy } = list[3]!;
    expect(recordOf(sample, 'setup', 'setup:arm1')).toMatchObject(copy);
    expect(plansNaming(build, new Set([list[3]!.id]))).toEqual([]);
  });

  test('one is moved, and removed from the operations done in it', () => {
    const moved = edited(sample, 'setup-move', { setup: setup('arm6'), before: setup('full') });
    expect(names(setupsOf(moved.build, arm))[0]).toBe('set-up 6');
    const gone = edited(moved.build, 'setup-remove', { setups: [setup('full'), setup('arm1')] });
    expect(gone.label).toBe('remove 2 set-ups from 3 operations');
    for (const id of ['operation:face', 'operation:bore', 'operation:cap']) {
      expect(gone.build.get(id as never)).not.toHaveProperty('setup');
    }
  });

  test.each<[string, () => ReturnType<typeof refusal>, string, RegExp]>([
    ['no such part', () => refusal(sample, 'setup-add', { part: 'part:none' as PartId }), 'part-not-found', /./],
    ['no such set-up', () => refusal(sample, 'setup-set', { setup: setup('none'), set: {} }), 'setup-not-found', /./],
    [
      'no name',
      () => refusal(sample, 'setup-set', { setup: setup('arm0'), set: { name: ' ' } }),
      'name-empty',
      /set-up/,
    ],
    [
      'a station of another part',
      () =>
        refusal(sample, 'setup-set', {
          setup: setup('arm0'),
          set: { line: { axis: 'X', through: ['station:cap-mid', 'station:arm-axis'] as never } },
        }),
      'setup-does-not-hold',
      /"mid" is a station of another part/,
    ],
    [
      'another axis while it holds by stations of the first',
      () => refusal(sample, 'setup-set', { setup: setup('arm1'), set: { line: { axis: 'Z' } } }),
      'setup-does-not-hold',
      /"left" lies along X, and a station along Z is wanted/,
    ],
    [
      'a fellow let go while its operation is done here',
      () => refusal(sample, 'setup-set', { setup: setup('full'), set: { fellows: [] } }),
      'operation-does-not-hold',
      /does not hold the part of "bore cap"/,
    ],
    [
      'a field that cannot be kept',
      () => refusal(sample, 'setup-set', { setup: setup('arm0'), set: { headEnd: 'left' as never } }),
      'field-refused',
      /headEnd/,
    ],
    ['nothing', () => refusal(sample, 'setup-remove', { setups: [] }), 'nothing-given', /./],
    [
      'a place before none',
      () => refusal(sample, 'setup-move', { setup: setup('arm0'), before: setup('none') }),
      'setup-not-found',
      /./,
    ],
  ])('refused: %s', (_, attempt, code, words) => {
    const refused = attempt();
    expect(refused).toMatchObject({ code });
    expect(refused?.sentence).toMatch(words);
  });
});

describe('operations', () => {
  test('one is added under the name of its process, and its figures change one by one', () => {
    const added = edited(sample, 'operation-add', { part: arm, process: 'bore', before: operation('face') });
    expect(names(operationsOf(added.build, arm))).toEqual(['bore 2', 'face left', 'bore']);
    const set = edited(added.build, 'operation-set', {
      changes: [{ operation: operation('bore'), set: { chosen: { rpm: '150' }, cut: undefined } }],
    });
    expect(set.label).toBe('change operation bore of arm');
    const bored = recordOf(set.build, 'operation', 'operation:bore')!;
    expect(bored.chosen).toEqual({ ...recordOf(sample, 'operation', 'operation:bore')!.chosen, rpm: '150' });
    expect(bored).not.toHaveProperty('cut');
    const one = edited(sample, 'operation-set', {
      changes: [{ operation: operation('bore'), set: { chosen: { feed: '' } } }],
    });
    expect(one.label).toBe('clear feed of operation bore of arm');
  });

  test('several are put into one set-up, and the route is put in order', () => {
    const both = [operation('face'), operation('bore')].map((id) => ({ operation: id, set: { setup: setup('arm0') } }));
    const put = edited(sample, 'operation-set', { changes: both });
    expect(put.label).toBe('change 2 operations');
    const moved = edited(put.build, 'operation-move', { operation: operation('face'), before: undefined });
    expect(names(operationsOf(moved.build, arm))).toEqual(['bore', 'face left']);
    const ordered = edited(moved.build, 'operations-order', {
      part: arm,
      order: [operation('face'), operation('bore')],
    });
    expect(names(operationsOf(ordered.build, arm))).toEqual(['face left', 'bore']);
    const again = run(ordered.build, 'operations-order', { part: arm, order: [operation('face'), operation('bore')] });
    expect(again.ok && isEmpty(again.value.diff)).toBe(true);
  });

  test('one that goes is waited for no longer', () => {
    const free = edited(sample, 'setup-set', { setup: setup('full'), set: { state: { is: 'as cast' } } });
    const gone = edited(free.build, 'operation-remove', { operations: [operation('face')] });
    expect(gone.label).toBe('remove operation face left of arm');
    expect(recordOf(gone.build, 'operation', 'operation:bore')?.after).toEqual([]);
  });

  test.each<[string, () => ReturnType<typeof refusal>, string, RegExp]>([
    [
      'a set-up takes the part after it',
      () => refusal(sample, 'operation-remove', { operations: [operation('face')] }),
      'needed-by-plans',
      /^Set-up "setup:full" needs the operation "face left"\.$/,
    ],
    [
      'it would make a body of another part',
      () =>
        refusal(sample, 'operation-add', { part: arm, process: 'turn', set: { makes: ['body:cap-boss' as never] } }),
      'operation-does-not-hold',
      /"boss" is a body of another part/,
    ],
    [
      'its set-up does not hold the part',
      () =>
        refusal(sample, 'operation-set', { changes: [{ operation: operation('cap'), set: { setup: setup('arm0') } }] }),
      'operation-does-not-hold',
      /"set-up 0" does not hold the part of "bore cap"/,
    ],
    [
      'the cut runs along two axes',
      () =>
        refusal(sample, 'operation-set', {
          changes: [
            {
              operation: operation('face'),
              set: { cut: { ends: [at('left'), at('mid')], diameter: { written: '' }, inner: { written: '' } } },
            },
          ],
        }),
      'operation-does-not-hold',
      /"left" lies along X and "mid" along Y/,
    ],
    [
      'no such operation',
      () => refusal(sample, 'operation-set', { changes: [{ operation: operation('none'), set: {} }] }),
      'operation-not-found',
      /./,
    ],
    ['no changes', () => refusal(sample, 'operation-set', { changes: [] }), 'nothing-given', /./],
    [
      'an order that leaves one out',
      () => refusal(sample, 'operations-order', { part: arm, order: [operation('face')] }),
      'order-does-not-fit',
      /arm/,
    ],
    [
      'an order that names one twice',
      () => refusal(sample, 'operations-order', { part: arm, order: [operation('face'), operation('face')] }),
      'order-does-not-fit',
      /arm/,
    ],
    [
      'half a tooth',
      () =>
        refusal(sample, 'operation-set', {
          changes: [{ operation: operation('face'), set: { tool: { teeth: 0.5 } } }],
        }),
      'field-refused',
      /tool/,
    ],
  ])('refused: %s', (_, attempt, code, words) => {
    const refused = attempt();
    expect(refused).toMatchObject({ code });
    expect(refused?.sentence).toMatch(words);
  });
});

describe('what the drawing takes away', () => {
  test('a part goes with its set-ups and operations, and no other set-up holds it any more', () => {
    const { build } = edited(sample, 'part-remove', { parts: ['part:cap' as PartId] });
    expect(build.has('operation:cap' as never)).toBe(false);
    expect(recordOf(build, 'setup', 'setup:full')?.fellows).toEqual([]);
  });

  test('a part goes from under the operations of its fellow', () => {
    const { build } = edited(sample, 'part-remove', { parts: [arm] });
    expect(setupsOf(build, arm)).toEqual([]);
    expect(operationsOf(build, arm)).toEqual([]);
    expect(build.get('operation:cap' as never)).not.toHaveProperty('setup');
  });

  test('a body goes, and is made no longer', () => {
    const { build } = edited(sample, 'body-remove', { bodies: ['body:arm-boss' as never] });
    expect(recordOf(build, 'operation', 'operation:face')?.makes).toEqual(['station:arm-left']);
  });

  test.each<[string, () => ReturnType<typeof refusal>, RegExp]>([
    [
      'a station that set-ups stand on',
      () => refusal(sample, 'station-remove', { stations: ['station:arm-foot' as never] }),
      /^Set-up "set-up 5" and set-up "set-up 6" need the station "foot"\.$/,
    ],
    [
      'a size that they take',
      () => refusal(sample, 'dimension-remove', { dimensions: ['dimension:arm-wall' as never] }),
      /^Set-up "set-up 5" needs the dimension "wall"\.$/,
    ],
    [
      'the station of a fellow',
      // The body of the cap hangs on its other stations; without it they are free but for the set-up.
      () =>
        refusal(edited(sample, 'body-remove', { bodies: ['body:cap-boss' as never] }).build, 'station-remove', {
          stations: ['station:cap-mid' as never],
        }),
      /^Set-up "setup:full" needs the station "mid"\.$/,
    ],
  ])('refused: %s', (_, attempt, words) => {
    const refused = attempt();
    expect(refused).toMatchObject({ code: 'needed-by-plans' });
    expect(refused?.sentence).toMatch(words);
  });

  test('a station that is only made or measured from goes from the operations', () => {
    const free = edited(sample, 'body-remove', { bodies: ['body:cap-boss' as never] });
    const made = edited(free.build, 'operation-set', {
      changes: [
        {
          operation: operation('cap'),
          set: { makes: ['station:cap-foot' as never], from: ['station:cap-foot' as never] },
        },
      ],
    });
    const { build } = edited(made.build, 'station-remove', { stations: ['station:cap-foot' as never] });
    expect(recordOf(build, 'operation', 'operation:cap')).toMatchObject({ makes: [], from: [] });
  });

  test('a station keeps its axis, and a size its measure, while plans stand on them', () => {
    const lone = edited(sample, 'station-add', { part: arm, axis: 'X', set: { name: 'lone' } });
    const station = [...lone.build.values()].find((record) => 'name' in record && record.name === 'lone')!;
    const seated = edited(lone.build, 'setup-set', {
      setup: setup('arm3'),
      set: { holding: { as: 'face plate', seat: { station: station.id as never, beyond: '' }, tailCentre: false } },
    });
    const turned = { changes: [{ station: station.id as never, set: { axis: 'Y' as const } }] };
    expect(edited(lone.build, 'station-set', turned).label).toBe('set axis of station lone to Y');
    expect(refusal(seated.build, 'station-set', turned)).toMatchObject({ code: 'needed-by-plans' });
    const measure = { type: 'size', form: 'angle' } as const;
    const angled = { changes: [{ dimension: 'dimension:arm-wall' as never, set: { measure } }] };
    expect(refusal(sample, 'dimension-set', angled)).toMatchObject({
      code: 'measure-needed-by-plan',
      sentence: expect.stringContaining('set-up "set-up 5" takes "wall"'),
    });
  });

  test('a renamed material is renamed in fixtures too', () => {
    const added = edited(sample, 'material-add', { material: { name: 'Dimension:Steel', values: {}, source: '' } });
    const material = [...added.build.values()].find(({ kind }) => kind === 'material')!;
    const { build } = edited(added.build, 'material-set', {
      material: material.id as never,
      set: { name: 'bright steel' },
    });
    expect(recordOf(build, 'setup', 'setup:full')?.fixtures[0]?.material).toBe('bright steel');
  });
});
