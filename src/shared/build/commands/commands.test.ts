import { describe, expect, test } from 'vitest';
import { countingContext, emptyBuild } from '../../../../tests/support/random-edits.ts';
import type { DimensionId, PartId, StationId } from '../../base/ids.ts';
import { apply, type BuildDiff, isEmpty } from '../diff.ts';
import type { SizeForm } from '../dimension.ts';
import { acceptancesOf, dimensionsOf, partsOf, settingsOf, stationsOf } from '../look-up.ts';
import type { Build } from '../records.ts';
import { refusalWords } from '../refusals.ts';
import { type CommandId, type ParamsOf, runCommand } from './registry.ts';

/** A build under the hands of one person: `sit.run` carries out an edit and keeps what it made. */
function sitting() {
  let build: Build = emptyBuild();
  const context = countingContext();
  const attempt = <I extends CommandId>(id: I, params: ParamsOf<I>) => runCommand(build, id, params, context);
  const sit = {
    get build() {
      return build;
    },
    attempt,
    /** @returns the label. */
    run<I extends CommandId>(id: I, params: ParamsOf<I>): string {
      const result = attempt(id, params);
      if (!result.ok) throw new Error(refusalWords(result.error).sentence);
      build = apply(build, result.value.diff);
      return result.value.label;
    },
    code<I extends CommandId>(id: I, params: ParamsOf<I>): string {
      const result = attempt(id, params);
      if (result.ok) return 'carried out';
      const { sentence, remedy } = refusalWords(result.error);
      expect(`${sentence} ${remedy}`).not.toMatch(/[{}]/);
      return result.error.code;
    },
    diff<I extends CommandId>(id: I, params: ParamsOf<I>): BuildDiff {
      const result = attempt(id, params);
      if (!result.ok) throw new Error(result.error.code);
      return result.value.diff;
    },
    part(name: string): PartId {
      sit.run('part-add', { set: { name } });
      return partsOf(build).at(-1)!.id;
    },
    station(part: PartId, axis: 'X' | 'Y' | 'Z', name: string): StationId {
      sit.run('station-add', { part, axis, set: { name } });
      return stationsOf(build, part).at(-1)!.id;
    },
    size(part: PartId, name: string, value: string, form: SizeForm = 'length'): DimensionId {
      sit.run('dimension-add', { part, measure: { type: 'size', form }, set: { name, value } });
      return dimensionsOf(build, part).at(-1)!.id;
    },
    distance(part: PartId, name: string, from: StationId, to: StationId): DimensionId {
      sit.run('dimension-add', { part, measure: { type: 'between', from, to }, set: { name } });
      return dimensionsOf(build, part).at(-1)!.id;
    },
    value: (part: PartId, name: string) =>
      dimensionsOf(build, part).find((dimension) => dimension.name === name)?.value,
  };
  return sit;
}

