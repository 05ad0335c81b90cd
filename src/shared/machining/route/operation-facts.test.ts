import { describe, expect, test } from 'vitest';
import { dimensionId, stationId } from '../../../../tests/support/facts.ts';
import {
  blockOf,
  drilled,
  machine,
  machineId,
  operation,
  type RouteGiven,
  routeBody,
  routeBodyId,
  routeFacts,
  routePart,
  setup,
  setupId,
} from '../../../../tests/support/route-part.ts';
import type { Operation, Process } from '../../build/operation.ts';
import { spindleSpeed } from '../cutting/spindle-speed.ts';
import { operationFacts } from './operation-facts.ts';

const stations: NonNullable<RouteGiven['stations']> = {
  left: ['X', 0],
  right: ['X', 150],
  front: ['Y', 0],
  back: ['Y', 60],
  foot: ['Z', 0],
  top: ['Z', 40],
  lost: ['Z', undefined],
  cx: ['X', 50, 'centreline'],
  cy: ['Y', 30, 'centreline'],
};
const sizes: NonNullable<RouteGiven['sizes']> = {
  bore: ['diameter', '25'],
  boss: ['diameter', '40'],
  tapped: ['thread', 'M8'],
  count: ['count', '4'],
  pitch: ['length', '20'],
  head: ['diameter', '14'],
  deep: ['length', '8'],
  sink: ['angle', '90'],
};
const machined = { adds: false, finish: 'machined' } as const;
const box = routeBody('box', blockOf(['left', 'right'], ['front', 'back'], ['foot', 'top']));
const bore = routeBody('bore', drilled('top', 'foot', 'bore'), machined);
const tapped = routeBody('tapped', drilled('top', 'foot', 'tapped'), {
  ...machined,
  repeats: [{ type: 'row', axis: 'X', count: dimensionId('count'), pitch: dimensionId('pitch') }],
});
const given: RouteGiven = { stations, sizes, bodies: [box, bore, tapped] };

const along = (over: Partial<NonNullable<Operation['cut']>> = {}): Operation['cut'] => ({
  ends: [
    { station: stationId('left'), beyond: '' },
    { station: stationId('right'), beyond: '' },
  ],
  diameter: { size: dimensionId('boss'), written: '' },
  inner: { written: '' },
  ...over,
});
const tool = (written: string, over: Partial<Operation['tool']> = {}): Operation['tool'] => ({
  edge: 'HSS',
  diameter: { written },
  overhang: '',
  teeth: 1,
  angle: '',
  ...over,
});
const chosen = (over: Partial<Operation['chosen']> = {}): Operation['chosen'] => ({
  speed: '',
  rpm: '',
  feed: '',
  depth: '',
  minutes: '',
  ...over,
});

const factOf = (process: Process, over: Partial<Operation> = {}, more: RouteGiven = {}) =>
  routeFacts({ ...given, operations: [operation('it', process, over)], ...more }).get('it')!;
const lathe = machine('lathe', 'lathe', { slowestRpm: '70', fastestRpm: '1200', power: '1/2 hp' });
const inLathe = (over: Parameters<typeof setup>[1] = {}): RouteGiven => ({
  machines: [lathe],
  setups: [setup('u', { machine: machineId('lathe'), allowance: '2', ...over })],
});

test('the breadth of flat work may be a length or a distance of the drawing, not a diameter alone', () => {
  const fact = factOf('mill', { cut: along({ diameter: { size: dimensionId('pitch'), written: '' } }) });
  expect(fact.read.cut?.diameterMm).toBe(20);
  expect(fact.unknown.filter(({ is }) => is === 'dimension')).toEqual([]);
});

