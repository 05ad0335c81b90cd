import { beforeAll, describe, expect, test } from 'vitest';
import { castingOf, makes, patternPart } from '../../../tests/support/pattern-part.ts';
import { sketchBodies } from '../../../tests/support/sketch-bodies.ts';
import type { Casting } from '../build/casting.ts';
import { dimensionsOf } from '../build/look-up.ts';
import { defaultMachine, type Machine } from '../build/machine.ts';
import type { Operation } from '../build/operation.ts';
import { defaultPattern, type Pattern } from '../build/pattern.ts';
import type { Kernel } from '../solid/manifold/kernel.ts';
import { loadKernel } from '../solid/manifold/load-kernel.ts';
import { alloyNamed } from '../tables/alloys.ts';
import { createPatternShop } from './create-pattern-shop.ts';
import { makePattern } from './make-pattern.ts';
import { checkPattern, type PatternInput, planPattern } from './pattern-check.ts';

let kernel: Kernel;
beforeAll(async () => {
  kernel = await loadKernel();
});

type Sketch = ReturnType<typeof sketchBodies>;

const bow: Machine = {
  ...defaultMachine('machine:bow' as Machine['id'], 'bow', 'hot-wire bow', 1),
  figures: { wireLength: '120', throat: '40', kerf: '1.2' },
};
const flask: Machine = {
  ...defaultMachine('machine:flask' as Machine['id'], 'flask', 'flask', 2),
  figures: { insideLength: '200', insideWidth: '250', dragHeight: '240' },
};

/** A foot of 100 × 60 × 20 with a stem of ⌀40 on it, up to 90, cored ⌀20. */
function stand(s: Sketch) {
  const centre = (): [never, never] => [s.at('X', 50) as never, s.at('Y', 30) as never];
  s.body({
    type: 'block',
    x: [s.at('X', 0), s.at('X', 100)],
    y: [s.at('Y', 0), s.at('Y', 60)],
    z: [s.at('Z', 0), s.at('Z', 20)],
  });
  s.body({
    type: 'cylinder',
    axis: 'Z',
    ends: [s.at('Z', 20), s.at('Z', 90)],
    centre: centre(),
    diameter: s.size('diameter', 40),
  });
  s.body(
    {
      type: 'cylinder',
      axis: 'Z',
      ends: [s.at('Z', 0), s.at('Z', 90)],
      centre: centre(),
      diameter: s.size('diameter', 20),
    },
    { adds: false, finish: 'cored' },
  );
}

function inputOf(
  over: Partial<Casting> = {},
  more: Partial<PatternInput> = {},
  operations: (s: Sketch) => readonly Operation[] = () => [],
): PatternInput {
  const s = sketchBodies();
  stand(s);
  const made = operations(s);
  const part = patternPart(s.records(), s.part.id);
  return {
    casting: castingOf(s.part.id, {
      up: '+Z',
      sectionAxis: 'Z',
      boards: [{ name: 'board', thickness: '50', length: '600', width: '300', count: 4 }],
      glueJoint: '0',
      ...over,
    }),
    part: s.part.id,
    material: 'A356',
    alloy: alloyNamed('A356'),
    bodies: part.bodies,
    dimensions: dimensionsOf(part.build, s.part.id),
    operations: made,
    numbers: part.numbers,
    lengthUnit: 'mm',
    castingGrade: 11,
    machines: [bow, flask],
    patterns: [],
    measuredHere: [],
    measuredBefore: [],
    margins: [],
    ...more,
  };
}

function checked(...given: Parameters<typeof inputOf>) {
  const plan = planPattern(inputOf(...given));
  return checkPattern(plan, makePattern(kernel, plan.order));
}

const metal = 100 * 60 * 20 + Math.PI * 400 * 70 - Math.PI * 100 * 90;
const pattern = metal * 1.013 ** 3;

