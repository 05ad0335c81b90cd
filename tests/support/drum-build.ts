import type { BodyId, MachineId, OperationId, SetupId } from '../../src/shared/base/ids.ts';
import type { Body, Shape } from '../../src/shared/build/body.ts';
import { defaultMachine, type Machine } from '../../src/shared/build/machine.ts';
import { defaultOperation, type Operation } from '../../src/shared/build/operation.ts';
import type { BuildRecord } from '../../src/shared/build/records.ts';
import { defaultSetup, type Setup } from '../../src/shared/build/setup.ts';
import { dimensionId, partId, sketch, stationId } from './sketch-build.ts';

const drum = partId('drum');
/** The corner of the flange reaches √(80² + 20²) = 82.462 mm from the line: 2.462 mm more than the bed allows. */
export const FLANGE_CORNER = Math.hypot(80, 20);

const figures = {
  swingOverSaddle: '156 mm',
  swingOverCrossSlide: '100 mm',
  betweenCentres: '350 mm',
  tailOverhang: '0 mm',
  barrelTravel: '80 mm',
  barrelDiameter: '26 mm',
  tailCentreLength: '30 mm',
  headCentreLength: '35 mm',
  crossTravel: '100 mm',
  toolHeight: '14 mm',
  saddleHead: '60 mm',
  saddleTail: '70 mm',
  crossSlideWidth: '60 mm',
  toolBlockWidth: '40 mm',
  toolOverhang: '60 mm',
  slowestRpm: '80 rpm',
  fastestRpm: '1600 rpm',
  power: '0.37 kW',
} as const;

const lathe = (name: string, order: number, over: Readonly<Record<string, string>>): Machine => ({
  ...defaultMachine(`machine:${name}` as MachineId, name, 'lathe', order),
  figures: { ...figures, ...over },
});

/**
 * A drum on a flange that is too long for the smaller of two lathes: the flange hits the bed, and the cross slide where the
 * drum is turned. One set-up more names a line that nothing places.
 */
export function drumBuild(): readonly BuildRecord[] {
  const s = sketch().settings({ name: 'Winding drum' }).part('drum', { make: 'cast', material: 'EN-GJL-200' });
  s.station('foot', { datum: true }, 'Z').station('flange top', {}, 'Z').station('top', {}, 'Z');
  s.station('middle', { datum: true, form: 'centreline' }, 'X').station('left', {}, 'X').station('right', {}, 'X');
  s.station('lost line', { form: 'centreline' }, 'X');
  s.station('centre', { datum: true, form: 'centreline' }, 'Y').station('front', {}, 'Y').station('rear', {}, 'Y');
  s.between('flange thickness', 'foot', 'flange top', '20').between('height', 'foot', 'top', '120');
  s.between('flange reach', 'middle', 'right', '80', { limits: '±0.1' });
  s.between('other reach', 'middle', 'left', '-"flange reach"');
  s.between('half breadth', 'centre', 'rear', '20').between('other breadth', 'centre', 'front', '-"half breadth"');
  s.size('drum diameter', 'diameter', '50');
  const body = (name: string, order: number, shape: Shape): Body => ({
    kind: 'body',
    id: `body:${name}` as BodyId,
    part: drum,
    name,
    adds: true,
    finish: 'as cast',
    shape,
    repeats: [],
    note: '',
    order,
  });
  const bodies: readonly Body[] = [
    body('flange', 1, {
      type: 'block',
      x: [stationId('left'), stationId('right')],
      y: [stationId('front'), stationId('rear')],
      z: [stationId('foot'), stationId('flange top')],
    }),
    body('barrel', 2, {
      type: 'cylinder',
      axis: 'Z',
      centre: [stationId('middle'), stationId('centre')],
      ends: [stationId('flange top'), stationId('top')],
      diameter: dimensionId('drum diameter'),
    }),
  ];
  const small = lathe('Small lathe', 1, { swingOverBed: '160 mm' });
  const large = lathe('Large lathe', 2, {
    swingOverBed: '330 mm',
    swingOverSaddle: '300 mm',
    swingOverCrossSlide: '200 mm',
  });
  const place = (name: string, beyond = '') => ({ station: stationId(name), beyond });
  const between: Setup = {
    ...defaultSetup('setup:between' as SetupId, drum, 'barrel between centres', 1),
    machine: small.id,
    line: { axis: 'Z', through: [stationId('middle'), stationId('centre')] },
    state: { is: 'finished' },
    fixtures: [
      {
        name: 'arbor',
        what: 'arbor',
        ends: [place('foot', '-40 mm'), place('top', '40 mm')],
        shape: { is: 'round', diameter: { written: '16 mm' } },
        material: 'mild steel',
        mass: '',
      },
    ],
  };
  const lost: Setup = {
    ...between,
    id: 'setup:lost' as SetupId,
    name: 'about a line that is lost',
    line: { axis: 'Z', through: [stationId('lost line'), stationId('centre')] },
    fixtures: [],
    order: 2,
  };
  const turn: Operation = {
    ...defaultOperation('operation:turn' as OperationId, drum, 'turn the barrel', 'turn', 1),
    setup: between.id,
    makes: [dimensionId('drum diameter')],
    cut: {
      ends: [place('flange top'), place('top')],
      diameter: { size: dimensionId('drum diameter'), written: '' },
      inner: { written: '' },
    },
  };
  return renamed([...s.records(), small, large, ...bodies, between, lost, turn]);
}

/** Gives every id the form that files want, whatever a sketch calls it. */
function renamed(records: readonly BuildRecord[]): readonly BuildRecord[] {
  let count = 0;
  const ids = new Map<string, string>();
  for (const { id, kind } of records) {
    if (kind !== 'settings') ids.set(id, `${kind}:drum${String(++count).padStart(6, '0')}`);
  }
  return JSON.parse(JSON.stringify(records), (_, value: unknown) =>
    typeof value === 'string' ? (ids.get(value) ?? value) : value,
  ) as readonly BuildRecord[];
}
