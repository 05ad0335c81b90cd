import { describe, expect, test } from 'vitest';
import { countingContext } from '../../../../tests/support/random-edits.ts';
import { everyShape, sketchBodies, tetrahedron } from '../../../../tests/support/sketch-bodies.ts';
import { parseBuildJson, writeBuildJson } from '../build-json.ts';
import { apply, invert } from '../diff.ts';
import { bodiesOf, buildOf, dimensionsOf, recordOf, solidsOf, stationsOf } from '../look-up.ts';
import type { Build } from '../records.ts';
import { refusalWords } from '../refusals.ts';
import { validateBuild } from '../validate-build.ts';
import { type CommandId, type ParamsOf, runCommand } from './registry.ts';

/** A build under the hands of one person; every step is undone and redone on the way, and must leave a whole build. */
function sitting(start: Build = buildOf(sketchBodies().records())) {
  let build = start;
  const context = countingContext();
  const part = sketchBodies().part.id;
  const sit = {
    part,
    get build() {
      return build;
    },
    run<I extends CommandId>(id: I, params: ParamsOf<I>): string {
      const result = runCommand(build, id, params, context);
      if (!result.ok) throw new Error(refusalWords(result.error).sentence);
      const next = apply(build, result.value.diff);
      expect(new Map([...apply(next, invert(result.value.diff))].sort())).toEqual(new Map([...build].sort()));
      expect(validateBuild([...next.values()])).toMatchObject({ ok: true });
      build = next;
      return result.value.label;
    },
    refusal<I extends CommandId>(id: I, params: ParamsOf<I>): string {
      const result = runCommand(build, id, params, context);
      if (result.ok) return 'carried out';
      const { sentence, remedy } = refusalWords(result.error);
      expect(`${sentence} ${remedy}`).not.toMatch(/[{}]/);
      return `${result.error.code}: ${sentence}`;
    },
    stations: () => stationsOf(build, part).map(({ axis, name, datum }) => `${axis} ${name}${datum ? ' (datum)' : ''}`),
    dimensions: () =>
      dimensionsOf(build, part).map(({ name, value, measure }) => {
        if (measure.type === 'size') return `${name}: ${measure.form} ${value}`;
        const nameOf = (id: string) => recordOf(build, 'station', id)?.name;
        return `${name}: ${nameOf(measure.from)} → ${nameOf(measure.to)} ${value}`;
      }),
    body: (name: string) => bodiesOf(build, part).find((body) => body.name === name)!,
  };
  return sit;
}

const bare = () => {
  const sketch = sketchBodies();
  const [settings, part] = sketch.records();
  return sitting(buildOf([settings!, part!]));
};

