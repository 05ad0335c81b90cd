import type { BodyId, DimensionId, MachineId, OperationId, SetupId } from '../../src/shared/base/ids.ts';
import { defaultMachine, type Machine } from '../../src/shared/build/machine.ts';
import { defaultSetup } from '../../src/shared/build/setup.ts';
import type { SetupFacts } from '../../src/shared/check/setup-sentences.ts';
import type { SetupCheck, Verdict, VerdictKind } from '../../src/shared/machining/setup-check.ts';
import type { SetupFact } from '../../src/shared/machining/setups/setup-fact.ts';
import { part, partId, settings } from './facts.ts';

export const setupId = (name: string): SetupId => `setup:${name}` as SetupId;
export const machineId = (name: string): MachineId => `machine:${name}` as MachineId;
const operationId = (name: string): OperationId => `operation:${name}` as OperationId;
const boss = 'body:boss' as BodyId;
const height = 'dimension:height' as DimensionId;

/** A lathe that was held against itself. */
export const lathe = (over: Partial<Machine> = {}): Machine => ({
  ...defaultMachine(machineId('lathe'), 'small lathe', 'lathe', 1),
  ...over,
});

/** A verdict of which 93.2 mm are needed and 90 mm are there, at 41 mm, by the boss and its height. */
export const verdict = (kind: VerdictKind, over: Partial<Verdict> = {}): Verdict => ({
  kind,
  state: 'hits',
  operation: undefined,
  margin: -3.2,
  has: 90,
  needs: 93.2,
  band: { minus: -0.5, plus: 0.5 },
  at: 41,
  carriedBy: { is: 'body', part: partId('column'), body: boss, copy: 0 },
  shares: [{ dimension: height, sensitivity: 1, minus: -0.5, plus: 0.5 }],
  unknown: [],
  remedies: [{ is: 'end-for-end' }],
  ...over,
});

/** A set-up of the column with what its check says. */
export function setupFactOf(check: Partial<SetupCheck> = {}, over: Partial<SetupFact> = {}): SetupFact {
  const setup = {
    ...defaultSetup(setupId('first'), partId('column'), 'first setting', 1),
    machine: machineId('lathe'),
  };
  return {
    check: {
      setup,
      profile: undefined,
      extent: undefined,
      verdicts: [],
      unknown: [],
      balance: undefined,
      balanceUnknown: [],
      ...check,
    },
    machine: lathe(),
    names: { [boss]: 'boss', [height]: 'pivot height', [operationId('turn')]: 'turn the barrel' },
    figures: { [`${machineId('lathe')} swingOverBed`]: 'Swing over bed' },
    kinds: { [height]: 'length' },
    slowestRpm: undefined,
    operations: [operationId('turn')],
    ...over,
  };
}

/** What rules of set-ups are given: of a drawing without stations. */
export const setupFacts = (...setups: readonly SetupFact[]): SetupFacts => ({
  settings: settings(),
  part: part('column'),
  stations: [],
  axes: [],
  setups,
});

/** The ids that a verdict's finding points at, and its figures. */
export const hitAt = [setupId('first'), boss, height] as const;
export const hitData = (ways: string) => ({
  part: 'column',
  setup: 'first setting',
  machine: 'small lathe',
  cut: '',
  place: ' at 41 mm along X',
  carrier: ', carried by boss and pivot height',
  ways,
  overMm: 3.2,
  hasMm: 90,
  needsMm: 93.2,
});