describe('renaming', () => {
  test('of a dimension is carried into formulas of its own part and of others, in the same step', () => {
    const sit = sitting();
    const column = sit.part('guide column');
    const ram = sit.part('ram');
    const bore = sit.size(column, 'bore', '25');
    sit.size(column, 'wall', '(bore + 2*Bore) / 2');
    sit.size(ram, 'diameter', 'bore of "guide column" - 0.05 mm');
    sit.size(ram, 'bore', '3');
    sit.size(ram, 'other', 'bore');
    const label = sit.run('dimension-set', { changes: [{ dimension: bore, set: { name: 'main bore' } }] });
    expect(label).toBe('rename bore of guide column to main bore');
    expect(sit.value(column, 'wall')).toBe('("main bore" + 2*"main bore") / 2');
    expect(sit.value(ram, 'diameter')).toBe('"main bore" of "guide column" - 0.05 mm');
    expect(sit.value(ram, 'other')).toBe('bore');
  });

  test('of a part is carried into formulas that name it', () => {
    const sit = sitting();
    const column = sit.part('column');
    const ram = sit.part('ram');
    sit.size(column, 'bore', '25');
    sit.size(ram, 'diameter', 'bore of column');
    expect(sit.run('part-set', { part: column, set: { name: 'guide' } })).toBe('rename column to guide');
    expect(sit.value(ram, 'diameter')).toBe('bore of guide');
  });

  test('to a name that is taken leaves formulas alone, so that the way back is open', () => {
    const sit = sitting();
    const column = sit.part('column');
    const bore = sit.size(column, 'bore', '25');
    sit.size(column, 'wall', '6');
    sit.size(column, 'boss', '2 * bore');
    sit.run('dimension-set', { changes: [{ dimension: bore, set: { name: 'wall' } }] });
    expect(sit.value(column, 'boss')).toBe('2 * bore');
    sit.run('dimension-set', { changes: [{ dimension: bore, set: { name: 'bore' } }] });
    expect(sit.value(column, 'boss')).toBe('2 * bore');
  });

  test('of two at once that change names', () => {
    const sit = sitting();
    const column = sit.part('column');
    const a = sit.size(column, 'a', '1');
    const b = sit.size(column, 'b', '2');
    sit.size(column, 'sum', 'a + 10 * b');
    sit.run('dimension-set', {
      changes: [
        { dimension: a, set: { name: 'b' } },
        { dimension: b, set: { name: 'a' } },
      ],
    });
    expect(sit.value(column, 'sum')).toBe('b + 10 * a');
  });
});

describe('labels', () => {
  test('say what was done, with the names of that moment', () => {
    const sit = sitting();
    const column = sit.part('column');
    const bore = sit.size(column, 'bore', '');
    const set = (fields: ParamsOf<'dimension-set'>['changes'][number]['set']) =>
      sit.run('dimension-set', { changes: [{ dimension: bore, set: fields }] });
    expect(set({ value: '25' })).toBe('set bore of column to 25');
    expect(set({ limits: '±0.1' })).toBe('set limits of bore of column to ±0.1');
    expect(set({ source: 'assumed' })).toBe('set source of bore of column to assumed');
    expect(set({ value: '' })).toBe('clear bore of column');
    expect(set({ note: 'as the reamer' })).toBe('change note of bore of column');
    expect(set({ value: '26', limits: '' })).toBe('change bore of column');
    expect(sit.run('part-set', { part: column, set: { material: 'iron' } })).toBe('set material of column to iron');
    expect(sit.run('settings-set', { set: { castingGrade: 9 } })).toBe('set casting tolerance grade');
    expect(sit.run('dimension-remove', { dimensions: [bore] })).toBe('remove bore of column');
    expect(sit.run('part-remove', { parts: [column] })).toBe('remove part column');
  });
});

describe('stations', () => {
  test('the first of an axis becomes its datum, and a new datum takes over from the old', () => {
    const sit = sitting();
    const column = sit.part('column');
    const foot = sit.station(column, 'Z', 'foot');
    const top = sit.station(column, 'Z', 'top');
    const side = sit.station(column, 'X', 'side');
    const datums = () =>
      stationsOf(sit.build, column)
        .filter(({ datum }) => datum)
        .map(({ id }) => id);
    expect(datums()).toEqual([foot, side]);
    expect(sit.run('datum-set', { station: top, datum: true })).toBe('make top the datum along Z');
    expect(datums()).toEqual([top, side]);
    sit.run('datum-set', { station: top, datum: false });
    expect(datums()).toEqual([side]);
  });

  test('go with the dimensions that use them and the acceptances that point at those; the label says so', () => {
    const sit = sitting();
    const column = sit.part('column');
    const foot = sit.station(column, 'Z', 'foot');
    const top = sit.station(column, 'Z', 'top');
    const height = sit.distance(column, 'height', foot, top);
    const kept = sit.size(column, 'bore', '25');
    const accept = (id: string) =>
      sit.run('finding-accept', { rule: 'r', finding: `r/m@${id}`, figures: '[]', reason: 'as agreed' });
    accept(height);
    accept(kept);
    expect(sit.run('station-remove', { stations: [top] })).toBe('remove station top and 1 dimension that used it');
    expect(dimensionsOf(sit.build, column).map(({ id }) => id)).toEqual([kept]);
    expect(acceptancesOf(sit.build).map(({ finding }) => finding)).toEqual([`r/m@${kept}`]);
  });

  test('change their axis only while nothing is measured from them', () => {
    const sit = sitting();
    const column = sit.part('column');
    const foot = sit.station(column, 'Z', 'foot');
    const top = sit.station(column, 'Z', 'top');
    const lug = sit.station(column, 'Z', 'lug');
    sit.distance(column, 'height', foot, top);
    expect(sit.code('station-set', { changes: [{ station: top, set: { axis: 'X' } }] })).toBe('station-axis-used');
    sit.run('station-set', { changes: [{ station: lug, set: { axis: 'X' } }] });
    expect(stationsOf(sit.build, column, 'X')).toMatchObject([{ id: lug, datum: true }]);
  });
});

