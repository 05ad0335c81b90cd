import type { Body } from '../../src/shared/build/body.ts';
import { type Dimension, defaultDimension, type SizeForm } from '../../src/shared/build/dimension.ts';
import { defaultMachine, type Machine } from '../../src/shared/build/machine.ts';
import { defaultOperation, type Operation } from '../../src/shared/build/operation.ts';
import { defaultPart } from '../../src/shared/build/part.ts';
import type { BuildRecord } from '../../src/shared/build/records.ts';
import { defaultSettings } from '../../src/shared/build/settings.ts';
import { defaultSetup, type Holding, type Setup } from '../../src/shared/build/setup.ts';
import { type Axis, defaultStation, type Station } from '../../src/shared/build/station.ts';

const station = (part: string, axis: Axis, name: string, order: number, datum = false): Station => ({
  ...defaultStation(`station:${part}-${name}` as Station['id'], `part:${part}` as Station['part'], axis, name, order),
  datum,
});

const size = (part: string, name: string, form: SizeForm, value: string, order: number): Dimension => ({
  ...defaultDimension(
    `dimension:${part}-${name}` as Dimension['id'],
    `part:${part}` as Dimension['part'],
    name,
    { type: 'size', form },
    order,
  ),
  value,
});

const between = (part: string, from: string, to: string, value: string, order: number): Dimension => ({
  ...defaultDimension(
    `dimension:${part}-${from}-${to}` as Dimension['id'],
    `part:${part}` as Dimension['part'],
    `${from} to ${to}`,
    {
      type: 'between',
      from: `station:${part}-${from}` as Station['id'],
      to: `station:${part}-${to}` as Station['id'],
    },
    order,
  ),
  value,
});

/** A part with three axes, a length along X, a bore, a pitch and one body on them. */
function pieceOf(part: string): readonly BuildRecord[] {
  const at = (name: string) => `station:${part}-${name}` as Station['id'];
  const body: Body = {
    kind: 'body',
    id: `body:${part}-boss` as Body['id'],
    part: `part:${part}` as Body['part'],
    name: 'boss',
    adds: true,
    finish: 'as cast',
    shape: {
      type: 'cylinder',
      axis: 'X',
      ends: [at('left'), at('right')],
      centre: [at('mid'), at('axis')],
      diameter: `dimension:${part}-bore` as Dimension['id'],
    },
    repeats: [],
    note: '',
    order: 1,
  };
  return [
    defaultPart(`part:${part}` as Station['part'], part, 1),
    station(part, 'X', 'left', 1, true),
    station(part, 'X', 'right', 2),
    station(part, 'Y', 'mid', 3, true),
    station(part, 'Z', 'axis', 4, true),
    station(part, 'Z', 'foot', 5),
    between(part, 'left', 'right', '80', 1),
    between(part, 'axis', 'foot', '-40', 2),
    size(part, 'bore', 'diameter', '25', 3),
    size(part, 'pitch', 'angle', '30', 4),
    size(part, 'wall', 'length', '6', 5),
    body,
  ];
}

export const sampleLathe: Machine = {
  ...defaultMachine('machine:lathe00001' as Machine['id'], 'big lathe', 'lathe', 0.1 + 0.2),
  figures: { swingOverBed: '250 mm', swingOverSaddle: '9"', power: '1/2 hp', unheardOf: 'kept all the same' },
  bed: [
    { across: '-90', down: '125' },
    { across: '90', down: '125 mm' },
  ],
  // Begins like an id, and is none.
  note: 'machine:notanid',
};
const drill = defaultMachine('machine:drill00001' as Machine['id'], 'drill', 'drill press', 2);

const at = (name: string, beyond = '') => ({ station: `station:arm-${name}` as Station['id'], beyond });
const bore = { size: 'dimension:arm-bore' as Dimension['id'], written: '' };
const both = [at('left'), at('right', '-2')] as [ReturnType<typeof at>, ReturnType<typeof at>];

