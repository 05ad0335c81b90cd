import { describe, expect, test } from 'vitest';
import {
  firstPour,
  foundryRecords,
  fullCasting,
  sampleFoundry,
  secondPour,
} from '../../../tests/support/sample-foundry.ts';
import { parseBuildJson, writeBuildJson } from './build-json.ts';
import { buildOf, castingOf, inListOrder, patternsOf, plansNaming, poursOf } from './look-up.ts';
import { usesOfPlan, withoutGone } from './plan-uses.ts';
import type { BuildRecord } from './records.ts';
import { validateBuild } from './validate-build.ts';

const records = sampleFoundry();
const at = (name: string) => ({ station: `station:arm-${name}`, beyond: '' });

/** Problems of the sample with one record changed, as `code field`. */
function problemsOf(id: string, change: object): readonly string[] {
  const changed = records.map((record) => (record.id === id ? { ...record, ...change } : record));
  const validated = validateBuild(changed);
  return validated.ok ? [] : validated.problems.map(({ code, field }) => `${code} ${field}`);
}

const lug = fullCasting.lugs[0]!;
const [riser] = firstPour.risers;
const [arbor] = firstPour.inserts;

describe('a casting names only what is there, of its own part, along the right axis', () => {
  test.each<[string, object, readonly string[]]>([
    ['nothing changed', {}, []],
    [
      'stock on a station of the other part',
      { stock: [{ station: 'station:cap-left', written: '3' }] },
      ['of-other-part stock/0/station'],
    ],
    [
      'stock on one face twice',
      { stock: [...fullCasting.stock, fullCasting.stock[0]] },
      ['named-twice stock/2/station'],
    ],
    [
      'stock on a size that is not there',
      { sizeStock: [{ size: 'dimension:none', written: '' }] },
      ['dimension-missing sizeStock/0/size'],
    ],
    ['a parting across the way up', { parting: at('left') }, ['station-of-other-axis parting/station']],
    ['a parting along any axis while nothing says what is up', { up: undefined, parting: at('left') }, []],
    ['a print on no body', { prints: [{ body: 'body:none', ends: ['', ''] }] }, ['body-missing prints/0/body']],
    [
      'prints on one body twice',
      { prints: [fullCasting.prints[0], fullCasting.prints[0]] },
      ['named-twice prints/1/body'],
    ],
    [
      'a lug that stands across its axis',
      { lugs: [{ ...lug, ends: [at('left'), at('mid')] }] },
      ['station-of-other-axis lugs/0/ends/1/station'],
    ],
    [
      'a lug whose breadths are the wrong way round',
      { lugs: [{ ...lug, across: [lug.across[1], lug.across[0]] }] },
      [0, 1].flatMap((k) => [0, 1].map((i) => `station-of-other-axis lugs/0/across/${k}/${i}/station`)),
    ],
    ['a bow that is not there', { bow: 'machine:none' }, ['machine-missing bow']],
    ['four contractions', { contraction: ['', '', '', ''] }, ['field contraction']],
    ['a grade that is none', { stockGrade: 'I' }, ['field stockGrade']],
  ])('%s', (_, change, problems) => {
    expect(problemsOf(fullCasting.id, change)).toEqual(problems);
  });

  test('and there is one of each part', () => {
    const { id } = fullCasting;
    expect(problemsOf('casting:cap', { part: 'part:arm' })).toEqual(['two-castings part']);
    expect(problemsOf(id, { part: 'part:none' })).toContain('part-missing part');
    expect(problemsOf(id, { part: 'part:cap' })).toContain('of-other-part parting/station');
  });
});