describe('dimensions', () => {
  test('join two different stations of one axis of their part', () => {
    const sit = sitting();
    const column = sit.part('column');
    const ram = sit.part('ram');
    const foot = sit.station(column, 'Z', 'foot');
    const side = sit.station(column, 'X', 'side');
    const end = sit.station(ram, 'Z', 'end');
    const add = (to: StationId) =>
      sit.code('dimension-add', { part: column, measure: { type: 'between', from: foot, to } });
    expect(add(foot)).toBe('same-station');
    expect(add(side)).toBe('different-axes');
    expect(add(end)).toBe('not-of-this-part');
    expect(add('station:gone' as StationId)).toBe('station-not-found');
  });

  test('without a name are called after what they measure', () => {
    const sit = sitting();
    const column = sit.part('column');
    const foot = sit.station(column, 'Z', 'foot');
    const top = sit.station(column, 'Z', 'top');
    const measure = { type: 'between', from: foot, to: top } as const;
    sit.run('dimension-add', { part: column, measure });
    sit.run('dimension-add', { part: column, measure });
    expect(dimensionsOf(sit.build, column).map(({ name }) => name)).toEqual(['foot to top', 'foot to top 2']);
  });

  test('move in their list', () => {
    const sit = sitting();
    const column = sit.part('column');
    const [a, b, c] = [sit.size(column, 'a', '1'), sit.size(column, 'b', '2'), sit.size(column, 'c', '3')] as const;
    sit.run('dimension-move', { dimension: c, before: a });
    sit.run('dimension-move', { dimension: a, before: undefined });
    expect(dimensionsOf(sit.build, column).map(({ id }) => id)).toEqual([c, b, a]);
    expect(isEmpty(sit.diff('dimension-move', { dimension: b, before: b }))).toBe(true);
  });
});