describe('turning', () => {
  const turn = (over: Partial<Operation> = {}, more = inLathe()) =>
    factOf('turn', { setup: setupId('u'), cut: along(), makes: [dimensionId('boss')], ...over }, more);

  test('stock from the allowance, in roughing cuts and one to size, with power and time', () => {
    const fact = turn();
    expect(fact).toMatchObject({
      step: 1,
      diameterMm: 40,
      count: 1,
      metal: { metal: 'mild steel', by: 'table' },
      stock: { findsMm: 2, leavesMm: 0, from: { is: 'allowance' } },
      unknown: [],
      warnings: [],
    });
    expect(fact.passes.map(({ kind }) => kind)).toEqual(['rough', 'finish']);
    const [rough, finish] = fact.passes;
    expect(rough!.rpm!.value).toBeCloseTo(spindleSpeed(27.432, 40), 8);
    expect(finish!.rpm!.value).toBeGreaterThan(rough!.rpm!.value);
    expect(finish!.feed!.value).toBeLessThan(rough!.feed!.value);
    // 150 mm and 2 mm at each end, (0.01 in)/turn.
    expect(rough!.minutes).toBeCloseTo((rough!.count! * 154) / (0.254 * rough!.rpm!.value), 8);
    expect(fact.minutes).toBeCloseTo(rough!.minutes! + finish!.minutes!, 12);
    expect(rough!.load!.motorKw).toBeLessThanOrEqual(0.3729);
  });

  test('what the drawing cannot place, and what cannot be read, is unknown by name', () => {
    const fact = turn({
      cut: along({
        ends: [
          { station: stationId('lost'), beyond: '' },
          { station: stationId('right'), beyond: 'a bit' },
        ],
      }),
      chosen: chosen({ rpm: 'fast', feed: '0', depth: '-1' }),
      leaves: 'some',
      tool: tool('', { overhang: 'long', angle: '0' }),
    });
    expect(fact.unknown).toEqual([
      { is: 'station', station: stationId('lost') },
      { is: 'written', field: 'cut/ends/1/beyond', text: 'a bit' },
      { is: 'written', field: 'leaves', text: 'some' },
      { is: 'written', field: 'tool/overhang', text: 'long' },
      { is: 'written', field: 'tool/angle', text: '0' },
      { is: 'written', field: 'chosen/rpm', text: 'fast' },
      { is: 'written', field: 'chosen/feed', text: '0' },
      { is: 'written', field: 'chosen/depth', text: '-1' },
      { is: 'field', field: 'allowance' },
    ]);
    expect(fact.minutes).toBeUndefined();
  });

  test('without its metal there is no speed, and it is asked for', () => {
    const fact = turn({}, { ...inLathe(), part: { material: 'unobtainium' } });
    expect(fact.metal).toBeUndefined();
    expect(fact.passes[0]).toMatchObject({ speed: undefined, rpm: undefined, load: undefined });
    expect(fact.unknown[0]).toEqual({ is: 'material', name: 'unobtainium' });
  });

  test('feeds may say by what they are counted', () => {
    for (const feed of ['0.1', '0.1 mm/rev', '0.1 mm per turn', '100 µm / rev']) {
      expect(turn({ chosen: chosen({ feed }) }).passes[0]!.feed).toMatchObject({ value: 0.1, from: 'chosen' });
    }
  });

  test('in a build of inches bare lengths are inches', () => {
    const fact = turn({ chosen: chosen({ feed: '0.004' }), leaves: '0.01' }, { ...inLathe(), lengthUnit: 'in' });
    expect(fact.passes[0]!.feed!.value).toBeCloseTo(0.1016, 12);
    expect(fact.stock.leavesMm).toBeCloseTo(0.254, 12);
    expect(fact.stock.findsMm).toBeCloseTo(50.8, 12);
  });

  test('a time that is known from experience holds', () => {
    expect(turn({ chosen: chosen({ minutes: '1 h' }) }).minutes).toBe(60);
  });

  test('warned of: turns beyond the machine, speed beyond the table', () => {
    expect(turn({ chosen: chosen({ rpm: '1500' }) }).warnings).toEqual([
      { is: 'too-fast-for-machine', asked: 1500, fastest: 1200 },
    ]);
    expect(turn({ chosen: chosen({ rpm: '50' }) }).warnings).toEqual([
      { is: 'too-slow-for-machine', asked: 50, slowest: 70, chosen: true },
    ]);
    expect(turn({ chosen: chosen({ speed: '100' }) }).warnings).toMatchObject([
      { is: 'faster-than-table', speed: 100 },
    ]);
    const fast = machine('lathe', 'lathe', { slowestRpm: '900' });
    expect(turn({}, { ...inLathe(), machines: [fast] }).warnings).toMatchObject([
      { is: 'too-slow-for-machine', slowest: 900, chosen: false },
    ]);
    // 300 rpm are more than the 218 that the table begins with, and well within it.
    const brisk = machine('lathe', 'lathe', { slowestRpm: '300' });
    expect(turn({}, { ...inLathe(), machines: [brisk] }).warnings).toEqual([]);
  });

  test('a cut that is chosen deeper than the motor drives', () => {
    const fact = turn({ chosen: chosen({ depth: '2' }) });
    expect(fact.warnings).toMatchObject([{ is: 'power', hasKw: 0.3728499357911351 }]);
    expect(turn({}).warnings).toEqual([]);
    expect(
      turn({ chosen: chosen({ depth: '2' }) }, { ...inLathe(), machines: [machine('lathe', 'lathe')] }).unknown,
    ).toEqual([{ is: 'figure', machine: machineId('lathe'), key: 'power' }]);
  });

  test('work that stands free, and a tool that stands out', () => {
    const held = (at: string, tailCentre = false) =>
      inLathe({
        holding: {
          as: 'three-jaw chuck',
          ends: [
            { station: stationId(at), beyond: '' },
            { station: stationId(at), beyond: '' },
          ],
          diameter: { written: '' },
          inside: false,
          tailCentre,
        },
      });
    const thin = { cut: along({ diameter: { written: '20' } }) };
    expect(turn(thin, held('left')).warnings).toMatchObject([{ is: 'slender', ratio: 7.5, limit: { value: 4 } }]);
    expect(turn(thin, held('left', true)).warnings).toEqual([]);
    expect(turn(thin, inLathe({ holding: { as: 'between centres' } })).warnings).toEqual([]);
    const needle = { cut: along({ diameter: { written: '12' } }) };
    expect(turn(needle, inLathe({ holding: { as: 'between centres' } })).warnings).toMatchObject([
      { is: 'slender', ratio: 12.5, limit: { value: 10 } },
    ]);
    expect(turn({ tool: tool('12', { overhang: '30' }) }).warnings).toMatchObject([{ is: 'overhang', ratio: 2.5 }]);
  });

  test('nothing to take', () => {
    expect(turn({ leaves: '3' }).warnings).toEqual([{ is: 'nothing-to-take', findsMm: 2, leavesMm: 3 }]);
  });
});

