import { expect, test } from 'vitest';
import { countingContext, emptyBuild } from '../../../tests/support/random-edits.ts';
import type { DimensionId, PartId } from '../base/ids.ts';
import { type CommandId, type ParamsOf, runCommand } from '../build/commands/registry.ts';
import { invert } from '../build/diff.ts';
import { dimensionsOf, partsOf, stationsOf } from '../build/look-up.ts';
import { createWorks } from './create-works.ts';
import { figuresOf } from './finding.ts';

/** A column whose bore the ram follows, with a station apart. */
function workshop() {
  const works = createWorks(emptyBuild());
  const context = countingContext();
  const run = <I extends CommandId>(id: I, params: ParamsOf<I>) => {
    const result = runCommand(works.build, id, params, context);
    if (!result.ok) throw new Error(result.error.code);
    return { diff: result.value.diff, change: works.update(result.value.diff) };
  };
  const part = (name: string, make: 'cast' | 'stock' | 'bought' = 'cast'): PartId => {
    run('part-add', { set: { name, make, material: 'bronze' } });
    return partsOf(works.build).at(-1)!.id;
  };
  const size = (of: PartId, name: string, value: string, source: 'drawn' | 'assumed' = 'drawn'): DimensionId => {
    run('dimension-add', { part: of, measure: { type: 'size', form: 'diameter' }, set: { name, value, source } });
    return dimensionsOf(works.build, of).at(-1)!.id;
  };
  const set = (dimension: DimensionId, fields: ParamsOf<'dimension-set'>['changes'][number]['set']) =>
    run('dimension-set', { changes: [{ dimension, set: fields }] });
  const gate = (of: PartId) => works.gatesOf(of)[0];
  return { works, run, part, size, set, gate };
}

test('a missing dimension is found, a value opens the gate, and undoing shuts it again', () => {
  const { works, run, part, gate } = workshop();
  const bracket = part('bracket');
  for (const name of ['foot', 'lug']) run('station-add', { part: bracket, axis: 'Z', set: { name } });
  const [foot, lug] = stationsOf(works.build, bracket);
  run('dimension-add', {
    part: bracket,
    measure: { type: 'between', from: foot!.id, to: lug!.id },
    set: { name: 'rise' },
  });
  const [rise] = dimensionsOf(works.build, bracket);
  const stops = works.findings().filter(({ severity }) => severity === 'stop');
  expect(stops.map(({ rule }) => rule)).toEqual(['dimension-without-value', 'station-not-placed']);
  expect(works.findings()[1]).toMatchObject({ message: 'no-value', at: [rise!.id, lug!.id, foot!.id] });
  expect(gate(bracket)).toMatchObject({ state: 'shut', because: stops.map(({ key }) => key) });

  const { diff, change } = run('dimension-set', { changes: [{ dimension: rise!.id, set: { value: '40' } }] });
  expect(change).toMatchObject({ parts: [bracket], findingsChanged: true });
  // It has no body yet, which shuts nothing.
  expect(works.findings().map(({ rule }) => rule)).toEqual(['part-without-bodies']);
  expect(gate(bracket)).toEqual({ gate: 'cut', state: 'open', because: [] });

  works.update(invert(diff));
  expect(gate(bracket)?.state).toBe('shut');
});

test('a gate is shut by what its part hangs on in other parts, however far back; a bought part needs none', () => {
  const { works, part, size, set, gate } = workshop();
  const bearing = part('bearing', 'bought');
  const column = part('column');
  const ram = part('ram', 'stock');
  const free = part('free');
  const bore = size(bearing, 'bore', '25');
  size(column, 'seat', 'bore of bearing + 1 mm');
  size(ram, 'journal', 'seat of column / 2');
  size(free, 'width', '10');
  expect([bearing, column, ram, free].map((id) => gate(id)?.state)).toEqual(['not needed', 'open', 'open', 'open']);
  const { change } = set(bore, { source: 'assumed' });
  const [finding] = works.findings();
  expect(finding).toMatchObject({ rule: 'assumed-in-use', part: bearing });
  expect([bearing, column, ram, free].map((id) => gate(id)?.state)).toEqual(['not needed', 'shut', 'shut', 'open']);
  expect(gate(ram)?.because).toEqual([finding!.key]);
  expect(change.parts).toEqual([bearing, column, ram].sort());
});