describe('a block of cells', () => {
  test('goes over rows that are there and makes new ones below', () => {
    const sit = sitting();
    const column = sit.part('column');
    sit.station(column, 'Z', 'foot');
    sit.station(column, 'Z', 'top');
    const bore = sit.size(column, 'bore', '25', 'diameter');
    sit.size(column, 'boss', '2 * bore');
    const label = sit.run('cells-set', {
      part: column,
      rows: [
        { dimension: bore, cells: { name: ' reamed ', value: ' 3/8 ', source: 'Measured' } },
        { dimension: undefined, cells: { name: 'height', from: 'FOOT', to: 'top', value: '100', finish: 'as cast' } },
        { dimension: undefined, cells: { from: 'radius', value: '3' } },
      ],
    });
    expect(label).toBe('paste 3 rows into column');
    expect(dimensionsOf(sit.build, column)).toMatchObject([
      { name: 'reamed', value: '3/8', source: 'measured', measure: { type: 'size', form: 'diameter' } },
      { name: 'boss', value: '2 * reamed' },
      { name: 'height', value: '100', finish: 'as cast', measure: { type: 'between' } },
      { name: 'radius', value: '3', measure: { type: 'size', form: 'radius' } },
    ]);
  });

  test('is refused whole, with the row and the field, where a cell cannot be kept', () => {
    const sit = sitting();
    const column = sit.part('column');
    const other = sit.part('ram');
    for (const axis of ['X', 'Z'] as const) for (const name of ['centre', 'edge']) sit.station(column, axis, name);
    sit.station(column, 'Z', 'foot');
    sit.station(column, 'X', 'side');
    const alien = sit.size(other, 'bore', '1');
    const refuse = (cells: ParamsOf<'cells-set'>['rows'][number]['cells']) => {
      const rows = [
        { dimension: undefined, cells: { value: '1' } },
        { dimension: undefined, cells },
      ];
      const result = sit.attempt('cells-set', { part: column, rows });
      if (result.ok) return 'carried out';
      expect(result.error.data?.row).toBe(2);
      return result.error.code;
    };
    expect(refuse({ from: 'lid', to: 'foot' })).toBe('cell-station-unknown');
    expect(refuse({ from: 'centre', to: 'edge' })).toBe('cell-station-ambiguous');
    expect(refuse({ from: 'Z/centre', to: 'edge' })).toBe('carried out');
    expect(refuse({ from: 'foot' })).toBe('cell-one-end');
    expect(refuse({ from: 'foot', to: 'foot' })).toBe('cell-same-station');
    expect(refuse({ from: 'foot', to: 'side' })).toBe('cell-different-axes');
    expect(refuse({ source: 'guessed' })).toBe('cell-refused');
    expect(refuse({ finish: 'filed' })).toBe('cell-refused');
    expect(refuse({ sheet: 's'.repeat(61) })).toBe('cell-refused');
    expect(sit.code('cells-set', { part: column, rows: [] })).toBe('nothing-given');
    expect(sit.code('cells-set', { part: column, rows: [{ dimension: alien, cells: {} }] })).toBe(
      'dimension-not-found',
    );
  });
});

test('what is gone, empty or too long is refused in words', () => {
  const sit = sitting();
  const column = sit.part('column');
  const gone = 'part:gone' as PartId;
  expect(sit.code('part-set', { part: gone, set: {} })).toBe('part-not-found');
  expect(sit.code('part-remove', { parts: [gone] })).toBe('part-not-found');
  expect(sit.code('part-move', { part: column, before: gone })).toBe('part-not-found');
  expect(sit.code('part-set', { part: column, set: { name: '  ' } })).toBe('name-empty');
  expect(sit.code('part-set', { part: column, set: { quantity: 0 } })).toBe('field-refused');
  expect(sit.code('settings-set', { set: { castingGrade: 17 } })).toBe('field-refused');
  expect(sit.code('dimension-set', { changes: [] })).toBe('nothing-given');
  expect(sit.code('dimension-remove', { dimensions: ['dimension:gone' as DimensionId] })).toBe('dimension-not-found');
  expect(sit.code('acceptance-withdraw', { acceptance: 'acceptance:gone' as never })).toBe('acceptance-not-found');
  expect(sit.code('finding-accept', { rule: 'r', finding: 'r/m@a', figures: '', reason: ' ' })).toBe('reason-empty');
  expect(sit.code('build-replace', { records: [] })).toBe('records-do-not-hold');
});

test('another unit of lengths leaves written numbers as they are, or their sizes, as is asked for', () => {
  const sit = sitting();
  const column = sit.part('column');
  sit.size(column, 'bore', '25');
  sit.run('settings-set', { set: { lengthUnit: 'in' } });
  expect(sit.value(column, 'bore')).toBe('25');
  sit.run('settings-set', { set: { lengthUnit: 'mm' } });
  sit.run('settings-set', { set: { lengthUnit: 'in' }, keepSizes: true });
  expect(sit.value(column, 'bore')).toBe('25 mm');
  expect(settingsOf(sit.build).lengthUnit).toBe('in');
});

test('an edit to what is there already changes nothing', () => {
  const sit = sitting();
  const { castingGrade } = settingsOf(sit.build);
  expect(isEmpty(sit.diff('settings-set', { set: { castingGrade } }))).toBe(true);
});