describe('a pattern of foam', () => {
  test('its volume and mass, its sections, what it asks for', () => {
    const check = checked({ foamDensity: '20 kg/m³', coating: '0.6' });
    expect(check.made!.casting!.volumeMm3).toBeCloseTo(metal, 2);
    expect(check.made!.pattern!.volumeMm3).toBeCloseTo(pattern, 2);
    expect(check.foamKg).toBeCloseTo(pattern * 20e-9, 9);
    expect(check.made!.pattern!.max[2]).toBeCloseTo(90 * 1.013, 9);
    const area = 2 * 6000 + 320 * 20 + Math.PI * 40 * 70 + Math.PI * 20 * 90 - 2 * Math.PI * 100;
    expect(check.coatingMm3! / (0.6 * area * 1.013 ** 2)).toBeCloseTo(1, 3);
    expect(check.made!.sections.map(({ name, cut }) => [name, cut])).toEqual([
      ['1', 'straight'],
      ['2', 'straight'],
      ['3', 'straight'],
    ]);
    expect(check.gluing!.steps.map(({ add }) => add)).toEqual(['2', '3']);
    expect(check.nesting).toMatchObject({ short: [], tooLarge: [] });
    expect(check.wood).toEqual([]);
    expect(check.unknown).toEqual([]);
  });

  test('what has no source is marked as a starting value, what is written as such', () => {
    const check = checked({ glueJoint: '' });
    expect(check.kerf).toMatchObject({ value: 1, status: 'starting value' });
    expect(check.glueJoint).toMatchObject({ value: 0.2, status: 'starting value' });
    expect(checked({ bow: bow.id }).kerf).toMatchObject({ value: 1.2, status: 'written' });
    expect(check.foamKg).toBeUndefined();
  });

  test('everything that is not said is asked for, and what cannot be read is named', () => {
    const asked = checked({ boards: [], sectionAxis: undefined, up: undefined }, {}, (s) => [
      makes(s.part.id, 'mill', s.at('Z', 90)),
    ]);
    expect(asked.unknown).toEqual([
      { is: 'field', field: 'up' },
      { is: 'field', field: 'boards' },
    ]);
    const unread = checked({
      boards: [{ name: 'b', thickness: '50', length: 'long', width: '', count: 1 }],
      coating: 'thick',
      foamDensity: 'light',
      contraction: ['', 'x', ''],
    });
    expect(unread.unknown).toEqual([
      { is: 'written', field: 'contraction/1', text: 'x' },
      { is: 'written', field: 'coating', text: 'thick' },
      { is: 'written', field: 'boards/0/length', text: 'long' },
      { is: 'field', field: 'boards/0/width' },
      { is: 'written', field: 'foamDensity', text: 'light' },
    ]);
    expect(unread.made!.sections).toEqual([]);
  });

  test('without a contraction there is a casting and no pattern', () => {
    const check = checked({}, { alloy: undefined, material: 'moonmetal' });
    expect(check.made).toMatchObject({ pattern: undefined, sections: [] });
    expect(check.made!.casting!.volumeMm3).toBeCloseTo(metal, 2);
    expect(check.sheet).toEqual([]);
    expect(check.unknown).toEqual([{ is: 'alloy', name: 'moonmetal' }]);
  });
});

describe('the bow', () => {
  test('stands through the thickest section, reaches the middle, and the far side of the opening', () => {
    const { bowFit } = checked({ bow: bow.id });
    expect(bowFit!.unknown).toEqual([]);
    const most = new Map(bowFit!.most.map(({ kind, needsMm }) => [kind, needsMm]));
    // 50 mm of board and 20 mm beyond at both ends; half of 60 mm; 60/2 + 20/2 mm, and the kerf.
    expect(most.get('through')).toBeCloseTo(90, 9);
    expect(most.get('slice')).toBeCloseTo(60 * 1.013 + 40, 6);
    expect(most.get('round')).toBeCloseTo((60 * 1.013) / 2, 6);
    expect(most.get('opening')).toBeCloseTo(40 * 1.013 + 0.6, 1);
    expect(bowFit!.short.map(({ kind, section }) => [kind, section])).toEqual([['opening', '1']]);
  });
  test('whose figures are not known', () => {
    const bare = { ...bow, figures: {} };
    expect(checked({ bow: bow.id }, { machines: [bare] }).unknown).toEqual([
      { is: 'figure', machine: bow.id, key: 'wireLength' },
      { is: 'figure', machine: bow.id, key: 'throat' },
    ]);
  });
});

