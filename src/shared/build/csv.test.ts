import { describe, expect, test } from 'vitest';
import { countingContext, emptyBuild } from '../../../tests/support/random-edits.ts';
import { readCsv, writeCsv } from './csv.ts';
import { apply } from './diff.ts';
import { type ImportOptions, planImport, usualImport } from './import-rows.ts';
import { limitsFromColumns, limitsToColumns } from './limits-columns.ts';
import { dimensionsOf, partsOf, stationsOf } from './look-up.ts';
import type { Build } from './records.ts';

const head = 'part,name,from,to,axis,value,plus,minus,source,sheet';
const context = countingContext();

function rowsOf(text: string) {
  const table = readCsv(text);
  if (!table.ok) throw new Error(table.error.sentence);
  return table.value.rows;
}

function importInto(build: Build, text: string, options: ImportOptions = usualImport) {
  const plan = planImport(build, rowsOf(text), options, context);
  return { build: apply(build, plan.diff), report: plan.rows, diff: plan.diff };
}

const column = importInto(
  emptyBuild(),
  `${head}\ncolumn,height,foot,top,Z,120,0.2,0.1,drawn,4\ncolumn,bore,,,diameter,1-3/8 in,,,measured,4\n`,
).build;

describe('reading a table', () => {
  test('columns in any order and case, with a byte order mark, and unknown ones named', () => {
    const table = readCsv('\uFEFFVALUE,Name , part,colour\n25,bore,column,red\n');
    expect(table).toMatchObject({
      ok: true,
      value: { ignored: ['colour'], rows: [{ line: 2, part: 'column', name: 'bore', value: '25', from: '' }] },
    });
  });

  test('tabs, and semicolons with decimal commas', () => {
    expect(rowsOf('part\tname\tvalue\na\tb\t1,5')[0]).toMatchObject({ value: '1,5' });
    expect(rowsOf('part;name;value;plus\na;b;1,5;+0,2')[0]).toMatchObject({ value: '1.5', plus: '+0.2' });
    expect(rowsOf('part;name;value\na;b;max(c,5)')[0]).toMatchObject({ value: 'max(c,5)' });
  });

  test('line numbers hold over cells of several lines and empty lines', () => {
    expect(rowsOf('part,name,value\n"a\nb",c,1\n\nd,e,2\n').map(({ line }) => line)).toEqual([2, 5]);
  });

  test.each([
    ['', 'empty', 1],
    ['name,value\nbore,25', 'column-missing', 1],
    ['part,name,Part\na,b,c', 'column-twice', 1],
    ['part,name,value\na,b,"25\nc,d,1', 'unclosed-quote', 2],
  ])('%j is refused as a whole', (text, code, line) => {
    expect(readCsv(text)).toMatchObject({ ok: false, error: { code, line } });
  });
});

