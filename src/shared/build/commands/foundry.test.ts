import { describe, expect, test } from 'vitest';
import { firstPour, fullCasting, sampleFoundry } from '../../../../tests/support/sample-foundry.ts';
import { idSource, type PartId, type PatternId, type PourId } from '../../base/ids.ts';
import { apply, invert, isEmpty } from '../diff.ts';
import { alloysOf, buildOf, castingOf, partsOf, patternsOf, poursOf, recordOf } from '../look-up.ts';
import type { Build } from '../records.ts';
import { refusalWords } from '../refusals.ts';
import { validateBuild } from '../validate-build.ts';
import type { AlloyFields } from './alloy-add.ts';
import { type CommandId, type ParamsOf, runCommand } from './registry.ts';

let seed = 1;
const newId = idSource(() => {
  seed = (Math.imul(seed, 1103515245) + 12345) >>> 0;
  return seed;
});
const NOW = '2026-11-25T06:00:00.000Z';
const sample = buildOf(sampleFoundry());
const arm = 'part:arm' as PartId;
const cap = 'part:cap' as PartId;
const pattern = (id: string) => `pattern:${id}` as PatternId;
const one = 'pour:one' as PourId;
const two = 'pour:two' as PourId;

const run = <I extends CommandId>(build: Build, id: I, params: ParamsOf<I>) =>
  runCommand(build, id, params, { newId, now: NOW });

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
const alloy = (name: string, figures: AlloyFields['figures'] = {}): AlloyFields => ({
  name,
  family: 'aluminium',
  figures,
  source: '',
});

describe('alloys', () => {
  const own = alloysOf(sample)[0]!;

  test('one is added, changed and removed', () => {
    const added = edited(sample, 'alloy-add', {
      alloy: alloy(' LM25 ', { contractionUsual: 1.2, meltLoss: undefined }),
    });
    expect(added.label).toBe('add alloy LM25');
    const record = alloysOf(added.build).find(({ name }) => name === 'LM25')!;
    expect(record.figures).toStrictEqual({ contractionUsual: 1.2 });
    const set = edited(added.build, 'alloy-set', { alloy: record.id, set: { figures: { liquidusC: 615 } } });
    expect(set.label).toBe('change alloy LM25');
    expect(recordOf(set.build, 'alloy', record.id)?.figures).toEqual({ liquidusC: 615 });
    expect(edited(set.build, 'alloy-remove', { alloy: record.id }).build).toEqual(sample);
  });

  test('a new name goes into the pours and parts that name it', () => {
    const armed = edited(sample, 'part-set', { part: arm, set: { material: 'ALLOY:piston scrap' } });
    const { build, label } = edited(armed.build, 'alloy-set', { alloy: own.id, set: { name: 'pistons' } });
    expect(label).toBe('rename alloy alloy:piston scrap to pistons');
    expect(recordOf(build, 'pour', one)?.alloy).toBe('pistons');
    expect(recordOf(build, 'part', arm)?.material).toBe('pistons');
  });

  test('but not into a part whose material the table knows by that name', () => {
    const added = edited(sample, 'alloy-add', { alloy: alloy('Aluminium') });
    const record = alloysOf(added.build).find(({ name }) => name === 'Aluminium')!;
    const known = edited(added.build, 'material-add', { material: { name: 'aluminium', values: {}, source: '' } });
    const made = edited(known.build, 'part-set', { part: arm, set: { material: 'Aluminium' } });
    const { build } = edited(made.build, 'alloy-set', { alloy: record.id, set: { name: 'soft bars' } });
    expect(recordOf(build, 'part', arm)?.material).toBe('Aluminium');
  });

  test('a material’s new name goes into inserts and into pours that name no alloy by it', () => {
    const steel = edited(sample, 'material-add', { material: { name: 'Pattern:Steel', values: {}, source: '' } });
    const material = [...steel.build.values()].find(({ kind }) => kind === 'material')!;
    const { build } = edited(steel.build, 'material-set', {
      material: material.id as never,
      set: { name: 'arbor steel' },
    });
    const pour = recordOf(build, 'pour', one)!;
    expect(pour.inserts.map((insert) => insert.material)).toEqual(['arbor steel', '']);
    expect(pour.alloy).toBe(firstPour.alloy);
    const like = edited(sample, 'material-add', { material: { name: own.name, values: {}, source: '' } });
    const same = [...like.build.values()].find(({ kind }) => kind === 'material')!;
    const renamed = edited(like.build, 'material-set', { material: same.id as never, set: { name: 'scrap' } });
    expect(recordOf(renamed.build, 'pour', one)?.alloy).toBe(own.name);
  });

  test.each<[string, () => ReturnType<typeof refusal>, string, RegExp]>([
    ['no name', () => refusal(sample, 'alloy-add', { alloy: alloy(' ') }), 'name-empty', /alloy/],
    [
      'a name that is taken',
      () => refusal(sample, 'alloy-add', { alloy: alloy('Alloy:Piston Scrap') }),
      'alloy-name-taken',
      /"Alloy:Piston Scrap" of its own already/,
    ],
    [
      'a liquidus under the solidus of the table',
      () => refusal(sample, 'alloy-add', { alloy: alloy('LM25', { liquidusC: 500 }) }),
      'alloy-figures-cross',
      /^The solidus of "LM25" \(557\) is more than its liquidus \(500\)\.$/,
    ],
    [
      'a figure without reason',
      () => refusal(sample, 'alloy-set', { alloy: own.id, set: { figures: { solidDensityKgM3: -1 } } }),
      'field-refused',
      /figures "-1"/,
    ],
    [
      'none of that id',
      () => refusal(sample, 'alloy-set', { alloy: 'alloy:x' as never, set: {} }),
      'alloy-not-found',
      /./,
    ],
    ['none to remove', () => refusal(sample, 'alloy-remove', { alloy: 'alloy:x' as never }), 'alloy-not-found', /./],
  ])('refused: %s', (_, attempt, code, words) => {
    expect(attempt()).toMatchObject({ code, sentence: expect.stringMatching(words) });
  });
});