describe('the flask', () => {
  test('takes it the better way round, with the sand that is left', () => {
    const { flaskFit } = checked({ flask: flask.id, coating: '0.5' });
    // 250 mm wide and 200 long: the pattern's longer side lies across.
    expect(flaskFit).toMatchObject({ along: ['Y', 'X'], fits: true });
    expect(flaskFit!.coverMm.sides).toBeCloseTo((250 - 101.3 - 1) / 2, 6);
    expect(flaskFit!.coverMm.ends).toBeCloseTo((200 - 60.78 - 1) / 2, 6);
    expect(flaskFit!.coverMm.over).toBeCloseTo(240 - 91.17 - 1 - 50, 6);
  });
  test('too low', () => {
    const low = { ...flask, figures: { ...flask.figures, dragHeight: '200' } };
    const { flaskFit } = checked({ flask: flask.id, coating: '0' }, { machines: [low] });
    expect(flaskFit!.fits).toBe(false);
    expect(flaskFit!.shortMm.height).toBeCloseTo(75 - (200 - 91.17 - 50), 6);
  });
});

describe('the inspection sheet', () => {
  test('has lengths overall, bores and the largest lengths, with go and no-go', () => {
    const { sheet } = checked();
    expect(sheet.map(({ key, why }) => [key, why])).toEqual([
      ['box:X', ['overall']],
      ['box:Y', ['overall']],
      ['box:Z', ['overall']],
      ['dimension:b-Z20', ['large']],
      ['dimension:b-X50', ['large']],
      ['dimension:b-Y30', ['large']],
      ['dimension:b-diameter-20', ['bore']],
    ]);
    const [x] = sheet;
    // DCTG 11 at 100 mm: 4.4 mm in all.
    expect(x!.expectedMm).toBeCloseTo(101.3, 9);
    expect(x!.go[0]).toBeCloseTo(97.8 * 1.013, 9);
    expect(x!.go[1]).toBeCloseTo(102.2 * 1.013, 9);
  });

  const margin = {
    dimension: 'dimension:b-Z90' as never,
    verdict: 'over-bed',
    of: 'setup:turn',
    marginMm: 1.5,
    sensitivity: -1,
  };
  test('a margin narrows it: over so much it hits the bed', () => {
    const { sheet } = checked({}, { margins: [margin] });
    const line = sheet[0]!;
    expect(line).toMatchObject({ key: 'dimension:b-Z90', why: ['margin'], atMost: { margin } });
    expect(line.expectedMm).toBeCloseTo(90 * 1.013, 9);
    expect(line.atMost!.mm).toBeCloseTo(91.5 * 1.013, 9);
    expect(line.go[1]).toBe(line.atMost!.mm);
    const least = checked({}, { margins: [{ ...margin, sensitivity: 0.5, marginMm: 0.4 }] }).sheet[0]!;
    expect(least.go[0]).toBeCloseTo(89.2 * 1.013, 9);
  });

  const measured = (lines: Readonly<Record<string, string>>, over: Partial<Pattern> = {}): Pattern => ({
    ...defaultPattern('pattern:one' as Pattern['id'], 'part:b' as Pattern['part'], 'first', 1),
    measured: Object.entries(lines).map(([of, value]) => ({ of, value })),
    ...over,
  });
  const good = {
    'box:X': '101.3',
    'box:Y': '61 mm',
    'box:Z': '91',
    'dimension:b-Z20': '20.3',
    'dimension:b-X50': '50.6',
    'dimension:b-Y30': '30.4',
    'dimension:b-diameter-20': '20.2',
  };
  const judged = (pattern: Pattern) => checked({}, { patterns: [pattern] }).judgements[0]!;

  test('measured within, a pattern is good', () => {
    expect(judged(measured(good))).toMatchObject({ state: 'good', cutAgain: [], keep: ['1', '2', '3'] });
  });
  test('lines that are left keep it open, and one that cannot be read', () => {
    const { 'box:X': _, ...rest } = good;
    expect(judged(measured(rest))).toMatchObject({ state: 'open' });
    const { state, lines } = judged(measured({ ...good, 'box:X': 'long' }));
    expect(state).toBe('open');
    expect(lines[0]!.state).toBe('unreadable');
  });
  test('a foot too long is cut again, the stem kept', () => {
    const { state, lines, cutAgain, keep } = judged(measured({ ...good, 'box:X': '104.5' }));
    expect(state).toBe('outside');
    expect(lines[0]).toMatchObject({ state: 'over', sections: ['1'] });
    expect(lines[0]!.beyondMm).toBeCloseTo(104.5 - 102.2 * 1.013, 9);
    expect([cutAgain, keep]).toEqual([['1'], ['2', '3']]);
  });
  test('a step at the wrong height concerns the boards on both sides of it', () => {
    expect(judged(measured({ ...good, 'dimension:b-Z20': '24' })).cutAgain).toEqual(['1', '2']);
  });
  test('a bore too wide concerns all that it goes through', () => {
    expect(judged(measured({ ...good, 'dimension:b-diameter-20': '23' })).cutAgain).toEqual(['1', '2', '3']);
  });
  test('what was measured last counts; a trial that does not fit puts it outside', () => {
    const again = measured(good);
    expect(judged({ ...again, measured: [{ of: 'box:X', value: '110' }, ...again.measured] }).state).toBe('good');
    const trials = [{ what: 'over the saddle', fits: false, at: '2026-03-01T10:00:00Z', note: '' }];
    expect(judged(measured(good, { trials }))).toMatchObject({ state: 'outside', misfits: ['over the saddle'] });
  });
});

