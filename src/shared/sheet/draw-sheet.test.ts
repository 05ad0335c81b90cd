import { beforeAll, describe, expect, test } from 'vitest';
import { meshOfBodies } from '../../../tests/support/part-mesh.ts';
import { sixtyDimensions } from '../../../tests/support/sixty-dimensions.ts';
import { sketchBodies } from '../../../tests/support/sketch-bodies.ts';
import type { DimensionId, PartId, StationId } from '../base/ids.ts';
import { type Dimension, defaultDimension } from '../build/dimension.ts';
import { bodiesOf, buildOf, dimensionsOf } from '../build/look-up.ts';
import type { BuildRecord } from '../build/records.ts';
import { createDrawing } from '../drawing/create-drawing.ts';
import { placeBodies } from '../solid/place-bodies.ts';
import { overlap, within } from './box.ts';
import { drawSheet } from './draw-sheet.ts';
import { faceAt } from './face-at.ts';
import { scales } from './paper.ts';
import type { LineMark, Sheet, SheetOptions, SheetSubject, TextMark } from './sheet.ts';
import { sheetSubject } from './sheet-subject.ts';
import { sheetSvg } from './svg.ts';

async function subjectOf(part: PartId, records: readonly BuildRecord[], withMesh = true): Promise<SheetSubject> {
  const build = buildOf(records);
  const drawing = createDrawing(build);
  const bodies = placeBodies(part, { bodies: bodiesOf(build, part), get: (id) => build.get(id) }, drawing);
  const whole = bodies.filter(({ shape }) => shape);
  const mesh = withMesh && whole.length > 0 ? await meshOfBodies(whole) : undefined;
  return sheetSubject(build, drawing, { bodiesOf: () => bodies, meshOf: () => mesh }, part, 'finished')!;
}

const textsOf = ({ marks }: Sheet): readonly TextMark[] => marks.filter((mark) => mark.is === 'text');
const linesOf = ({ marks }: Sheet, kind: LineMark['kind']): readonly LineMark[] =>
  marks.filter((mark) => mark.is === 'line').filter((mark) => mark.kind === kind);

/** What makes a sheet readable, whatever is on it. */
function expectLegible(sheet: Sheet, subject: SheetSubject): void {
  const texts = textsOf(sheet);
  texts.forEach((text, i) => {
    expect(within(text.box, sheet.frame), `"${text.text}" lies within the frame`).toBe(true);
    expect(text.heightMm).toBeGreaterThanOrEqual(2.5);
    for (const other of texts.slice(i + 1)) {
      expect(overlap(text.box, other.box), `"${text.text}" and "${other.text}" stand apart`).toBe(false);
    }
  });
  for (const mark of sheet.marks) {
    if (mark.is === 'text') continue;
    for (const [x, y] of mark.points) {
      expect(within({ left: x, right: x, bottom: y, top: y }, sheet.frame)).toBe(true);
    }
  }
  // Each dimension is in the views once or in the margin once.
  const shown = texts.flatMap(({ stands, view }) => (view === undefined ? [] : stands));
  const listed = sheet.unplaced.map(({ of }) => of.id as string);
  for (const { id, name } of subject.dimensions) {
    const times = shown.filter((one) => one === id).length + listed.filter((one) => one === id).length;
    expect(times, name).toBe(1);
  }
}

