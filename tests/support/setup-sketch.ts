import type { DimensionId, MachineId, OperationId, PartId, SetupId, StationId } from '../../src/shared/base/ids.ts';
import type { Amount, Place } from '../../src/shared/build/amount.ts';
import type { Body } from '../../src/shared/build/body.ts';
import { bodiesOf, buildOf, machinesOf, operationsOf, settingsOf } from '../../src/shared/build/look-up.ts';
import { defaultMachine, type Machine } from '../../src/shared/build/machine.ts';
import { defaultOperation, type Operation, type Process } from '../../src/shared/build/operation.ts';
import type { Build, BuildRecord } from '../../src/shared/build/records.ts';
import { defaultSetup, type Fixture, type Setup } from '../../src/shared/build/setup.ts';
import { type Axis, axes, defaultStation } from '../../src/shared/build/station.ts';
import { createDrawing } from '../../src/shared/drawing/create-drawing.ts';
import type { SetupCheck, Verdict, VerdictKind } from '../../src/shared/machining/setup-check.ts';
import { type Checked, checkSetup } from '../../src/shared/machining/setups/check-setup.ts';
import type { SetupInput } from '../../src/shared/machining/setups/setup-input.ts';
import { numbersOf } from '../../src/shared/plan/numbers.ts';
import { placeBodies } from '../../src/shared/solid/place-bodies.ts';
import type { PartFigures } from '../../src/shared/solid/solids.ts';
import { materialNamed } from '../../src/shared/tables/materials.ts';
import { type BodySketch, sketchBodies } from './sketch-bodies.ts';

export const theMachine = 'machine:lathe' as MachineId;
const theSetup = 'setup:one' as SetupId;

/** A lathe of 100 mm height of centres with round figures, every one known. */
export const latheFigures: Machine['figures'] = {
  swingOverBed: '200',
  swingOverSaddle: '180',
  swingOverCrossSlide: '110',
  betweenCentres: '400',
  tailOverhang: '0',
  barrelTravel: '60',
  barrelDiameter: '30',
  tailCentreLength: '40',
  headCentreLength: '50',
  spindleBore: '20',
  facePlateDiameter: '180',
  facePlateFace: '25',
  threeJawDiameter: '100',
  threeJawLength: '80',
  threeJawDepth: '20',
  threeJawLeast: '3',
  threeJawMost: '90',
  threeJawInsideLeast: '30',
  threeJawInsideMost: '80',
  fourJawDiameter: '120',
  fourJawLength: '75',
  fourJawDepth: '25',
  fourJawLeast: '6',
  fourJawMost: '110',
  jawReach: '10',
  steadyLeast: '10',
  steadyMost: '60',
  steadyWidth: '20',
  crossTravel: '90',
  topSlideTravel: '50',
  toolHeight: '15',
  saddleHead: '60',
  saddleTail: '70',
  crossSlideWidth: '80',
  toolBlockWidth: '50',
  toolOverhang: '20',
  slowestRpm: '100',
  fastestRpm: '2000',
};

export interface SetupSketch extends BodySketch {
  /** Another part, to be held together with the first. */
  fellow(key: string): BodySketch;
  /** A station that no dimension places. */
  loose(axis: Axis, name: string): StationId;
  /** The diameter (or other size) so large, as an amount. */
  amount(value: number): Amount;
  place(axis: Axis, mm: number, beyond?: string): Place;
  machine(figures: Machine['figures'], over?: Partial<Machine>): Machine;
  setup(over: Partial<Setup>): Setup;
  operation(name: string, process: Process, over?: Partial<Operation>): Operation;
  build(): Build;
  check(figures?: PartFigures): SetupCheck;
  checked(figures?: PartFigures): Checked;
  verdict(kind: VerdictKind, operation?: string): Verdict | undefined;
}