describe('drawing a body in one step', () => {
  test('a block typed as three lengths on an empty part makes its stations, datums and dimensions', () => {
    const sit = bare();
    const shape = { type: 'block', x: { length: '60' }, y: { length: '40' }, z: { length: '1/2"' } } as const;
    expect(sit.run('body-sketch', { part: sit.part, name: 'plate', shape })).toBe('draw plate of body b');
    expect(sit.stations()).toEqual([
      'X plate left (datum)',
      'X plate right',
      'Y plate front (datum)',
      'Y plate back',
      'Z plate bottom (datum)',
      'Z plate top',
    ]);
    expect(sit.dimensions()).toEqual([
      'plate length: plate left → plate right 60',
      'plate width: plate front → plate back 40',
      'plate height: plate bottom → plate top 1/2"',
    ]);
    expect(sit.body('plate')).toMatchObject({ adds: true, finish: 'as cast', shape: { type: 'block' } });
  });

  test('a second body stands on stations of the first; names are free, finish and source are handed down', () => {
    const sit = bare();
    sit.run('body-sketch', {
      part: sit.part,
      name: 'plate',
      shape: { type: 'block', x: { length: '60' }, y: { length: '40' }, z: { length: '10' } },
    });
    const top = stationsOf(sit.build, sit.part, 'Z')[1]!.id;
    sit.run('body-sketch', {
      part: sit.part,
      name: 'boss',
      finish: 'machined',
      source: 'assumed',
      shape: {
        type: 'cylinder',
        axis: 'Z',
        ends: { length: '25', from: top },
        centre: [{ value: '30' }, { value: '20' }],
        diameter: { value: '24' },
        bore: { value: '12', new: 'main bore' },
      },
    });
    expect(sit.stations().slice(6)).toEqual(['Z boss top', 'X boss centre X', 'Y boss centre Y']);
    expect(sit.dimensions().slice(3)).toEqual([
      'boss height: plate top → boss top 25',
      'boss centre X: plate left → boss centre X 30',
      'boss centre Y: plate front → boss centre Y 20',
      'boss diameter: diameter 24',
      'main bore: diameter 12',
    ]);
    const made = dimensionsOf(sit.build, sit.part).slice(3);
    expect(new Set(made.map(({ source, finish }) => `${source} ${finish}`))).toEqual(new Set(['assumed machined']));
    expect(stationsOf(sit.build, sit.part).at(-1)!.form).toBe('centreline');
    sit.run('body-sketch', {
      part: sit.part,
      name: 'boss',
      shape: {
        type: 'cylinder',
        axis: 'Z',
        ends: { length: '25', from: top },
        centre: [{ value: '10' }, { value: '' }],
        diameter: { value: '8' },
      },
    });
    expect(sit.stations().slice(9)).toEqual(['Z boss top 2', 'X boss centre X 2', 'Y boss centre Y 2']);
    // The place left open is a station that nothing places yet.
    expect(
      sit
        .dimensions()
        .slice(8)
        .map((line) => line.split(':')[0]),
    ).toEqual(['boss height 2', 'boss centre X 2', 'boss diameter 2']);
  });

  test('a threaded, counterbored hole; 0 is the datum itself; a new name given twice is one record', () => {
    const sit = bare();
    sit.run('body-sketch', {
      part: sit.part,
      name: 'hole',
      shape: {
        type: 'hole',
        axis: 'Y',
        from: { value: '0' },
        to: { value: '-15' },
        centre: [{ value: '20', new: 'bolt line' }, { value: '0' }],
        diameter: { value: 'M8x1' },
        counterbore: { diameter: { value: '14' }, depth: { value: '4' } },
        point: { value: '118' },
      },
      repeats: [
        {
          type: 'circle',
          axis: 'Y',
          centre: [{ value: '', new: 'Bolt line' }, { value: '0' }],
          count: { value: '6' },
          circle: { value: '90' },
        },
        { type: 'mirror', axis: 'X', about: { value: '0' } },
      ],
    });
    expect(sit.stations()).toEqual([
      'Y hole mouth (datum)',
      'Y hole floor',
      'X X datum (datum)',
      'X bolt line',
      'Z hole centre Z (datum)',
    ]);
    expect(sit.dimensions()).toEqual([
      'hole floor: hole mouth → hole floor -15',
      'bolt line: X datum → bolt line 20',
      'hole diameter: thread M8x1',
      'hole counterbore diameter: diameter 14',
      'hole counterbore depth: length 4',
      'hole point angle: angle 118',
      'hole count: count 6',
      'hole bolt circle: diameter 90',
    ]);
    expect(sit.body('hole')).toMatchObject({ adds: false, finish: 'machined' });
    const { shape, repeats } = sit.body('hole');
    expect(shape.type === 'hole' && shape.centre[0]).toBe(repeats[0]?.type === 'circle' && repeats[0].centre[0]);
  });

  test('a corner named twice is one station, and each is measured from what it says', () => {
    const sit = bare();
    const left = { new: 'left', value: '0' } as const;
    const right = { new: 'right', value: '50', from: left } as const;
    const bottom = { value: '0' } as const;
    sit.run('body-sketch', {
      part: sit.part,
      name: 'web',
      shape: {
        type: 'rib',
        axis: 'Z',
        at: { value: '5' },
        thickness: { value: '6' },
        corners: [
          [left, bottom],
          [right, bottom],
          [
            { new: 'left', value: '' },
            { value: '30', from: bottom },
          ],
        ],
      },
    });
    expect(sit.stations()).toEqual([
      'Z Z datum (datum)',
      'Z web middle',
      'X left (datum)',
      'Y web corner 1 Y (datum)',
      'X right',
      'Y web corner 3 Y',
    ]);
    expect(sit.dimensions()).toContain('right: left → right 50');
    expect(sit.dimensions()).toContain('web corner 3 Y: web corner 1 Y → web corner 3 Y 30');
  });

  test('what cannot be kept is refused whole', () => {
    const sit = sitting();
    const s = sketchBodies();
    const bore = s.size('diameter', 20);
    const across = [s.at('X', 5), s.at('Y', 5)] as [ReturnType<typeof s.at>, ReturnType<typeof s.at>];
    const full = sitting(buildOf(s.records()));
    const cylinder = { type: 'cylinder', axis: 'Z', ends: { length: '5' }, centre: across, diameter: bore } as const;
    const at = { part: full.part, name: 'b', shape: cylinder };
    expect(full.refusal('body-sketch', { ...at, part: 'part:none' as never })).toMatch(/^part-not-found/);
    expect(full.refusal('body-sketch', { ...at, shape: { ...cylinder, axis: 'X' } })).toMatch(
      /^body-does-not-hold: .*"X5" lies along X, and a station along Y is wanted/,
    );
    const count = { ...cylinder, diameter: s.at('X', 5) as never };
    expect(full.refusal('body-sketch', { ...at, shape: count })).toMatch(/^field-refused|^body-does-not-hold/);
    expect(full.refusal('body-sketch', { ...at, name: 'n'.repeat(119) })).toMatch(/^field-refused: The name/);
    expect(full.refusal('body-sketch', { ...at, note: 'x'.repeat(20_001) })).toMatch(/^field-refused: The note/);
    expect(sit.refusal('body-sketch', { ...at, shape: { ...cylinder, diameter: bore } })).toMatch(/there is no/);
  });
});