describe('a part of more than sixty dimensions', () => {
  let subject: SheetSubject;
  beforeAll(async () => {
    const { part, records } = sixtyDimensions();
    subject = await subjectOf(part, records);
  });
  const middle = 'station:Y-middle' as StationId;

  test('has them, and bodies of every finish, all placed', () => {
    expect(subject.dimensions.length).toBeGreaterThanOrEqual(60);
    expect(subject.bodies.every(({ problem }) => problem === undefined)).toBe(true);
  });

  const ways: readonly SheetOptions[] = [
    { projection: 'first' },
    { projection: 'third' },
    { projection: 'first', paper: 'A4' },
    { projection: 'third', paper: 'A2' },
    { projection: 'first', section: { station: middle, look: '+' } },
    { projection: 'third', section: { station: 'station:X-oil-hole' as StationId, look: '-' } },
    { projection: 'first', section: { station: 'station:Z-spindle-axis' as StationId, look: '-' } },
  ];
  test.each(ways)('is legible and complete: %j', (options) => {
    const sheet = drawSheet(subject, options);
    expectLegible(sheet, subject);
    expect(sheet.unplaced).toEqual([]);
    expect(scales).toContain(sheet.scale);
    if (options.paper) expect(sheet.paper).toBe(options.paper);
  });

  test('as cast, nothing machined is shown, and sizes of machined bodies are listed', () => {
    const sheet = drawSheet({ ...subject, state: 'as cast' }, { projection: 'first' });
    expectLegible(sheet, { ...subject, state: 'as cast' });
    expect(sheet.unplaced.map(({ of }) => of)).toContainEqual({ why: 'no-body', id: 'dimension:slot-width' });
  });

  test('without a solid the stations and their dimensions are there', () => {
    const bare = { ...subject, mesh: undefined };
    const sheet = drawSheet(bare, { projection: 'first' });
    expectLegible(sheet, bare);
    expect(linesOf(sheet, 'visible')).toEqual([]);
    expect(linesOf(sheet, 'phantom').flatMap(({ stands }) => stands)).toContain('station:Z-top-of-body');
  });

  test('the same again is the same, as a file too', () => {
    const options: SheetOptions = { projection: 'first', section: { station: middle, look: '+' } };
    const [one, two] = [drawSheet(subject, options), drawSheet(subject, options)];
    expect(two).toEqual(one);
    expect(sheetSvg(two, 'head')).toBe(sheetSvg(one, 'head'));
  });

  test('the views stand in line: plan below in first angle, above in third', () => {
    for (const projection of ['first', 'third'] as const) {
      const { views } = drawSheet(subject, { projection });
      const [front, top, side] = (['front', 'top', 'side'] as const).map(
        (name) => views.find((view) => view.name === name)!,
      );
      expect(top!.origin[0]).toBeCloseTo(front!.origin[0], 9);
      expect(side!.origin[1]).toBeCloseTo(front!.origin[1], 9);
      expect(side!.box.left).toBeGreaterThan(front!.box.right);
      expect(top!.box.top < front!.box.bottom).toBe(projection === 'first');
      expect(top!.box.bottom > front!.box.top).toBe(projection === 'third');
      // Seen from the left in first angle, from the right in third.
      expect(side!.towards).toEqual({ axis: 'X', sign: projection === 'first' ? -1 : 1 });
    }
  });

  test('every dimension between stations is drawn at its true length', () => {
    const sheet = drawSheet(subject, { projection: 'first' });
    let checked = 0;
    for (const { id, measure } of subject.dimensions) {
      if (measure.type !== 'between') continue;
      const ends = [measure.from, measure.to].map((station) =>
        linesOf(sheet, 'extension').find(({ stands }) => stands[0] === station && stands.includes(id)),
      );
      const [a, b] = ends as [LineMark, LineMark];
      const isUpright = a.points[0]![0] === a.points.at(-1)![0];
      const at = ({ points }: LineMark) => points[0]![isUpright ? 0 : 1];
      const drawn = Math.abs(at(b) - at(a)) * (sheet.scale.part / sheet.scale.paper);
      expect(drawn).toBeCloseTo(Math.abs(subject.resolved.get(id)!.value!), 9);
      checked++;
    }
    expect(checked).toBeGreaterThan(30);
  });

  test('figures show how sure they are', () => {
    const texts = textsOf(drawSheet(subject, { projection: 'first' }));
    const textOf = (id: string) => texts.find(({ stands }) => stands[0] === id)!;
    const bySource = (source: Dimension['source']) =>
      subject.dimensions
        .filter((one) => one.source === source && one.measure.type === 'between')
        .map(({ id }) => textOf(id));
    expect(bySource('assumed').length).toBeGreaterThan(2);
    for (const { text, style } of bySource('assumed')) expect([text.endsWith(' ?'), style]).toEqual([true, 'assumed']);
    for (const { text } of bySource('derived')) expect(text).toMatch(/^\(.*\)$/);
    for (const { underlined } of bySource('measured')) expect(underlined).toBe(true);
    for (const { text, underlined, style } of bySource('drawn')) {
      expect([/[?()]/.test(text), underlined, style]).toEqual([false, false, 'plain']);
    }
    expect(texts.map(({ text }) => text)).toContain('? assumed;  underlined: measured;  ( ) derived');
    expect(texts.map(({ text }) => text)).toContain('counterbore ⌀22 deep 1.5');
  });

  test('a section has hatching, no hidden lines, its letters, and its trace in another view', () => {
    const sheet = drawSheet(subject, { projection: 'first', section: { station: middle, look: '+' } });
    const view = sheet.views.find(({ cutAt }) => cutAt !== undefined)!;
    expect([view.name, view.title, view.cutAt]).toEqual(['front', 'A–A', 0]);
    expect(linesOf(sheet, 'hatching').length).toBeGreaterThan(50);
    for (const { points, view: of } of linesOf(sheet, 'hatching')) {
      expect(of).toBe('front');
      const [[ax, ay], [bx, by]] = points as [readonly [number, number], readonly [number, number]];
      expect(by - ay).toBeCloseTo(bx - ax, 6);
    }
    expect(linesOf(sheet, 'hidden').filter((line) => line.view === 'front')).toEqual([]);
    expect(linesOf(sheet, 'hidden').filter((line) => line.view === 'top').length).toBeGreaterThan(0);
    expect(linesOf(sheet, 'cutting').map((line) => line.view)).toEqual(['top', 'top']);
    expect(textsOf(sheet).filter(({ text }) => text === 'A')).toHaveLength(2);
  });

  test('a point of the paper leads to the face there', () => {
    const sheet = drawSheet(subject, { projection: 'first' });
    const front = sheet.views.find(({ name }) => name === 'front')!;
    const times = sheet.scale.paper / sheet.scale.part;
    const at = (x: number, z: number) =>
      faceAt(subject.mesh!, front, sheet.scale, [front.origin[0] + x * times, front.origin[1] + z * times])?.body;
    expect(at(5, 12)).toBe('body:foot');
    expect(at(150, 100)).toBe('body:body');
    expect(at(12, 112)).toBe('body:left-boss');
    expect(at(5, 100)).toBeUndefined();
    // On a cut there is no face, behind it there is.
    const cut = drawSheet(subject, { projection: 'first', section: { station: middle, look: '+' } });
    const section = cut.views.find(({ name }) => name === 'front')!;
    const scale = cut.scale.paper / cut.scale.part;
    const inCut = (x: number, z: number) =>
      faceAt(subject.mesh!, section, cut.scale, [section.origin[0] + x * scale, section.origin[1] + z * scale])?.body;
    expect(inCut(30, 60)).toBeUndefined();
    expect(inCut(120, 80)).toBe('body:core');
  });

  test('as a file it holds every text as words, escaped, in mm', () => {
    const named = { ...subject, part: { ...subject.part, name: 'Head <A> & "B"' } };
    const sheet = drawSheet(named, { projection: 'first' });
    const svg = sheetSvg(sheet, named.part.name);
    expect(svg).toContain('Head &lt;A&gt; &amp; &quot;B&quot;');
    expect(svg).toContain(`width="${sheet.widthMm}mm" height="${sheet.heightMm}mm"`);
    expect(svg.match(/<text /g)).toHaveLength(textsOf(sheet).length);
    expect(svg).not.toMatch(/NaN|Infinity|undefined|e-\d/);
    // Every element is closed: nothing of it is left when they are taken away.
    expect(svg.replace(/<\?xml[^>]*>|<(path|rect)[^>]*\/>|<(text|title)[^>]*>[^<]*<\/\2>|<\/?svg[^>]*>|\s/g, '')).toBe(
      '',
    );
  });
});