describe('facing', () => {
  test('from the outer to the inner diameter', () => {
    const fact = factOf(
      'face',
      { setup: setupId('u'), cut: along({ inner: { size: dimensionId('bore'), written: '' } }) },
      inLathe(),
    );
    const [rough] = fact.passes;
    expect(rough!.minutes).toBeCloseTo((rough!.count! * 9.5) / (rough!.feed!.value * rough!.rpm!.value), 8);
  });
});

describe('boring', () => {
  test('a bar reaches as far as the bore is long', () => {
    const cut = along({
      ends: [
        { station: stationId('foot'), beyond: '' },
        { station: stationId('top'), beyond: '20' },
      ],
    });
    const fact = factOf('bore', { cut, makes: [routeBodyId('bore')], tool: tool('12') });
    expect(fact.warnings).toMatchObject([{ is: 'overhang', ratio: 5, limit: { value: 4, status: 'read' } }]);
    expect(factOf('bore', { cut, tool: tool('12', { overhang: '40' }) }).warnings).toEqual([]);
  });

  test('finds what the drill has left of the hole', () => {
    const facts = routeFacts({
      ...given,
      operations: [
        operation('drill', 'drill', { makes: [routeBodyId('bore')], tool: tool('22') }),
        operation('bore', 'bore', { makes: [dimensionId('bore')], leaves: '0.1' }),
        operation('ream', 'ream', { makes: [routeBodyId('bore')] }),
      ],
    });
    expect(facts.get('bore')!.stock).toMatchObject({
      findsMm: 1.5,
      leavesMm: 0.1,
      holeMm: 22,
      from: { is: 'operation' },
    });
    expect(facts.get('ream')!.stock).toMatchObject({ findsMm: 0.1, leavesMm: 0 });
  });
});