test('a wooden pattern is a list of blocks', () => {
  const { wood, nesting, pieces } = checked({
    moulding: 'split pattern in green sand',
    draft: '0',
    prints: [{ body: 'body:b3' as never, ends: ['20', '20'] }],
  });
  expect(nesting).toBeUndefined();
  expect(pieces.cores).toHaveLength(1);
  expect(wood.map(({ key, count }) => [key, count])).toEqual([
    ['body:b1', 1],
    ['body:b2', 1],
    ['body:b3/print low', 1],
    ['body:b3/print high', 1],
  ]);
  expect(wood[0]!.sizeMm[0]).toBeCloseTo(101.3, 9);
  expect(wood[2]!.sizeMm[2]).toBeCloseTo(20.26, 9);
});

describe('the shop', () => {
  test('keeps what did not change, and makes solids only of other bodies', () => {
    const shop = createPatternShop(() => kernel);
    const input = inputOf();
    const bare = shop.check(input);
    expect(bare.made).toBeUndefined();
    expect(shop.pending()).toEqual([input.part]);
    expect(shop.compute(input.part)).toBe(true);
    expect(shop.pending()).toEqual([]);
    const made = shop.check(input);
    expect(made.made!.pattern!.volumeMm3).toBeCloseTo(pattern, 2);
    expect(shop.check({ ...input })).toBe(made);
    const noted = shop.check({ ...input, casting: { ...input.casting, note: 'mind the stem' } });
    expect(noted).not.toBe(made);
    expect([noted.made, noted.dimensions, noted.sheet]).toEqual([made.made, made.dimensions, made.sheet]);
    expect(noted.made).toBe(made.made);
    expect(noted.sheet).toBe(made.sheet);
    const coarser = shop.check({ ...input, casting: { ...input.casting, contraction: ['2', '2', '2'] } });
    expect(coarser.made).toBeUndefined();
    expect(shop.compute(input.part)).toBe(true);
    expect(shop.meshOf(input.part)!.triangles.length).toBeGreaterThan(0);
    shop.forget(input.part);
    expect(shop.pending()).toEqual([]);
  });
  test('solids that are left half made give the kernel’s memory back', () => {
    const shop = createPatternShop(() => kernel);
    const input = inputOf();
    const before = kernel.live;
    shop.check(input);
    const half = shop.computing(input.part);
    half.next();
    half.next();
    expect(kernel.live).toBeGreaterThan(before);
    expect(shop.compute(input.part)).toBe(true);
    expect(kernel.live).toBe(before);
    expect(half.next()).toEqual({ done: true, value: false });
    const other = { ...input, casting: { ...input.casting, contraction: ['2', '2', '2'] as [string, string, string] } };
    shop.check(other);
    shop.computing(input.part).next();
    shop.forget(input.part);
    expect(kernel.live).toBe(before);
  });
  test('without a kernel it says all that needs no solid', () => {
    const shop = createPatternShop(() => undefined);
    const check = shop.check(inputOf());
    expect(check.dimensions.length).toBeGreaterThan(4);
    expect(shop.compute(check.casting.part)).toBe(false);
    expect(check.nesting).toBeUndefined();
  });
});