describe('castings', () => {
  test('the first word about a part makes its casting, and the next ones change it', () => {
    const bare = edited(sample, 'part-add', { set: { name: 'foot' } });
    const part = partsOf(bare.build).find(({ name }) => name === 'foot')!;
    expect(castingOf(bare.build, part.id)).toBeUndefined();
    const first = edited(bare.build, 'casting-set', { part: part.id, set: { moulding: 'core-made' } });
    expect(first.label).toBe('mould foot as core-made');
    const second = edited(first.build, 'casting-set', { part: part.id, set: { draft: '2 deg' } });
    expect(second.label).toBe('set draft of foot to 2 deg');
    expect(castingOf(second.build, part.id)).toMatchObject({
      id: castingOf(first.build, part.id)!.id,
      moulding: 'core-made',
      draft: '2 deg',
    });
  });

  test('what is undefined is taken out, and lugs and boards without a name get one', () => {
    const { build } = edited(sample, 'casting-set', {
      part: arm,
      set: {
        bow: undefined,
        parting: undefined,
        up: '+X',
        lugs: [fullCasting.lugs[0]!, { ...fullCasting.lugs[0]!, name: ' ' }],
        boards: [1, 2].map((count) => ({ name: '', thickness: '30', length: '600', width: '300', count })),
      },
    });
    const casting = castingOf(build, arm)!;
    expect(casting).not.toHaveProperty('bow');
    expect(casting).not.toHaveProperty('parting');
    expect(names(casting.lugs)).toEqual(['station:lug', 'lug']);
    expect(names(casting.boards)).toEqual(['board', 'board 2']);
  });

  test.each<[ParamsOf<'casting-set'>['set'], string]>([
    [{ moulding: 'foam in rammed sand' }, 'mould arm as foam in rammed sand'],
    [{ up: undefined }, 'leave open which way of arm is up'],
    [{ up: '+Z' }, 'cast arm with +Z up'],
    [{ sectionAxis: 'Y' }, 'cut arm into boards along Y'],
    [{ flask: undefined }, 'take no flask for arm'],
    [{ bow: 'machine:bow' as never }, 'take bow for arm'],
    [{ closeUnder: '' }, 'clear diameter under which holes are closed of arm'],
    [{ stock: [] }, 'change stock on faces of arm'],
    [{ note: 'x' }, 'change note of arm'],
    [{ note: 'x', draft: '' }, 'change casting of arm'],
  ])('%j is called %s', (set, label) => {
    expect(edited(sample, 'casting-set', { part: arm, set }).label).toBe(label);
  });

  test.each<[string, () => ReturnType<typeof refusal>, string, RegExp]>([
    [
      'no such part',
      () => refusal(sample, 'casting-set', { part: 'part:x' as PartId, set: {} }),
      'part-not-found',
      /./,
    ],
    [
      'another way up while the parting lies across it',
      () => refusal(sample, 'casting-set', { part: arm, set: { up: '+X' } }),
      'casting-does-not-hold',
      /"foot" lies along Z, and a station along X is wanted/,
    ],
    [
      'a print on the body of another part',
      () =>
        refusal(sample, 'casting-set', {
          part: arm,
          set: { prints: [{ body: 'body:cap-boss' as never, ends: ['', ''] }] },
        }),
      'casting-does-not-hold',
      /"boss" is a body of another part/,
    ],
    [
      'stock on one face twice',
      () =>
        refusal(sample, 'casting-set', {
          part: arm,
          set: { stock: ['1', '2'].map((written) => ({ station: 'station:arm-left' as never, written })) },
        }),
      'casting-does-not-hold',
      /stock is given twice on "left"/,
    ],
    [
      'a grade that is none',
      () => refusal(sample, 'casting-set', { part: arm, set: { stockGrade: 'Z' as never } }),
      'field-refused',
      /stockGrade "Z"/,
    ],
  ])('refused: %s', (_, attempt, code, words) => {
    expect(attempt()).toMatchObject({ code, sentence: expect.stringMatching(words) });
  });
});