describe('importing', () => {
  test('adds parts, stations (the first one as datum), distances and sizes', () => {
    const [part] = partsOf(column);
    expect(part).toMatchObject({ name: 'column', make: 'cast' });
    const stations = stationsOf(column, part!.id);
    expect(stations).toMatchObject([
      { name: 'foot', axis: 'Z', datum: true },
      { name: 'top', axis: 'Z', datum: false },
    ]);
    expect(dimensionsOf(column, part!.id)).toMatchObject([
      {
        name: 'height',
        value: '120',
        limits: '+0.2/-0.1',
        sheet: '4',
        measure: { from: stations[0]!.id, to: stations[1]!.id },
      },
      { name: 'bore', value: '1-3/8 in', source: 'measured', measure: { type: 'size', form: 'diameter' } },
    ]);
  });

  test('what it wrote itself changes nothing', () => {
    const { report, diff } = importInto(column, writeCsv(column));
    expect(report.map(({ outcome }) => outcome)).toEqual(['unchanged', 'unchanged']);
    expect(diff).toEqual({ added: [], updated: [], removed: [] });
  });

  test('an empty cell leaves what is there, limits that allow the same stay as written', () => {
    const { report, build } = importInto(column, `${head}\nColumn,Height,,,,,+0.20,-0.10,,\ncolumn,bore,,,,36,,,,`);
    expect(report).toMatchObject([{ outcome: 'unchanged' }, { outcome: 'changed', what: ['value'] }]);
    expect(dimensionsOf(build, partsOf(build)[0]!.id)).toMatchObject([
      { limits: '+0.2/-0.1' },
      { value: '36', source: 'measured' },
    ]);
  });

  test('a form of size may stand alone under "from", as in the tables of the window', () => {
    const { report, build } = importInto(column, `${head}\ncolumn,oil hole,Diameter,,,4,,,,`);
    expect(report).toMatchObject([{ outcome: 'added' }]);
    expect(dimensionsOf(build, partsOf(build)[0]!.id).at(-1)).toMatchObject({
      name: 'oil hole',
      measure: { type: 'size', form: 'diameter' },
    });
  });

  test.each([
    ['column,,,,,1,,,,', /no name/],
    [',bore,,,,1,,,,', /names no part/],
    ['column,new,foot,,Z,1,,,,', /Only one of "from" and "to"/],
    ['column,new,foot,foot,Z,1,,,,', /to itself/],
    ['column,new,foot,lid,,1,,,,', /no station "lid"/],
    ['column,new,foot,top,diameter,1,,,,', /does not run/],
    ['column,new,foot,top,W,1,,,,', /neither an axis/],
    ['column,new,,,X,1,,,,', /but no stations/],
    ['column,new,,,length,25 parsecs,,,,', /value "25 parsecs" cannot be read/],
    ['column,new,,,length,25,0.1,,,', /Only one of "plus" and "minus"/],
    ['column,new,,,length,25,wide,narrow,,', /limits .* cannot be read/],
    ['column,new,,,length,25,,,guessed,', /no source/],
    [`column,${'n'.repeat(130)},,,length,25,,,,`, /cannot be kept/],
  ])('refuses %s and leaves nothing of it', (row, reason) => {
    const { report, build } = importInto(column, `${head}\n${row}`);
    expect(report[0]).toMatchObject({ outcome: 'refused', line: 2 });
    expect(report[0]!.reason).toMatch(reason);
    expect(report[0]!.remedy).not.toBe('');
    expect(build).toEqual(column);
  });

  test('a refused row of a new part adds neither part nor station, a good one after it does', () => {
    const { report, build } = importInto(
      emptyBuild(),
      `${head}\nram,stroke,low,high,Z,wrong +,,,,\nram,length,low,end,Z,90,,,,`,
    );
    expect(report).toMatchObject([
      { outcome: 'refused' },
      { outcome: 'added', what: ['part ram', 'station low', 'station end'] },
    ]);
    expect(stationsOf(build, partsOf(build)[0]!.id).map(({ name }) => name)).toEqual(['low', 'end']);
  });

  test('two lines for one dimension: the second is refused and names the first', () => {
    const { report } = importInto(column, `${head}\ncolumn,bore,,,,36,,,,\ncolumn,Bore,,,,37,,,,`);
    expect(report).toMatchObject([
      { outcome: 'changed' },
      { outcome: 'refused', reason: 'Line 2 speaks of the same dimension.' },
    ]);
  });

  test('without leave to add parts or stations such rows are refused', () => {
    const text = `${head}\nram,length,,,length,90,,,,\ncolumn,lug,foot,lug,Z,9,,,,`;
    const { report, build } = importInto(column, text, { addParts: false, addStations: false });
    expect(report).toMatchObject([{ outcome: 'refused' }, { outcome: 'refused' }]);
    expect(build).toEqual(column);
  });
});

describe('limits in two columns', () => {
  test.each([
    ['±0.1', '+0.1', '-0.1', '±0.1'],
    ['+-5 thou', '+5 thou', '-5 thou', '±5 thou'],
    ['+0.2/-0', '+0.2', '-0', '+0.2/-0'],
    ['+0.02/+0.05', '+0.05', '+0.02', '+0.05/+0.02'],
    ['-0.1/-0.2', '-0.1', '-0.2', '-0.1/-0.2'],
    ['', '', '', undefined],
  ])('%s', (limits, plus, minus, back) => {
    expect(limitsToColumns(limits)).toEqual({ plus, minus });
    expect(limitsFromColumns({ plus, minus })).toEqual({ ok: true, value: back });
  });

  test('figures without signs go above and below; whole limits may stand alone', () => {
    expect(limitsFromColumns({ plus: '0.1', minus: '0.1' })).toEqual({ ok: true, value: '±0.1' });
    expect(limitsFromColumns({ plus: '0.1', minus: '0' })).toEqual({ ok: true, value: '+0.1/-0' });
    expect(limitsFromColumns({ plus: '±0.3', minus: '' })).toEqual({ ok: true, value: '±0.3' });
    expect(limitsFromColumns({ plus: '', minus: '0.3' })).toEqual({ ok: false, error: 'one-limit' });
  });
});