/** A part with bodies put into a machine; turns about X through Y = Z = 0 unless said otherwise. */
export function sketchSetup(): SetupSketch {
  const bodies = sketchBodies('b');
  const others: BuildRecord[] = [];
  const fellows: BodySketch[] = [];
  let order = 0;
  for (const axis of axes) bodies.at(axis, 0);
  const push = <R extends BuildRecord>(record: R): R => {
    others.push(record);
    return record;
  };
  const sketch: SetupSketch = {
    ...bodies,
    records: () => {
      // The settings are those of the first part's sketch.
      const held = fellows.flatMap((one) => one.records().filter(({ kind }) => kind !== 'settings'));
      return [...bodies.records(), ...held, ...others];
    },
    fellow(key) {
      const other = sketchBodies(key);
      for (const axis of axes) other.at(axis, 0);
      fellows.push(other);
      return other;
    },
    loose: (axis, name) => push(defaultStation(stationOf(axis, name), bodies.part.id, axis, name, 900)).id,
    amount: (value) => ({ size: bodies.size('diameter', value), written: '' }),
    place: (axis, mm, beyond = '') => ({ station: bodies.at(axis, mm), beyond }),
    machine: (figures, over = {}) =>
      push({ ...defaultMachine(over.id ?? theMachine, 'lathe', 'lathe', ++order), figures, ...over }),
    setup: (over) =>
      push({
        ...defaultSetup(theSetup, bodies.part.id, 'one', ++order),
        machine: theMachine,
        line: { axis: 'X', through: [bodies.at('Y', 0), bodies.at('Z', 0)] },
        ...over,
      }),
    operation: (name, process, over = {}) =>
      push({
        ...defaultOperation(`operation:${name}` as OperationId, bodies.part.id, name, process, ++order),
        setup: theSetup,
        ...over,
      }),
    build: () => buildOf(sketch.records()),
    checked: (figures) => checkSetup(setupInputOf(sketch.build(), theSetup, figures)),
    check: (figures) => sketch.checked(figures).check,
    verdict: (kind, operation) =>
      sketch
        .check()
        .verdicts.find(
          (one) => one.kind === kind && (operation === undefined || one.operation === `operation:${operation}`),
        ),
  };
  return sketch;
}

/** All that a set-up of a build is worked out from. */
function setupInputOf(build: Build, id: SetupId, figures?: PartFigures): SetupInput {
  const drawing = createDrawing(build);
  const setup = build.get(id);
  if (setup?.kind !== 'setup') throw new Error(`no set-up ${id}`);
  const get = (record: BuildRecord['id']) => build.get(record);
  return {
    setup,
    numbers: numbersOf(drawing, get),
    lengthUnit: settingsOf(build).lengthUnit,
    machines: machinesOf(build),
    partOf(part: PartId) {
      const record = build.get(part);
      if (record?.kind !== 'part') return undefined;
      return {
        part: record,
        bodies: placeBodies(part, { bodies: bodiesOf(build, part), get }, drawing),
        operations: operationsOf(build, part),
        figures,
        material: materialNamed(record.material, []),
      };
    },
    materialNamed: (name) => materialNamed(name, []),
  };
}

/** A round fixture about the line. */
export const roundFixture = (
  name: string,
  what: Fixture['what'],
  ends: readonly [Place, Place],
  diameter: string,
  over: Partial<Fixture> = {},
): Fixture => ({
  name,
  what,
  ends: [...ends],
  shape: { is: 'round', diameter: { written: diameter } },
  material: '',
  mass: '',
  ...over,
});

export const stationOf = (axis: Axis, mm: number | string): StationId => `station:b-${axis}${mm}` as StationId;
export const dimensionOf = (name: string): DimensionId => `dimension:b-${name}` as DimensionId;

type Pair = readonly [number, number];

/** A block along X, Y and Z. */
export const block = (s: BodySketch, x: Pair, y: Pair, z: Pair): Body =>
  s.body({
    type: 'block',
    x: [s.at('X', x[0]), s.at('X', x[1])],
    y: [s.at('Y', y[0]), s.at('Y', y[1])],
    z: [s.at('Z', z[0]), s.at('Z', z[1])],
  });

/** A cylinder along X. */
export const round = (s: BodySketch, x: Pair, diameter: number, centre: Pair = [0, 0]): Body =>
  s.body({
    type: 'cylinder',
    axis: 'X',
    ends: [s.at('X', x[0]), s.at('X', x[1])],
    centre: [s.at('Y', centre[0]), s.at('Z', centre[1])],
    diameter: s.size('diameter', diameter),
  });

/** A cut from without, at one diameter. */
export const turn = (
  s: SetupSketch,
  name: string,
  from: number,
  to: number,
  diameter: number,
  over: Partial<Operation> = {},
): Operation =>
  s.operation(name, 'turn', {
    cut: {
      ends: [s.place('X', from), s.place('X', to)],
      diameter: { written: String(diameter) },
      inner: { written: '' },
    },
    ...over,
  });

/** What is there, what is needed and what comes of it, of one verdict. */
export function figures(s: SetupSketch, kind: VerdictKind, operation?: string) {
  const verdict = s.verdict(kind, operation);
  return verdict && { has: verdict.has, needs: verdict.needs, state: verdict.state };
}