describe('patterns', () => {
  test('one is added with a name of its own, moved and removed from the pours that used it', () => {
    const added = edited(sample, 'pattern-add', { part: arm, before: pattern('arm1') });
    expect(names(patternsOf(added.build, arm))).toEqual(['pattern', 'pattern:first', 'second']);
    expect(added.label).toBe('add pattern pattern of arm');
    const moved = edited(added.build, 'pattern-move', { pattern: pattern('arm1'), before: undefined });
    expect(names(patternsOf(moved.build, arm))).toEqual(['pattern', 'second', 'pattern:first']);
    const gone = edited(moved.build, 'pattern-remove', { patterns: [pattern('arm1'), pattern('arm2')] });
    expect(gone.label).toBe('remove 2 patterns from 2 pours');
    expect(poursOf(gone.build).flatMap(({ castings }) => castings.map((casting) => 'pattern' in casting))).toEqual([
      false,
      false,
      false,
    ]);
  });

  test('members of the rule change one by one, weighings come in order of time', () => {
    const { build } = edited(sample, 'pattern-set', {
      pattern: pattern('arm1'),
      set: {
        rule: { hours: '4' },
        trials: [{ what: ' ', fits: false, at: NOW, note: '' }],
        weighings: ['2026-05-03T00:00:00Z', '2026-05-01T12:00:00.000Z', '2026-05-01T06:00:00Z'].map((moment) => ({
          at: moment,
          mass: '1 kg',
          where: '',
        })),
      },
    });
    const record = recordOf(build, 'pattern', pattern('arm1'))!;
    expect(record.rule).toEqual({ percent: '0.2', hours: '4' });
    expect(record.weighings.map((weighing) => weighing.at.slice(8, 13))).toEqual(['01T06', '01T12', '03T00']);
    expect(record.trials[0]?.what).toBe('trial');
  });

  test.each<[ParamsOf<'pattern-set'>['set'], string]>([
    [{ name: 'no. 1' }, 'rename pattern second of arm to no. 1'],
    [{ measured: [{ of: 'box:X', value: '90' }] }, 'note what was measured on pattern second of arm'],
    [{ cast: [{ of: 'box:X', value: '89' }] }, 'note what was measured on the casting of pattern second of arm'],
    [{ plaster: true }, 'coat pattern second of arm with plaster'],
    [{ takenOn: 'dry weather' }, 'take pattern second of arm upon oneself'],
    [{ bare: '0.2 kg' }, 'set mass before coating of pattern second of arm to 0.2 kg'],
    [{ rule: { hours: '2' } }, 'change rule of drying of pattern second of arm'],
    [{ bare: '1', note: '2' }, 'change pattern second of arm'],
  ])('%j is called %s', (set, label) => {
    expect(edited(sample, 'pattern-set', { pattern: pattern('arm2'), set }).label).toBe(label);
  });

  test('a weighing is noted at its moment, or now, and struck out again', () => {
    const now = edited(sample, 'weighing-add', { pattern: pattern('arm1'), mass: ' 0.401 kg ', where: 'oven' });
    expect(now.label).toBe('weigh pattern pattern:first of arm: 0.401 kg');
    expect(recordOf(now.build, 'pattern', pattern('arm1'))?.weighings.at(-1)).toEqual({
      at: NOW,
      mass: '0.401 kg',
      where: 'oven',
    });
    const between = edited(now.build, 'weighing-add', {
      pattern: pattern('arm1'),
      mass: '450 g',
      at: '2026-05-02T00:00:00Z',
    });
    expect(recordOf(between.build, 'pattern', pattern('arm1'))?.weighings.map(({ mass }) => mass)).toEqual([
      '0.490 kg',
      '450 g',
      '0.402',
      '0.401 kg',
    ]);
    // The same moment, written otherwise.
    const struck = edited(between.build, 'weighing-remove', { pattern: pattern('arm1'), at: '2026-11-25T06:00:00Z' });
    expect(struck.label).toBe('strike weighing 0.401 kg of pattern pattern:first of arm');
    expect(recordOf(struck.build, 'pattern', pattern('arm1'))?.weighings).toHaveLength(3);
  });

  test.each<[string, () => ReturnType<typeof refusal>, string, RegExp]>([
    ['no such part', () => refusal(sample, 'pattern-add', { part: 'part:x' as PartId }), 'part-not-found', /./],
    [
      'no name',
      () => refusal(sample, 'pattern-set', { pattern: pattern('arm1'), set: { name: ' ' } }),
      'name-empty',
      /pattern/,
    ],
    [
      'none of that id',
      () => refusal(sample, 'pattern-set', { pattern: pattern('x'), set: {} }),
      'pattern-not-found',
      /./,
    ],
    ['nothing to remove', () => refusal(sample, 'pattern-remove', { patterns: [] }), 'nothing-given', /./],
    [
      'a place before one of another part',
      () => refusal(sample, 'pattern-move', { pattern: pattern('arm1'), before: pattern('x') }),
      'pattern-not-found',
      /./,
    ],
    [
      'a weighing of nothing',
      () => refusal(sample, 'weighing-add', { pattern: pattern('arm1'), mass: ' ' }),
      'weighing-empty',
      /./,
    ],
    [
      'a weighing of a moment that has one',
      () => refusal(sample, 'weighing-add', { pattern: pattern('arm1'), mass: '1', at: '2026-05-01T18:00:00.000Z' }),
      'weighing-there',
      /noted already: 0\.490 kg/,
    ],
    [
      'a weighing of no moment',
      () => refusal(sample, 'weighing-add', { pattern: pattern('arm1'), mass: '1', at: 'noon' }),
      'field-refused',
      /weighings "noon"/,
    ],
    [
      'no weighing to strike',
      () => refusal(sample, 'weighing-remove', { pattern: pattern('arm1'), at: 'noon' }),
      'weighing-not-found',
      /./,
    ],
  ])('refused: %s', (_, attempt, code, words) => {
    expect(attempt()).toMatchObject({ code, sentence: expect.stringMatching(words) });
  });
});