test('an accepted finding opens the gate, and is open again when its figures change', () => {
  const { works, run, part, size, set, gate } = workshop();
  const column = part('column');
  const bore = size(column, 'bore', '25', 'assumed');
  expect(gate(column)?.state).toBe('shut');
  const { key: finding, rule, data } = works.findings()[0]!;
  run('finding-accept', { rule, finding, figures: figuresOf(data), reason: 'the reamer is 25' });
  expect(works.findings()[0]).toMatchObject({
    key: finding,
    accepted: { reason: 'the reamer is 25' },
    lapsed: undefined,
  });
  expect(gate(column)?.state).toBe('open');

  const { diff } = set(bore, { value: '26' });
  expect(works.findings()[0]).toMatchObject({
    key: finding,
    accepted: undefined,
    lapsed: { reason: 'the reamer is 25' },
  });
  expect(gate(column)?.state).toBe('shut');

  works.update(invert(diff));
  expect(works.findings()[0]?.accepted?.reason).toBe('the reamer is 25');
  run('acceptance-withdraw', { acceptance: works.findings()[0]!.accepted!.id });
  expect(works.findings()[0]).toMatchObject({ accepted: undefined, lapsed: undefined });
});

test('an accepted closed chain is open again when one of its figures changes, or the way round', () => {
  const { works, run, part, set } = workshop();
  const column = part('column');
  for (const name of ['foot', 'middle', 'top', 'step']) run('station-add', { part: column, axis: 'Z', set: { name } });
  const [foot, middle, top, step] = stationsOf(works.build, column).map(({ id }) => id);
  const tie = (name: string, from = foot!, to = top!, value = '70', limits = '±0.5'): DimensionId => {
    run('dimension-add', { part: column, measure: { type: 'between', from, to }, set: { name, value, limits } });
    return dimensionsOf(works.build, column).at(-1)!.id;
  };
  const lower = tie('lower', foot, middle, '50');
  tie('upper', middle, top, '20');
  const whole = tie('whole', foot, top, '70');
  tie('to step', foot, step, '10');
  const found = () => works.findings().find(({ rule }) => rule === 'redundant-dimension')!;
  const { key: finding, rule, data } = found();
  run('finding-accept', { rule, finding, figures: figuresOf(data), reason: 'both are on the drawing' });
  expect(found().accepted).toBeDefined();

  // Each still closes within its limits, so the finding is the same; what was accepted is not.
  for (const change of [{ value: '70.2' }, { limits: '±0.4' }]) {
    const { diff } = set(whole, change);
    expect(found()).toMatchObject({ key: finding, accepted: undefined, lapsed: { rule } });
    works.update(invert(diff));
    expect(found().accepted).toBeDefined();
  }
  const { diff } = run('dimension-set', {
    changes: [{ dimension: lower, set: { measure: { type: 'between', from: step!, to: middle! }, value: '40' } }],
  });
  expect(found()).toMatchObject({ accepted: undefined });
  expect(found().key).not.toBe(finding);
  works.update(invert(diff));
  expect(found().accepted).toBeDefined();
});

test('a stop is not taken over by an acceptance', () => {
  const { works, run, part, size, gate } = workshop();
  const column = part('column');
  size(column, 'bore', '');
  const { key: finding, rule, data } = works.findings()[0]!;
  run('finding-accept', { rule, finding, figures: figuresOf(data), reason: 'never mind' });
  expect(works.findings()[0]).toMatchObject({
    rule: 'dimension-without-value',
    accepted: undefined,
    lapsed: undefined,
  });
  expect(gate(column)?.state).toBe('shut');
});

test('a ring over two parts is told once and shuts the gates of both', () => {
  const { works, part, size, gate } = workshop();
  const column = part('column');
  const ram = part('ram');
  size(column, 'bore', 'diameter of ram');
  size(ram, 'diameter', 'bore of column');
  const stops = (of = works.findings()) => of.filter(({ severity }) => severity === 'stop');
  expect(stops().map(({ rule }) => rule)).toEqual(['formula-ring']);
  expect(stops(works.findingsOf(column))).toEqual(stops(works.findingsOf(ram)));
  expect([gate(column)?.state, gate(ram)?.state]).toEqual(['shut', 'shut']);
});

test('figures are compared by their digits, not by the noise of the arithmetic', () => {
  expect(figuresOf({ b: 0.1 + 0.2, a: 'x' })).toBe(figuresOf({ a: 'x', b: 0.3 }));
  expect(figuresOf({ b: 0.3001 })).not.toBe(figuresOf({ b: 0.3 }));
});