describe('adding, changing, moving, removing', () => {
  const whole = () => sitting(buildOf(everyShape()));

  test('a body is added where it is wanted', () => {
    const sit = whole();
    const [first, second] = bodiesOf(sit.build, sit.part);
    expect(sit.run('body-add', { part: sit.part, shape: first!.shape, before: second!.id })).toBe(
      'add block to body b',
    );
    expect(bodiesOf(sit.build, sit.part)[1]!.name).toBe('block');
    sit.run('body-move', { body: bodiesOf(sit.build, sit.part)[1]!.id, before: undefined });
    expect(bodiesOf(sit.build, sit.part).at(-1)!.name).toBe('block');
    expect(sit.refusal('body-move', { body: first!.id, before: 'body:none' as never })).toMatch(/^body-not-found/);
  });

  test('a hole cannot add', () => {
    const sit = whole();
    const hole = sit.body('hole 7');
    expect(sit.refusal('body-set', { changes: [{ body: hole.id, set: { adds: true } }] })).toMatch(
      /^body-does-not-hold: .*a hole always takes away/,
    );
  });

  test('fields change with labels that say what was done', () => {
    const sit = whole();
    const body = sit.body('block 1').id;
    const set = (set: ParamsOf<'body-set'>['changes'][number]['set']) =>
      sit.run('body-set', { changes: [{ body, set }] });
    expect(set({ name: ' bed ' })).toBe('rename block 1 of body b to bed');
    expect(set({ finish: 'machined' })).toBe('make bed of body b machined');
    expect(set({ adds: false })).toBe('let bed of body b take away');
    expect(set({ note: 'n', adds: true })).toBe('change bed of body b');
    const { shape } = sit.body('bed');
    expect(
      shape.type === 'block' && set({ shape: { ...shape, z: [shape.z[0], { value: '33', from: shape.z[0] }] } }),
    ).toBe('change shape of bed of body b');
    expect(sit.dimensions().at(-1)).toBe('bed top: Z0 → bed top 33');
    expect(sit.refusal('body-set', { changes: [{ body, set: { name: ' ' } }] })).toMatch(/^name-empty/);
    expect(sit.refusal('body-set', { changes: [] })).toMatch(/^nothing-given/);
  });

  test('what bodies hang on cannot go, be turned to another axis, or become another kind of size', () => {
    const sit = whole();
    const station = stationsOf(sit.build, sit.part, 'X').find(({ name }) => name === 'X30')!.id;
    expect(sit.refusal('station-remove', { stations: [station] })).toMatch(
      /^needed-by-bodies: "cylinder 2", "cylinder 3", "cone 4" and 2 more hang on the station "X30"\./,
    );
    const named = (name: string) => dimensionsOf(sit.build, sit.part).find((dimension) => dimension.name === name)!;
    expect(sit.refusal('dimension-remove', { dimensions: [named('count 3').id] })).toBe(
      'needed-by-bodies: "hole 7" hangs on the dimension "count 3".',
    );
    const asLength = { measure: { type: 'size', form: 'length' } } as const;
    expect(sit.refusal('dimension-set', { changes: [{ dimension: named('thread M8').id, set: asLength }] })).toMatch(
      /^measure-needed-by-body: .*"hole 7" takes "thread M8".*a diameter, a radius or a thread is wanted/,
    );
    expect(
      sit.refusal('cells-set', {
        part: sit.part,
        rows: [{ dimension: named('thread M8').id, cells: { from: 'count', to: '' } }],
      }),
    ).toMatch(/^measure-needed-by-body/);
    const asRadius = { measure: { type: 'size', form: 'radius' } } as const;
    sit.run('dimension-set', { changes: [{ dimension: named('diameter 15').id, set: asRadius }] });
  });

  test('a body gone sets its stations free; a part takes its bodies and meshes along', () => {
    const sit = whole();
    const used = new Set(['cylinder 2', 'cylinder 3', 'cone 4', 'revolved 6', 'hole 7']);
    const bodies = bodiesOf(sit.build, sit.part).filter(({ name }) => used.has(name));
    expect(sit.run('body-remove', { bodies: bodies.map(({ id }) => id) })).toBe('remove 5 bodies');
    const station = stationsOf(sit.build, sit.part, 'X').find(({ name }) => name === 'X30')!.id;
    sit.run('station-remove', { stations: [station] });
    expect(solidsOf(sit.build)).toHaveLength(1);
    sit.run('part-remove', { parts: [sit.part] });
    expect([...sit.build.values()].map(({ kind }) => kind)).toEqual(['settings']);
  });

  test('a mesh goes with the last body that places it', () => {
    const sit = whole();
    const body = sit.body('imported 12');
    sit.run('body-add', { part: sit.part, shape: body.shape });
    sit.run('body-remove', { bodies: [body.id] });
    expect(solidsOf(sit.build)).toHaveLength(1);
    const other = sit.body('imported').id;
    const block = sit.body('block 1').shape;
    sit.run('body-set', { changes: [{ body: other, set: { shape: block } }] });
    expect(solidsOf(sit.build)).toHaveLength(0);
  });
});