describe('pours', () => {
  test('one is added, its figures change one by one, and its list is put in order', () => {
    const added = edited(sample, 'pour-add', { set: { castings: [{ part: cap, count: 2 }] }, before: one });
    expect(names(poursOf(added.build))).toEqual(['pour', 'pour:one', 'second attempt']);
    const [pour] = poursOf(added.build);
    const set = edited(added.build, 'pour-set', { pour: pour!.id, set: { gating: { gates: 3 } } });
    expect(set.label).toBe('set number of gates of pour pour to 3');
    expect(poursOf(set.build)[0]?.gating).toEqual({ ...pour!.gating, gates: 3 });
    const moved = edited(set.build, 'pour-move', { pour: pour!.id, before: undefined });
    expect(names(poursOf(moved.build)).at(-1)).toBe('pour');
  });

  test.each<[ParamsOf<'pour-set'>['set'], string]>([
    [{ name: 'large parts' }, 'rename pour second attempt to large parts'],
    [{ furnace: 'machine:furnace' as never }, 'take furnace for pour second attempt'],
    [{ crucible: undefined }, 'take no crucible for pour second attempt'],
    [{ alloy: '' }, 'pour second attempt in what its first casting is of'],
    [{ temperature: '720' }, 'set pouring temperature of pour second attempt to 720'],
    [{ gating: { hollow: true } }, 'give pour second attempt a hollow sprue'],
    [{ gating: { sprueTop: '20', sprueFoot: '12' } }, 'change gating of pour second attempt'],
    [{ after: undefined }, 'let pour second attempt come after none'],
    [{ risers: [] }, 'change risers of pour second attempt'],
    [{ note: 'n' }, 'change note of pour second attempt'],
    [{ heel: '', loss: '' }, 'change pour second attempt'],
  ])('%j is called %s', (set, label) => {
    expect(edited(sample, 'pour-set', { pour: two, set }).label).toBe(label);
  });

  test('risers and inserts without a name get one', () => {
    const blank = { name: '', diameter: '', height: '' };
    const { build } = edited(sample, 'pour-set', { pour: one, set: { risers: [blank, blank] } });
    expect(names(recordOf(build, 'pour', one)!.risers)).toEqual(['riser', 'riser 2']);
  });

  test('the next attempt is as the last one was planned, with nothing in its journal and foam that was used up left out', () => {
    const { build, label } = edited(sample, 'pour-copy', { pour: two });
    expect(label).toBe('plan the next attempt of pour second attempt');
    const third = poursOf(build).at(-1)!;
    expect(third).toMatchObject({ name: 'second attempt 2', after: two, crucible: 'machine:crucible' });
    // The arm is moulded with a split pattern, which serves again.
    expect(third.castings).toEqual([{ part: arm, count: 1, pattern: 'pattern:arm2' }]);
    const foamed = edited(sample, 'casting-set', { part: arm, set: { moulding: 'foam in dry sand' } });
    const next = edited(foamed.build, 'pour-copy', { pour: one });
    const copy = poursOf(next.build)[1]!;
    expect(copy.castings).toEqual([
      { part: arm, count: 2, up: '-Z' },
      { part: cap, count: 1 },
    ]);
    expect(copy).not.toHaveProperty('journal');
    expect(copy.name).toBe('pour:one 2');
    expect(names(poursOf(edited(next.build, 'pour-copy', { pour: copy.id }).build))).toEqual([
      'pour:one',
      'pour:one 2',
      'pour:one 3',
      'second attempt',
    ]);
  });

  test('an attempt whose forerunner goes comes after the one before that', () => {
    const third = edited(sample, 'pour-copy', { pour: two, name: 'third' });
    const { id } = poursOf(third.build).at(-1)!;
    const gone = edited(third.build, 'pour-remove', { pours: [two] });
    expect(gone.label).toBe('remove pour second attempt');
    expect(recordOf(gone.build, 'pour', id)?.after).toBe(one);
    const bare = edited(third.build, 'pour-remove', { pours: [one, two] });
    expect(recordOf(bare.build, 'pour', id)).not.toHaveProperty('after');
  });

  test('the journal is begun, written on and struck out', () => {
    const begun = edited(sample, 'journal-set', { pour: two, set: { temperature: '718 °C', weather: 'dry' } });
    expect(begun.label).toBe('begin the journal of pour second attempt');
    expect(recordOf(begun.build, 'pour', two)?.journal).toMatchObject({
      pouredAt: NOW,
      temperature: '718 °C',
      result: 'not judged',
    });
    const judged = edited(begun.build, 'journal-set', { pour: two, set: { result: 'sound' } });
    expect(judged.label).toBe('judge pour second attempt sound');
    expect(recordOf(judged.build, 'pour', two)?.journal).toMatchObject({ temperature: '718 °C', result: 'sound' });
    const struck = edited(judged.build, 'journal-set', { pour: two, set: undefined });
    expect(struck.build).toEqual(sample);
  });

  test.each<[string, () => ReturnType<typeof refusal>, string, RegExp]>([
    ['no such pour', () => refusal(sample, 'pour-set', { pour: 'pour:x' as PourId, set: {} }), 'pour-not-found', /./],
    ['no name', () => refusal(sample, 'pour-set', { pour: one, set: { name: '' } }), 'name-empty', /pour/],
    ['none to copy', () => refusal(sample, 'pour-copy', { pour: 'pour:x' as PourId }), 'pour-not-found', /./],
    ['none to remove', () => refusal(sample, 'pour-remove', { pours: [] }), 'nothing-given', /./],
    [
      'a pattern of another part',
      () =>
        refusal(sample, 'pour-set', {
          pour: two,
          set: { castings: [{ part: cap, count: 1, pattern: pattern('arm1') }] },
        }),
      'pour-does-not-hold',
      /"pattern:first" is a pattern of another part/,
    ],
    [
      'a riser on a part that is not poured',
      () => refusal(sample, 'pour-set', { pour: one, set: { castings: [{ part: cap, count: 1 }] } }),
      'pour-does-not-hold',
      /"boss" is a body of a part that is not poured here/,
    ],
    [
      'attempts in a ring',
      () => refusal(sample, 'pour-set', { pour: one, set: { after: two } }),
      'pour-does-not-hold',
      /"pour:one" would come after itself/,
    ],
    [
      'no castings of a part',
      () => refusal(sample, 'pour-set', { pour: one, set: { castings: [{ part: arm, count: 0 }] } }),
      'field-refused',
      /castings "0"/,
    ],
    [
      'a journal of no moment',
      () => refusal(sample, 'journal-set', { pour: two, set: { pouredAt: 'Sunday' } }),
      'field-refused',
      /journal "Sunday"/,
    ],
    [
      'a journal to strike out before it is begun',
      () => refusal(sample, 'journal-set', { pour: two, set: undefined }),
      'pour-without-journal',
      /"second attempt"/,
    ],
  ])('refused: %s', (_, attempt, code, words) => {
    expect(attempt()).toMatchObject({ code, sentence: expect.stringMatching(words) });
  });
});