describe('what is not in the views is listed with what it lacks', () => {
  const between = (name: string, from: StationId, to: StationId, value: string): Dimension => ({
    ...defaultDimension(
      `dimension:${name}` as DimensionId,
      'part:b' as PartId,
      name,
      { type: 'between', from, to },
      90,
    ),
    value,
  });

  test('loose stations, missing values, bodies that lack something, sizes of no body', async () => {
    const s = sketchBodies();
    s.body({
      type: 'block',
      x: [s.at('X', 0), s.at('X', 50)],
      y: [s.at('Y', 0), s.at('Y', 20)],
      z: [s.at('Z', 0), s.at('Z', 10)],
    });
    const [loose, other] = [s.at('X', 71), s.at('X', 93)];
    s.body({
      type: 'cylinder',
      axis: 'Z',
      ends: [s.at('Z', 10), s.at('Z', 33)],
      centre: [loose, s.at('Y', 10)],
      diameter: s.size('diameter', 12),
    });
    s.size('mass', '3 kg');
    const empty = s.size('length', '');
    // The ties of the two stations to the datum are taken away; one between them is left, and one to nowhere.
    const records = s.records().filter(({ id }) => !['dimension:b-X71', 'dimension:b-X93'].includes(id));
    const apart = between('apart', loose, other, '22');
    const subject = await subjectOf(s.part.id, [...records, apart]);
    const sheet = drawSheet(subject, { projection: 'first' });
    expect(sheet.unplaced.map(({ of }) => of)).toEqual(
      [
        { why: 'station-loose', id: loose },
        { why: 'station-loose', id: other },
        { why: 'no-value', id: empty },
        { why: 'ends-loose', id: apart.id, stations: [loose, other] },
        { why: 'body', id: 'body:b2', stations: [loose], dimensions: [] },
        { why: 'no-body', id: 'dimension:b-diameter-12' },
        { why: 'no-body', id: 'dimension:b-mass-3_kg' },
      ].sort((a, b) => order(sheet, a.id) - order(sheet, b.id)),
    );
    expect(sheet.unplaced.map(({ words }) => words)).toContain('Body cylinder 2: lacks the place or value of X71.');
    expect(sheet.unplaced.map(({ words }) => words)).toContain('Dimension apart: X71 and X93 have no place yet.');
    expectLegible(sheet, subject);
    // What is known of the body is shown: its upper end, where no edge lies.
    const phantoms = linesOf(sheet, 'phantom');
    expect(phantoms.map(({ stands }) => stands)).toContainEqual(['body:b2', s.at('Z', 33)]);
  });

  const order = (sheet: Sheet, id: string) => sheet.unplaced.findIndex(({ of }) => of.id === id);

  test('more dimensions than find room on the paper asked for', async () => {
    const s = sketchBodies();
    for (let i = 1; i <= 130; i++) s.at('X', i);
    const subject = await subjectOf(s.part.id, s.records());
    const sheet = drawSheet(subject, { projection: 'first', paper: 'A4' });
    const lacking = sheet.unplaced.filter(({ of }) => of.why === 'no-room');
    expect(lacking.length).toBeGreaterThan(0);
    expect(lacking.length).toBeLessThan(130);
    expectLegible(sheet, subject);
  });

  test('a part with nothing at all', async () => {
    const s = sketchBodies();
    const subject = await subjectOf(
      s.part.id,
      s.records().filter(({ kind }) => kind !== 'station'),
    );
    const sheet = drawSheet(subject, { projection: 'first' });
    expect(sheet.unplaced).toEqual([]);
    expect(sheet.scale.words).toBe('1 : 1');
    expect(sheetSvg(sheet, 'nothing')).not.toMatch(/NaN|Infinity/);
  });
});

test('random parts are legible', async () => {
  let seed = 20_261;
  const random = (below: number) => {
    seed = (Math.imul(seed, 1_103_515_245) + 12_345) >>> 0;
    return (seed >>> 8) % below;
  };
  for (let n = 0; n < 12; n++) {
    const s = sketchBodies(`r${n}`);
    const size = [3, 40, 900, 12_000][n % 4]!;
    const at = (axis: 'X' | 'Y' | 'Z') => s.at(axis, random(40) * (size / 40));
    for (let i = 0; i < 2 + random(6); i++) {
      s.body({ type: 'block', x: [at('X'), at('X')], y: [at('Y'), at('Y')], z: [at('Z'), at('Z')] });
      s.body({
        type: 'cylinder',
        axis: 'Z',
        ends: [at('Z'), at('Z')],
        centre: [at('X'), at('Y')],
        diameter: s.size('diameter', (1 + random(20)) * (size / 40)),
      });
    }
    const subject = await subjectOf(s.part.id, s.records());
    expect(dimensionsOf(buildOf(s.records()), s.part.id).length).toBe(subject.dimensions.length);
    expectLegible(drawSheet(subject, { projection: n % 2 === 0 ? 'first' : 'third' }), subject);
  }
});
