import { describe, expect, test } from 'vitest';
import { samplePlans } from '../../../tests/support/sample-plans.ts';
import { parseBuildJson, writeBuildJson } from './build-json.ts';
import type { Operation } from './operation.ts';
import { usesOfPlan, withoutGone } from './plan-uses.ts';
import type { BuildRecord } from './records.ts';
import { type Holding, type Setup, setupSchema } from './setup.ts';
import { validateBuild } from './validate-build.ts';

const records = samplePlans();
const full = records.find(({ id }) => (id as string) === 'setup:full') as Setup;
const bored = records.find(({ id }) => (id as string) === 'operation:bore') as Operation;
const fellow = full.fellows[0]!;
const at = (name: string) => ({ station: `station:arm-${name}`, beyond: '' });

/** Problems of the sample with one record changed, as `code field`. */
function problemsOf(id: string, change: object): readonly string[] {
  const changed = records.map((record) => (record.id === id ? { ...record, ...change } : record));
  const validated = validateBuild(changed);
  return validated.ok ? [] : validated.problems.map(({ code, field }) => `${code} ${field}`);
}

const withHolding = (holding: unknown) => problemsOf('setup:full', { holding });
const grip = { as: 'three-jaw chuck', diameter: { written: '' }, inside: false, tailCentre: false };

describe('a set-up names only what is there, of its own part, along its own line', () => {
  test.each<[string, object, readonly string[]]>([
    ['nothing changed', {}, []],
    ['no machine of that id', { machine: 'machine:none' }, ['machine-missing machine']],
    ['no part', { part: 'part:none' }, ['part-missing part']],
    [
      'a state after no operation',
      { state: { is: 'after', operation: 'operation:none' } },
      ['operation-missing state/operation'],
    ],
    [
      'a state after the operation of another part',
      { state: { is: 'after', operation: 'operation:cap' } },
      ['of-other-part state/operation'],
    ],
    ['a line along another axis', { line: { axis: 'Y' }, fixtures: [], holding: { as: 'between centres' } }, []],
    [
      'stations across in the wrong order',
      { line: { axis: 'X', through: ['station:arm-axis', 'station:arm-mid'] } },
      ['station-of-other-axis line/through/0', 'station-of-other-axis line/through/1'],
    ],
    [
      'a station of the other part across',
      { line: { axis: 'X', through: ['station:cap-mid', 'station:arm-axis'] } },
      ['of-other-part line/through/0'],
    ],
    [
      'a fixture across the line',
      { fixtures: [{ ...full.fixtures[0], ends: [at('left'), at('mid')] }] },
      ['station-of-other-axis fixtures/0/ends/1/station'],
    ],
    [
      'a fixture of an angle',
      {
        fixtures: [
          { ...full.fixtures[0], shape: { is: 'round', diameter: { size: 'dimension:arm-pitch', written: '' } } },
        ],
      },
      ['size-does-not-fit fixtures/0/shape/diameter/size'],
    ],
    [
      'a fellow that is not there',
      { fellows: [{ ...fellow, part: 'part:none' }] },
      [
        'part-missing fellows/0/part',
        'of-other-part fellows/0/state/operation',
        'of-other-part fellows/0/meets/0/1',
        'of-other-part fellows/0/meets/1/1',
        'of-other-part fellows/0/meets/2/1',
      ],
    ],
    [
      'a fellow turned inside out',
      { fellows: [{ ...fellow, turn: ['+X', '+X', '+Z'] }] },
      ['turn-mirrors fellows/0/turn'],
    ],
    // With another turn its axes lie elsewhere, and the stations no longer suit.
    [
      'a fellow turned otherwise',
      { fellows: [{ ...fellow, turn: ['+X', '+Y', '+Z'] }] },
      ['station-of-other-axis fellows/0/meets/0/1', 'station-of-other-axis fellows/0/meets/1/1'],
    ],
  ])('%s', (_, change, problems) => {
    const others = 'part' in change || 'fellows' in change ? ['part-not-held setup'] : [];
    const found = problemsOf('setup:full', change);
    expect(found.filter((problem) => !others.includes(problem)).slice(0, problems.length)).toEqual(problems);
    if (problems.length === 0) expect(found).toEqual([]);
  });

  test.each<[object, readonly string[]]>([
    [{ ...grip, ends: [at('left'), at('right')] }, []],
    [
      { ...grip, ends: [at('mid'), at('mid')] },
      ['station-of-other-axis holding/ends/0/station', 'station-of-other-axis holding/ends/1/station'],
    ],
    // Jaws close on flats as well.
    [{ ...grip, diameter: { size: 'dimension:arm-left-right', written: '' } }, []],
    [{ ...grip, diameter: { size: 'dimension:cap-bore', written: '' } }, ['of-other-part holding/diameter/size']],
    [{ as: 'steady', at: at('foot'), diameter: { written: '' } }, ['station-of-other-axis holding/at/station']],
    [
      { as: 'steady', diameter: { size: 'dimension:arm-wall', written: '' } },
      ['size-does-not-fit holding/diameter/size'],
    ],
    [{ as: 'vise', ends: [at('axis'), at('foot')], depth: { written: '' } }, []],
    [
      { as: 'vise', ends: [at('axis'), at('mid')], depth: { written: '' } },
      ['station-of-other-axis holding/ends/1/station'],
    ],
    [{ as: 'vise', depth: { size: 'dimension:arm-bore', written: '' } }, ['size-does-not-fit holding/depth/size']],
    [{ as: 'face plate', seat: at('foot'), tailCentre: false }, ['station-of-other-axis holding/seat/station']],
    [{ as: 'clamped to the table', seat: at('foot') }, []],
    [
      { as: 'clamped to the table', seat: { station: 'station:none', beyond: '' } },
      ['station-missing holding/seat/station'],
    ],
  ])('held %j', (holding, problems) => {
    expect(withHolding(holding)).toEqual(problems);
  });
});