describe('bringing in a solid', () => {
  const { kind: _, id: __, ...solid } = tetrahedron();
  const origin = [{ value: '0' }, { value: '12' }, { value: '0' }] as const;

  test('makes mesh, body and the stations of its origin', () => {
    const sit = bare();
    const label = sit.run('solid-import', { part: sit.part, solid, origin, turn: ['+Y', '+Z', '+X'] });
    expect(label).toBe('bring tetrahedron.stl into body b');
    expect(sit.stations()).toEqual([
      'X tetrahedron origin X (datum)',
      'Y Y datum (datum)',
      'Y tetrahedron origin Y',
      'Z tetrahedron origin Z (datum)',
    ]);
    expect(sit.body('tetrahedron').shape).toMatchObject({ type: 'imported', solid: solidsOf(sit.build)[0]!.id });
  });

  test.each([
    ['mirrored axes', { turn: ['-X', '+Y', '+Z'] }, /it would mirror or flatten/],
    ['an axis twice', { turn: ['+X', '+X', '+Z'] }, /it would mirror or flatten/],
    ['half a vertex', { solid: { ...solid, vertices: 'AAAA' } }, /no whole number of vertices/],
    [
      'a corner that is not there',
      { solid: { ...solid, vertices: solid.vertices.slice(0, 64) } },
      /triangle 0 names vertex 2, and there are 2/,
    ],
    ['text that is no base64', { solid: { ...solid, triangles: '????' } }, /^field-refused: The triangles/],
  ] as const)('%s is refused', (_name, change, words) => {
    const sit = bare();
    const params = { part: sit.part, solid, origin, turn: ['+X', '+Y', '+Z'], ...change } as ParamsOf<'solid-import'>;
    expect(sit.refusal('solid-import', params)).toMatch(words);
  });
});

test('the JSON form keeps every shape, with its fields in one order whatever theirs was', () => {
  const records = everyShape();
  const text = writeBuildJson({ records, issues: [] });
  const read = parseBuildJson(text);
  const byId = (list: readonly { readonly id: string }[]) => [...list].sort((a, b) => (a.id < b.id ? -1 : 1));
  expect(read.ok && byId(read.value.records)).toEqual(byId(records));
  const reverse = (value: unknown): unknown => {
    if (Array.isArray(value)) return value.map(reverse);
    if (typeof value !== 'object' || value === null) return value;
    return Object.fromEntries(
      Object.entries(value)
        .reverse()
        .map(([key, one]) => [key, reverse(one)]),
    );
  };
  const mixed = records.map((record) => reverse(record) as typeof record);
  expect(writeBuildJson({ records: mixed, issues: [] })).toBe(text);
});
