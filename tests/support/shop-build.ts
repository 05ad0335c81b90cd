import type {
  BodyId,
  DimensionId,
  MachineId,
  OperationId,
  PartId,
  SetupId,
  StationId,
} from '../../src/shared/base/ids.ts';
import type { Body } from '../../src/shared/build/body.ts';
import { type Dimension, defaultDimension, type SizeForm } from '../../src/shared/build/dimension.ts';
import { defaultMachine } from '../../src/shared/build/machine.ts';
import { defaultOperation } from '../../src/shared/build/operation.ts';
import { defaultPart } from '../../src/shared/build/part.ts';
import type { BuildRecord } from '../../src/shared/build/records.ts';
import { defaultSettings } from '../../src/shared/build/settings.ts';
import { defaultSetup, type Setup } from '../../src/shared/build/setup.ts';
import { type Axis, defaultStation } from '../../src/shared/build/station.ts';
import { latheFigures } from './setup-sketch.ts';

export interface ShopBuild {
  readonly records: readonly BuildRecord[];
  readonly parts: readonly PartId[];
  readonly setups: readonly SetupId[];
  /** Plain dimensions with their values in mm. */
  readonly dimensions: readonly { readonly id: DimensionId; readonly value: number }[];
  readonly machines: readonly MachineId[];
}

const idOf = (kind: string, n: number): string => `${kind}:${n.toString(32).padStart(10, '0')}`;

/** The set-ups that each part of a shop's build has. */
export const SETUPS_PER_PART = 5;

/**
 * A build of castings of eight to ten bodies (base, bearing, flange on the bearing, lugs, ribs, bores), each with five set-ups: between centres on an arbor, on the face plate, in the
 * chuck, on the drill press, on the shaper; turned, bored, faced and drilled. Two lathes. Dimensions are chained, some through formulas, some
 * naming the part before. Sizes differ so that some hit, some clear only as drawn, most clear. The same every time.
 */
export function shopBuild(parts: number): ShopBuild {
  const records: BuildRecord[] = [{ ...defaultSettings('shop'), castingGrade: defaultSettings('shop').castingGrade }];
  const machines = ['small lathe', 'large lathe', 'drill', 'shaper'].map((_, i) => idOf('machine', i) as MachineId);
  const figures = [
    {
      ...latheFigures,
      swingOverBed: '230',
      swingOverSaddle: '210',
      swingOverCrossSlide: '165',
      swingInGap: '300',
      gapLength: '70',
    },
    { ...latheFigures, swingOverBed: '320', swingOverSaddle: '290', swingOverCrossSlide: '190', betweenCentres: '700' },
    {
      throat: '180',
      daylight: '420',
      quillTravel: '80',
      chuckLeast: '1',
      chuckMost: '16',
      chuckLength: '80',
      tableLength: '300',
      tableWidth: '260',
    },
    { stroke: '320', underRam: '260', headTravel: '110', tableTravel: '280', tableLength: '350', tableWidth: '260' },
  ];
  const types = ['lathe', 'lathe', 'drill press', 'shaper'] as const;
  machines.forEach((id, i) => {
    records.push({ ...defaultMachine(id, `${types[i]} ${i}`, types[i]!, i), figures: figures[i]! });
  });
  const dimensions: { id: DimensionId; value: number }[] = [];
  const setups: SetupId[] = [];
  for (let p = 0; p < parts; p++) addPart(p, records, dimensions, setups, machines);
  return {
    // As they would come from a file.
    records: JSON.parse(JSON.stringify(records)) as BuildRecord[],
    parts: Array.from({ length: parts }, (_, p) => idOf('part', p) as PartId),
    setups,
    dimensions,
    machines,
  };
}