describe('an operation names only what is there, of its own part', () => {
  test.each<[object, readonly string[]]>([
    [{ setup: 'setup:none' }, ['setup-missing setup']],
    [{ setup: 'setup:arm0' }, []],
    [{ makes: ['body:cap-boss'] }, ['of-other-part makes/0']],
    [{ makes: ['body:none', 'station:arm-left'] }, ['body-missing makes/0']],
    [{ from: ['station:none'] }, ['station-missing from/0']],
    [{ from: ['dimension:cap-bore'] }, ['of-other-part from/0']],
    [{ after: ['operation:cap'] }, ['of-other-part after/0']],
    [{ after: ['operation:bore'] }, ['after-itself after/0']],
    [{ cut: { ...bored.cut, ends: [at('left'), at('mid')] } }, ['station-of-other-axis cut/ends/1/station']],
    [{ cut: { ...bored.cut, ends: [at('axis'), at('foot')] } }, []],
    [
      { cut: { ...bored.cut, diameter: { size: 'dimension:arm-pitch', written: '' } } },
      ['size-does-not-fit cut/diameter/size'],
    ],
    [
      { tool: { ...bored.tool, diameter: { size: 'dimension:none', written: '' } } },
      ['dimension-missing tool/diameter/size'],
    ],
  ])('%j', (change, problems) => {
    expect(problemsOf('operation:bore', change)).toEqual(problems);
  });

  test('a set-up that does not hold its part', () => {
    expect(problemsOf('operation:cap', { setup: 'setup:arm0' })).toEqual(['part-not-held setup']);
    expect(problemsOf('setup:full', { fellows: [] })).toEqual(['part-not-held setup']);
  });
});

test('a machine keeps figures that its type does not have, and one that is no text is refused', () => {
  expect(problemsOf('machine:lathe00001', { type: 'vise' })).toEqual([]);
  expect(problemsOf('machine:lathe00001', { figures: { power: 2 } })).toEqual(['field figures/power']);
  expect(problemsOf('machine:lathe00001', { figures: { 'Swing over bed': '2' } })).toEqual([
    'field figures/Swing over bed',
  ]);
});

test('every id that a plan holds is gathered, each with its field', () => {
  const plans = records.filter(({ kind }) => kind === 'setup' || kind === 'operation') as (Setup | Operation)[];
  for (const plan of plans) {
    for (const { id, field } of usesOfPlan(plan).uses) {
      const there = field.split('/').reduce<unknown>((value, step) => (value as Record<string, unknown>)[step], plan);
      expect(there).toBe(id);
    }
  }
  // Each way of holding is in the sample, so that none is forgotten.
  const ways = setupSchema.shape.holding.options.map((option) => option.shape.as.value);
  const held = plans.flatMap((plan) => (plan.kind === 'setup' ? [plan.holding.as] : []));
  expect(new Set<Holding['as']>(held)).toEqual(new Set(ways));
});

test('what is gone is taken out where a plan can do without it', () => {
  const gone = new Set(['machine:lathe00001', 'part:cap', 'setup:full', 'station:arm-left', 'operation:face']);
  expect(withoutGone(full, gone)).toMatchObject({ fellows: [], holding: full.holding });
  expect(withoutGone(full, gone)).not.toHaveProperty('machine');
  const { setup: _, ...rest } = bored;
  expect(withoutGone(bored, gone)).toStrictEqual({ ...rest, from: ['dimension:arm-left-right'], after: [] });
});

describe('the JSON form', () => {
  test('holds machines and plans, and comes back as it was', () => {
    const text = writeBuildJson({ records, issues: [] });
    const read = parseBuildJson(text);
    if (!read.ok) throw new Error(JSON.stringify(read.error));
    const byId = (list: readonly BuildRecord[]) => [...list].sort((a, b) => (a.id < b.id ? -1 : 1));
    expect(byId(read.value.records)).toEqual(byId(records));
    expect(writeBuildJson(read.value)).toBe(text);
  });

  test('is the same text however the fields and figures were put', () => {
    const turned = records.map((record) => {
      const fields = Object.fromEntries(Object.entries(record).reverse()) as unknown as BuildRecord;
      if (fields.kind !== 'machine') return fields;
      return { ...fields, figures: Object.fromEntries(Object.entries(fields.figures).reverse()) };
    });
    expect(writeBuildJson({ records: turned, issues: [] })).toBe(writeBuildJson({ records, issues: [] }));
  });

  test.each([1, 2, 3, 4])('of version %i still opens', (version) => {
    const plans = version < 4 ? ['machine', 'setup', 'operation'] : [];
    const old = records.filter(({ kind }) => !plans.includes(kind));
    const text = writeBuildJson({ records: old, issues: [] }).replace(/"version": \d/, `"version": ${version}`);
    expect(text).toContain(`"version": ${version}`);
    expect(parseBuildJson(text)).toMatchObject({ ok: true });
  });
});