/** Each way of holding, with all that it can name. */
const everyHolding: readonly Holding[] = [
  { as: 'between centres' },
  { as: 'three-jaw chuck', ends: both, diameter: bore, inside: true, tailCentre: false },
  { as: 'four-jaw chuck', diameter: { written: '30' }, inside: false, tailCentre: true },
  { as: 'face plate', seat: at('left'), tailCentre: false },
  { as: 'steady', at: at('right', '-5 mm'), diameter: bore },
  { as: 'vise', ends: [at('axis'), at('foot')], depth: { size: 'dimension:arm-wall' as Dimension['id'], written: '' } },
  { as: 'clamped to the table', seat: at('foot') },
];

const setups: readonly Setup[] = everyHolding.map((holding, i) => ({
  ...defaultSetup(`setup:arm${i}` as Setup['id'], 'part:arm' as Setup['part'], `set-up ${i}`, i + 1),
  holding,
}));

const through: [Station['id'], Station['id']] = [at('mid').station, at('axis').station];

/** A set-up with everything that one can have, free texts that begin like ids among it. */
const full: Setup = {
  ...defaultSetup('setup:full' as Setup['id'], 'part:arm' as Setup['part'], 'setup:full', 1 / 3),
  machine: sampleLathe.id,
  state: { is: 'after', operation: 'operation:face' as Operation['id'] },
  allowance: '3',
  fellows: [
    {
      part: 'part:cap' as Setup['part'],
      state: { is: 'after', operation: 'operation:cap' as Operation['id'] },
      turn: ['+Y', '-X', '+Z'],
      meets: [
        [at('left').station, 'station:cap-mid' as Station['id']],
        [at('mid').station, 'station:cap-left' as Station['id']],
        [at('axis').station, 'station:cap-axis' as Station['id']],
      ],
    },
  ],
  fixtures: [
    {
      name: 'station:arbor',
      what: 'arbor',
      ends: [at('left', '-20'), at('right', '20')],
      shape: { is: 'round', diameter: bore },
      material: 'dimension:steel',
      mass: '',
    },
    {
      name: 'lug',
      what: 'lug',
      ends: [at('left', 'part:x'), at('right')],
      shape: {
        is: 'block',
        across: [
          ['station:no', '10'],
          ['-5', '5 mm'],
        ],
      },
      material: '',
      mass: '0.2 kg',
    },
  ],
  line: { axis: 'X', through },
  headEnd: 'high',
  holding: everyHolding[1]!,
  minutes: '25',
  note: 'part:none',
};

const face: Operation = {
  ...defaultOperation('operation:face' as Operation['id'], 'part:arm' as Setup['part'], 'face left', 'face', 1),
  setup: setups[1]!.id,
  makes: [at('left').station, 'body:arm-boss' as Body['id']],
  leaves: '0.5',
};

const bored: Operation = {
  ...defaultOperation('operation:bore' as Operation['id'], 'part:arm' as Setup['part'], 'bore', 'bore', 2),
  setup: full.id,
  makes: ['dimension:arm-bore' as Dimension['id']],
  from: [at('left').station, 'dimension:arm-left-right' as Dimension['id']],
  after: [face.id],
  cut: { ends: [at('left', '-3'), at('right', '3')], diameter: bore, inner: { written: '20' } },
  tool: { edge: 'carbide', diameter: bore, overhang: '90', teeth: 1, angle: '75' },
  chosen: { speed: 'station:80 m/min', rpm: '200', feed: '0.1', depth: '0.5', minutes: '1 h' },
  note: '',
};

/** The fellow's own, done in a set-up of the first part. */
const capped: Operation = {
  ...defaultOperation('operation:cap' as Operation['id'], 'part:cap' as Setup['part'], 'bore cap', 'bore', 1),
  setup: full.id,
};

/** A build with machines, a set-up of each way of holding, one with everything, and operations that point at each other. */
export const samplePlans = (): readonly BuildRecord[] => [
  defaultSettings('Plans'),
  sampleLathe,
  drill,
  ...pieceOf('arm'),
  ...pieceOf('cap'),
  full,
  ...setups,
  face,
  bored,
  capped,
];