describe('holes', () => {
  test('are counted, drilled to the hole to tap, as deep as drawn', () => {
    const fact = factOf('drill', { makes: [routeBodyId('tapped')] });
    expect(fact).toMatchObject({ count: 4, diameterMm: 6.75, unknown: [] });
    const [pass] = fact.passes;
    const point = 3.375 / Math.tan((59 * Math.PI) / 180);
    expect(pass!.minutes).toBeCloseTo((4 * (40 + point + 2)) / (pass!.feed!.value * pass!.rpm!.value), 8);
    expect(pass!.load!.torqueNm).toBeGreaterThan(0);
    expect(fact.warnings).toMatchObject([{ is: 'deep-hole', body: routeBodyId('tapped'), limit: { value: 5 } }]);
  });

  test('tapped at the pitch, in and out', () => {
    const fact = factOf('tap', { makes: [dimensionId('tapped')] });
    expect(fact).toMatchObject({ count: 4, diameterMm: 8 });
    expect(fact.passes[0]!.feed).toEqual({ value: 1.25, from: 'thread', row: undefined });
    expect(fact.minutes).toBeCloseTo((4 * 2 * 42) / (1.25 * fact.passes[0]!.rpm!.value), 8);
    expect(fact.warnings).toMatchObject([{ is: 'deep-thread', ratio: 5 }]);
  });

  test('sunk and counterbored as drawn', () => {
    const more = routeBody(
      'headed',
      drilled('top', 'foot', 'tapped', {
        counterbore: { diameter: dimensionId('head'), depth: dimensionId('deep') },
        countersink: { diameter: dimensionId('head'), angle: dimensionId('sink') },
      }),
      machined,
    );
    const of = (process: 'countersink' | 'counterbore') =>
      factOf(process, { makes: [routeBodyId('headed')] }, { bodies: [box, more] });
    expect(of('counterbore')).toMatchObject({ diameterMm: 14 });
    expect(of('counterbore').minutes).toBeCloseTo(
      10 / (of('counterbore').passes[0]!.feed!.value * of('counterbore').passes[0]!.rpm!.value),
      8,
    );
    const sunk = of('countersink');
    // (14 − 6.75) / 2 at 90°.
    expect(sunk.minutes).toBeCloseTo((3.625 + 2) / (sunk.passes[0]!.feed!.value * sunk.passes[0]!.rpm!.value), 8);
  });

  test('of which nothing is said', () => {
    expect(factOf('drill').unknown).toEqual([
      { is: 'field', field: 'tool/diameter' },
      { is: 'field', field: 'cut' },
    ]);
    expect(factOf('tap', { tool: tool('8') }).unknown).toContainEqual({ is: 'field', field: 'tool/pitch' });
  });
});

describe('flat work', () => {
  const flat = along({ diameter: { written: '60' } });
  const onTable = (type: 'milling machine' | 'shaper' | 'grinder' | 'bandsaw', figures = {}): RouteGiven => ({
    machines: [machine('m', type, figures)],
    setups: [setup('u', { machine: machineId('m'), allowance: '1' })],
  });

  test('milled in runs beside one another', () => {
    const fact = factOf(
      'mill',
      { setup: setupId('u'), cut: flat, tool: tool('25', { teeth: 4 }), leaves: '0.5' },
      onTable('milling machine'),
    );
    const [pass] = fact.passes;
    expect(pass!.minutes).toBeCloseTo((3 * (150 + 25)) / (4 * pass!.feed!.value * pass!.rpm!.value), 8);
    expect(pass!.load!.motorKw).toBeGreaterThan(0);
  });

  test('shaped stroke by stroke, within the strokes of the machine', () => {
    const fact = factOf(
      'shape',
      { setup: setupId('u'), cut: flat },
      onTable('shaper', { fastestStrokes: '60', slowestStrokes: '20' }),
    );
    expect(fact.passes[0]).toMatchObject({ rpm: { value: 60, from: 'machine' } });
    expect(fact.passes[0]!.minutes).toBeCloseTo((fact.passes[0]!.count! * 60) / (0.254 * 60), 8);
  });

  test('ground by the width of the wheel', () => {
    const fact = factOf(
      'grind',
      { setup: setupId('u'), cut: flat, leaves: '' },
      onTable('grinder', { wheelWidth: '20' }),
    );
    expect(fact.passes[0]!.count).toBe(200);
    expect(fact.minutes).toBeCloseTo((200 * 8 * 150) / (1000 * 70 * 0.3048), 8);
  });

  test('sawn', () => {
    const fact = factOf(
      'saw',
      { setup: setupId('u'), cut: flat },
      onTable('bandsaw', { slowestBand: '20', fastestBand: '24' }),
    );
    expect(fact.passes[0]!.speed).toMatchObject({ value: 24, from: 'machine' });
    expect(fact.minutes).toBe(9);
  });

  test('what is done by hand takes what one says', () => {
    expect(factOf('scrape').unknown).toEqual([{ is: 'field', field: 'chosen/minutes' }]);
    expect(factOf('scrape', { chosen: chosen({ minutes: '45' }) })).toMatchObject({ minutes: 45, unknown: [] });
  });
});

describe('identity', () => {
  test('what did not change is the very same', () => {
    const operations = [operation('a', 'drill', { makes: [routeBodyId('bore')] }), operation('b', 'scrape')];
    const before = operationFacts(routePart({ ...given, operations }));
    const again = operationFacts(routePart({ ...given, operations }), before);
    expect(again[0]).toBe(before[0]);
    const renamed = [operations[0]!, { ...operations[1]!, note: 'blue it first' }];
    const after = operationFacts(routePart({ ...given, operations: renamed }), before);
    expect(after[0]).toBe(before[0]);
    expect(after[1]).not.toBe(before[1]);
  });
});