function addPart(
  p: number,
  records: BuildRecord[],
  dimensions: { id: DimensionId; value: number }[],
  setups: SetupId[],
  machines: readonly MachineId[],
): void {
  const part = idOf('part', p) as PartId;
  records.push({ ...defaultPart(part, `casting ${p}`, p), material: 'grey cast iron' });
  let n = 0;
  const stations = new Map<string, StationId>();
  const stationIn = (axis: Axis, name: string, form: 'face' | 'centreline' = 'face', datum = false): StationId => {
    const id = idOf('station', p * 100 + stations.size) as StationId;
    stations.set(name, id);
    records.push({ ...defaultStation(id, part, axis, name, stations.size), form, datum });
    return id;
  };
  const add = (name: string, measure: Dimension['measure'], value: string, number?: number): DimensionId => {
    const id = idOf('dimension', p * 100 + n) as DimensionId;
    const limits = n % 3 === 0 ? '±0.2' : '';
    records.push({
      ...defaultDimension(id, part, name, measure, n++),
      value,
      limits,
      finish: n % 2 ? 'as cast' : 'machined',
    });
    if (number !== undefined) dimensions.push({ id, value: number });
    return id;
  };
  const vary = (base: number, by: number, k: number): number => base + (((p * 7 + k * 13) % 11) / 10) * by;
  const away = (name: string, from: string, to: string, value: number | string) =>
    add(
      name,
      { type: 'between', from: stations.get(from)!, to: stations.get(to)! },
      String(value),
      typeof value === 'number' ? value : undefined,
    );
  const size = (name: string, form: SizeForm, value: number | string) =>
    add(name, { type: 'size', form }, String(value), typeof value === 'number' ? value : undefined);

  // Along X the bore; Y across; Z up.
  for (const [axis, names] of [
    ['X', ['head', 'rim', 'web', 'tail']],
    ['Y', ['bore Y', 'front', 'back', 'rib front', 'rib back']],
    ['Z', ['foot', 'bore Z', 'floor', 'top']],
  ] as const) {
    names.forEach((name, i) => {
      stationIn(axis, name, name.startsWith('bore') ? 'centreline' : 'face', i === 0);
    });
  }
  const length = vary(60, 30, 1);
  away('rim at', 'head', 'rim', vary(16, 8, 2));
  away('web at', 'rim', 'web', vary(30, 10, 3));
  away('length', 'head', 'tail', length);
  away('to front', 'bore Y', 'front', -vary(25, 16, 4));
  away('to back', 'bore Y', 'back', vary(25, 16, 5));
  away('rib to front', 'bore Y', 'rib front', '-"to back" / 4');
  away('rib to back', 'bore Y', 'rib back', '"to back" / 4');
  away(
    'height of bore',
    'foot',
    'bore Z',
    p > 0 && p % 4 === 0 ? `"height of bore" of "casting ${p - 1}"` : vary(38, 25, 6),
  );
  away('floor at', 'foot', 'floor', vary(12, 4, 7));
  away('top at', 'bore Z', 'top', vary(22, 6, 8));
  const boss = size('boss', 'diameter', vary(44, 8, 9));
  const rim = size('rim diameter', 'diameter', vary(70, 40, 10));
  const bore = size('bore', 'diameter', vary(20, 6, 11));
  const bolt = size('bolt', 'diameter', 9);
  const circle = size('bolt circle', 'diameter', '"rim diameter" - 18 mm');
  const count = size('bolts', 'count', '4');
  const s = (name: string): StationId => stations.get(name)!;
  let b = 0;
  const body = (name: string, shape: Body['shape'], more: Partial<Body> = {}): BodyId => {
    const id = idOf('body', p * 20 + b) as BodyId;
    records.push({
      kind: 'body',
      id,
      part,
      name,
      adds: true,
      finish: 'as cast',
      shape,
      repeats: [],
      note: '',
      order: b++,
      ...more,
    });
    return id;
  };
  const centre: [StationId, StationId] = [s('bore Y'), s('bore Z')];
  body('base', {
    type: 'block',
    x: [s('head'), s('tail')],
    y: [s('front'), s('back')],
    z: [s('foot'), s('floor')],
  });
  body('bearing', { type: 'cylinder', axis: 'X', ends: [s('head'), s('tail')], centre, diameter: boss });
  body('flange', { type: 'cylinder', axis: 'X', ends: [s('head'), s('rim')], centre, diameter: rim });
  body('web', {
    type: 'block',
    x: [s('rim'), s('web')],
    y: [s('rib front'), s('rib back')],
    z: [s('floor'), s('bore Z')],
  });
  body('cheek', {
    type: 'prism',
    axis: 'X',
    ends: [s('rim'), s('web')],
    corners: [{ at: [s('front'), s('floor')] }, { at: [s('back'), s('floor')] }, { at: [s('bore Y'), s('top')] }],
  });
  const bored = body(
    'bored',
    { type: 'cylinder', axis: 'X', ends: [s('head'), s('tail')], centre, diameter: bore },
    { adds: false, finish: 'machined' },
  );
  const holes = body(
    'bolt holes',
    { type: 'hole', axis: 'X', from: s('head'), to: s('rim'), centre, diameter: bolt },
    {
      adds: false,
      finish: 'machined',
      repeats: [{ type: 'circle', axis: 'X', centre, count, circle }],
    },
  );
  const at = (station: string, beyond = '') => ({ station: s(station), beyond });
  const written = (text: string) => ({ written: text });
  const setupId = (k: number) => idOf('setup', p * SETUPS_PER_PART + k) as SetupId;
  const setup = (k: number, over: Partial<Setup>): void => {
    const id = setupId(k);
    setups.push(id);
    records.push({
      ...defaultSetup(id, part, `set-up ${k}`, k),
      line: { axis: 'X', through: centre },
      allowance: '3',
      ...over,
    });
  };
  let o = 0;
  const operation = (k: number, name: string, process: Parameters<typeof defaultOperation>[3], over: object): void => {
    const id = idOf('operation', p * 20 + o) as OperationId;
    records.push({ ...defaultOperation(id, part, name, process, o++), setup: setupId(k), ...over });
  };
  const tool = (diameter: string, overhang: string) => ({
    edge: 'HSS' as const,
    diameter: written(diameter),
    overhang,
    teeth: 1,
    angle: '',
  });
  const lathe = machines[p % 3 === 2 ? 1 : 0]!;
  setup(0, { machine: lathe, holding: { as: 'face plate', seat: at('head'), tailCentre: false } });
  operation(0, 'bore', 'bore', {
    makes: [bored],
    cut: { ends: [at('head'), at('tail')], diameter: { size: bore, written: '' }, inner: written('') },
    tool: tool('16', '180'),
  });
  setup(1, {
    machine: lathe,
    state: { is: 'after', operation: idOf('operation', p * 20) as OperationId },
    holding: { as: 'between centres' },
    fixtures: [
      {
        name: 'arbor',
        what: 'arbor',
        ends: [at('head', '-40'), at('tail', '40')],
        shape: { is: 'round', diameter: { size: bore, written: '' } },
        material: 'mild steel',
        mass: '',
      },
      {
        name: 'dog',
        what: 'driving dog',
        ends: [at('head', '-35'), at('head', '-20')],
        shape: {
          is: 'block',
          across: [
            ['-20', '20'],
            ['-20', '45'],
          ],
        },
        material: 'mild steel',
        mass: '',
      },
    ],
  });
  operation(1, 'face the rim', 'face', {
    makes: [s('rim')],
    cut: { ends: [at('rim'), at('rim')], diameter: { size: rim, written: '' }, inner: { size: boss, written: '' } },
    tool: tool('12', '35'),
  });
  operation(1, 'turn the boss', 'turn', {
    makes: [boss],
    cut: { ends: [at('web'), at('tail')], diameter: { size: boss, written: '' }, inner: written('') },
    tool: tool('12', '25'),
  });
  setup(2, {
    machine: lathe,
    headEnd: 'high',
    holding: {
      as: 'four-jaw chuck',
      ends: [at('tail'), at('tail', '-25')],
      diameter: { size: boss, written: '' },
      inside: false,
      tailCentre: false,
    },
  });
  operation(2, 'face the flange', 'face', {
    makes: [s('head')],
    cut: { ends: [at('head'), at('head')], diameter: { size: rim, written: '' }, inner: { size: bore, written: '' } },
    tool: tool('12', '30'),
  });
  setup(3, { machine: machines[2]!, holding: { as: 'clamped to the table', seat: at('tail') } });
  operation(3, 'drill the flange', 'drill', {
    makes: [holes],
    cut: { ends: [at('head'), at('rim')], diameter: { size: bolt, written: '' }, inner: written('') },
    tool: tool('9', '90'),
  });
  setup(4, {
    machine: machines[3]!,
    holding: { as: 'clamped to the table', seat: { station: s('foot'), beyond: '' } },
  });
  operation(4, 'shape the foot', 'shape', {
    makes: [s('floor')],
    cut: { ends: [at('head'), at('tail')], diameter: written('90'), inner: written('') },
    tool: tool('16', '40'),
  });
}