describe('a pour names only what is there', () => {
  test.each<[string, object, readonly string[]]>([
    ['nothing changed', {}, []],
    ['nothing said at all', { castings: [], risers: [], inserts: [], journal: undefined }, []],
    [
      'no such part',
      { castings: [...firstPour.castings, { part: 'part:none', count: 1 }] },
      ['part-missing castings/2/part'],
    ],
    [
      'the pattern of another part',
      { castings: [firstPour.castings[0], { part: 'part:cap', count: 1, pattern: 'pattern:arm2' }] },
      ['of-other-part castings/1/pattern'],
    ],
    ['one part in two ways', { castings: [...firstPour.castings, { part: 'part:arm', count: 1, up: '+X' }] }, []],
    ['a crucible that is not there', { crucible: 'machine:none' }, ['machine-missing crucible']],
    [
      'a riser on a part that is not poured',
      { castings: [firstPour.castings[1]] },
      ['not-poured risers/0/on', 'not-poured inserts/0/around'],
    ],
    ['a riser on no body', { risers: [{ ...riser, on: 'body:none' }] }, ['body-missing risers/0/on']],
    ['an insert that is no part', { inserts: [{ ...arbor, part: 'part:none' }] }, ['part-missing inserts/0/part']],
    ['after itself', { after: firstPour.id }, ['after-itself after']],
    ['after one that comes after it', { after: secondPour.id }, ['after-itself after', 'after-itself after']],
    ['after none that is there', { after: 'pour:none' }, ['pour-missing after']],
    ['a moment that is none', { journal: { ...firstPour.journal, pouredAt: 'Sunday' } }, ['field journal/pouredAt']],
    ['half a casting', { castings: [{ part: 'part:arm', count: 0.5 }] }, ['field castings/0/count']],
  ])('%s', (_, change, problems) => {
    expect(problemsOf(firstPour.id, change)).toEqual(problems);
  });
});

test('a pattern of no part', () => {
  expect(problemsOf('pattern:arm1', { part: 'part:none' })).toContain('part-missing part');
  expect(problemsOf('pattern:arm2', { weighings: [{ at: '2026-05-01', mass: '1 kg', where: '' }] })).toEqual([
    'field weighings/0/at',
  ]);
});

test('what goes out of a casting and of a pour leaves them whole', () => {
  const gone = new Set(usesOfPlan(fullCasting).uses.flatMap(({ id, loose }) => (loose ? [id as string] : [])));
  const left = withoutGone(fullCasting, gone);
  // Foot is named twice: as a face with stock, and as the parting.
  expect(usesOfPlan(left).uses.every(({ id, loose }) => !loose || !gone.has(id))).toBe(true);
  expect(left).toMatchObject({ stock: [], sizeStock: [], prints: [], parting: fullCasting.parting });
  expect(left).not.toHaveProperty('bow');
  const all = new Set(usesOfPlan(firstPour).uses.map(({ id }) => id as string));
  const bare = withoutGone(firstPour, all);
  expect(usesOfPlan(bare).uses).toEqual([]);
  expect(bare).toMatchObject({
    castings: [],
    risers: [{ name: 'body:riser' }, { name: 'loose' }],
    gating: firstPour.gating,
  });
});

test('look-ups give them by part and in list order', () => {
  const build = buildOf(records);
  expect(castingOf(build, fullCasting.part)).toBe(fullCasting);
  expect(castingOf(build, 'part:none' as never)).toBeUndefined();
  expect(patternsOf(build, fullCasting.part).map(({ id }) => id)).toEqual(['pattern:arm1', 'pattern:arm2']);
  expect(poursOf(build)).toEqual([firstPour, secondPour].sort(inListOrder));
  const named = plansNaming(build, new Set(['machine:flask', 'part:arm']));
  expect(named.map(({ kind }) => kind).filter((kind, i, kinds) => kinds.indexOf(kind) === i)).toEqual([
    'setup',
    'operation',
    'casting',
    'pattern',
    'pour',
  ]);
});

describe('the JSON form', () => {
  test('holds them, and is the same text however the fields were put', () => {
    const text = writeBuildJson({ records, issues: [] });
    const read = parseBuildJson(text);
    expect(read.ok && new Map(read.value.records.map((record) => [record.id, record]))).toEqual(
      new Map(records.map((record) => [record.id, record])),
    );
    const turned = records.map((record) => {
      const fields = Object.fromEntries(Object.entries(record).reverse()) as unknown as BuildRecord;
      if (fields.kind !== 'alloy') return fields;
      return { ...fields, figures: Object.fromEntries(Object.entries(fields.figures).reverse()) };
    });
    expect(writeBuildJson({ records: turned, issues: [] })).toBe(text);
  });

  test('of version 4, without them, still opens', () => {
    const kinds = new Set(foundryRecords.map(({ kind }) => kind));
    const old = records.filter(({ kind }) => kind === 'machine' || !kinds.has(kind));
    const text = writeBuildJson({ records: old, issues: [] }).replace('"version": 5', '"version": 4');
    expect(text).toContain('"version": 4');
    expect(parseBuildJson(text)).toMatchObject({ ok: true });
  });
});