describe('what the drawing and the shop take away', () => {
  test('a part goes with its casting and patterns, and no pour pours it any more', () => {
    const { build } = edited(sample, 'part-remove', { parts: [arm] });
    expect(castingOf(build, arm)).toBeUndefined();
    expect(patternsOf(build, arm)).toEqual([]);
    expect(recordOf(build, 'pour', one)).toMatchObject({
      castings: [{ part: cap }],
      risers: [{ name: 'body:riser' }, {}],
    });
    expect(recordOf(build, 'pour', two)?.castings).toEqual([]);
  });

  test('a part that was cast in goes out of the insert, and its mass is asked for', () => {
    const { build } = edited(sample, 'part-remove', { parts: [cap] });
    expect(recordOf(build, 'pour', one)?.inserts[0]).not.toHaveProperty('part');
  });

  test('machines go from castings and pours, and the label counts them', () => {
    const { build, label } = edited(sample, 'machine-remove', { machines: ['machine:flask' as never] });
    expect(label).toBe('remove machine flask from 1 casting and 1 pour');
    expect(castingOf(build, arm)).not.toHaveProperty('flask');
    expect(recordOf(build, 'pour', one)).not.toHaveProperty('flask');
  });

  test('a body goes from prints, risers and inserts', () => {
    const { build } = edited(sample, 'body-remove', { bodies: ['body:arm-boss' as never] });
    expect(castingOf(build, arm)?.prints).toEqual([]);
    expect(recordOf(build, 'pour', one)?.risers[0]).not.toHaveProperty('on');
    expect(recordOf(build, 'pour', one)?.inserts[0]).not.toHaveProperty('around');
  });

  /** Nothing but the casting of the arm hangs on its stations and sizes. */
  const alone = () => {
    const ids = [...sample.values()].flatMap((record) => (record.kind === 'setup' ? [record.id] : []));
    const free = edited(sample, 'setup-remove', { setups: ids });
    const operations = [...free.build.values()].flatMap((record) => (record.kind === 'operation' ? [record.id] : []));
    const idle = edited(free.build, 'operation-remove', { operations });
    return edited(idle.build, 'body-remove', { bodies: ['body:arm-boss' as never] }).build;
  };

  test('a size goes with the stock on it, a face with its own', () => {
    const sized = edited(alone(), 'dimension-remove', { dimensions: ['dimension:arm-bore' as never] });
    expect(castingOf(sized.build, arm)?.sizeStock).toEqual([]);
    const bare = edited(alone(), 'casting-set', { part: arm, set: { lugs: [], parting: undefined } });
    const faced = edited(bare.build, 'station-remove', { stations: ['station:arm-foot' as never] });
    expect(castingOf(faced.build, arm)?.stock).toEqual([{ station: 'station:arm-left', written: '3' }]);
  });

  test('a station under the parting or a lug stays, and keeps its axis', () => {
    const build = alone();
    const needed = { code: 'needed-by-plans', sentence: 'Casting of "arm" needs the station "foot".' };
    expect(refusal(build, 'station-remove', { stations: ['station:arm-foot' as never] })).toMatchObject(needed);
    expect(refusal(build, 'station-remove', { stations: ['station:arm-axis' as never] })).toMatchObject({
      code: 'needed-by-plans',
    });
    const lone = edited(build, 'dimension-remove', { dimensions: ['dimension:arm-axis-foot' as never] });
    const turned = { changes: [{ station: 'station:arm-foot' as never, set: { axis: 'Y' as const } }] };
    expect(refusal(lone.build, 'station-set', turned)).toMatchObject(needed);
  });

  test('with another unit of the build, lengths keep what they are', () => {
    const { build } = edited(sample, 'settings-set', { set: { lengthUnit: 'in' }, keepSizes: true });
    expect(castingOf(build, arm)).toMatchObject({ copeExtra: '1 mm', contraction: fullCasting.contraction });
    expect(recordOf(build, 'pour', one)).toMatchObject({ coverAbove: '80 mm', temperature: '740', heel: '0.1 kg' });
  });

  test('an edit that changes nothing is empty', () => {
    const same = run(sample, 'casting-set', { part: arm, set: { draft: fullCasting.draft } });
    expect(same.ok && isEmpty(same.value.diff)).toBe(true);
  });
});

test('everything of one part is taken up by one removal and one undo', () => {
  const gone = run(sample, 'part-remove', { parts: [arm, cap] });
  if (!gone.ok) throw new Error(gone.error.code);
  const kinds = new Set(gone.value.diff.removed.map(({ kind }) => kind));
  expect([...kinds].sort()).toEqual(
    ['body', 'casting', 'dimension', 'operation', 'part', 'pattern', 'setup', 'station'].sort(),
  );
});
