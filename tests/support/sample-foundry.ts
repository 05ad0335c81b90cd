import type { OwnAlloy } from '../../src/shared/build/alloy.ts';
import type { Body } from '../../src/shared/build/body.ts';
import { type Casting, defaultCasting } from '../../src/shared/build/casting.ts';
import type { Dimension } from '../../src/shared/build/dimension.ts';
import { defaultMachine, type Machine } from '../../src/shared/build/machine.ts';
import type { Part } from '../../src/shared/build/part.ts';
import { defaultPattern, type Pattern } from '../../src/shared/build/pattern.ts';
import { defaultJournal, defaultPour, type Pour } from '../../src/shared/build/pour.ts';
import type { BuildRecord } from '../../src/shared/build/records.ts';
import type { Station } from '../../src/shared/build/station.ts';
import { samplePlans } from './sample-plans.ts';

const machine = (name: string, type: Machine['type'], order: number): Machine =>
  defaultMachine(`machine:${name}` as Machine['id'], name, type, order);

const furnace = machine('furnace', 'furnace', 11);
const crucible: Machine = { ...machine('crucible', 'crucible', 12), figures: { capacity: '1.2 l' } };
const flask = machine('flask', 'flask', 13);
const bow = machine('bow', 'hot-wire bow', 14);

const ownAlloy: OwnAlloy = {
  kind: 'alloy',
  id: 'alloy:pistons' as OwnAlloy['id'],
  // Begins like an id, and is none.
  name: 'alloy:piston scrap',
  family: 'aluminium',
  figures: { liquidusC: 0.1 + 575.2, solidusC: 540, contractionUsual: 1.1 },
  source: 'pattern:measured on two bars',
};

const arm = 'part:arm' as Part['id'];
const cap = 'part:cap' as Part['id'];
const at = (name: string, beyond = '') => ({ station: `station:arm-${name}` as Station['id'], beyond });
const boss = 'body:arm-boss' as Body['id'];

/** A casting with everything that one can have, free texts that begin like ids among it. */
export const fullCasting: Casting = {
  ...defaultCasting('casting:arm' as Casting['id'], arm),
  moulding: 'split pattern in green sand',
  contraction: ['1.3', '13 mm/m', 'station:about'],
  stockGrade: 'G',
  stock: [
    { station: at('left').station, written: '3' },
    { station: at('foot').station, written: 'body:four' },
  ],
  sizeStock: [{ size: 'dimension:arm-bore' as Dimension['id'], written: '2.5' }],
  copeExtra: '1',
  up: '-Z',
  parting: at('foot', '2'),
  draft: '2',
  closeUnder: '1/2',
  coating: '0.5 mm',
  glueJoint: '0.1',
  prints: [{ body: boss, ends: ['20', 'part:x'] }],
  lugs: [
    {
      name: 'station:lug',
      axis: 'X',
      ends: [at('left', '-20'), at('left')],
      across: [
        [at('mid', '-8'), at('mid', '8 mm')],
        [at('axis', '-8'), at('axis', 'part:y')],
      ],
    },
  ],
  boards: [{ name: 'station:blue', thickness: '50', length: '1200 mm', width: '600', count: 3 }],
  foamDensity: '20',
  sectionAxis: 'X',
  bow: bow.id,
  flask: flask.id,
  note: 'part:none',
};

const plainCasting = defaultCasting('casting:cap' as Casting['id'], cap);

const fullPattern: Pattern = {
  ...defaultPattern('pattern:arm1' as Pattern['id'], arm, 'pattern:first', 0.1 + 0.2),
  measured: [
    { of: 'dimension:arm-left-right', value: '81.1' },
    { of: 'box:X', value: '90 mm' },
    { of: 'dimension:long gone', value: 'dimension:text' },
  ],
  cast: [{ of: 'dimension:arm-left-right', value: '80' }],
  trials: [{ what: 'station:over the bed', fits: true, at: '2026-05-01T10:00:00Z', note: 'body:tight' }],
  bare: '0.240 kg',
  scaleStep: '1 g',
  rule: { percent: '0.2', hours: '3' },
  plaster: true,
  weighings: [
    { at: '2026-05-01T18:00:00Z', mass: '0.490 kg', where: 'part:boiler room' },
    { at: '2026-05-02T06:00:00.125Z', mass: '0.402', where: '' },
  ],
  takenOn: 'machine:no oven',
  note: '',
};
const secondPattern = defaultPattern('pattern:arm2' as Pattern['id'], arm, 'second', 2);

export const firstPour: Pour = {
  ...defaultPour('pour:one' as Pour['id'], 'pour:one', 1),
  castings: [
    { part: arm, count: 2, up: '-Z', pattern: fullPattern.id },
    { part: cap, count: 1 },
  ],
  alloy: ownAlloy.name,
  furnace: furnace.id,
  crucible: crucible.id,
  flask: flask.id,
  temperature: '740',
  ambient: '12 °C',
  gating: {
    spot: 'bottom',
    sprueHeight: '150',
    sprueTop: '20',
    sprueFoot: '14 mm',
    runnerWidth: '12',
    runnerHeight: '10',
    runnerLength: '80',
    gateWidth: '20',
    gateHeight: '4',
    gateLength: '15',
    gates: 2,
    cupVolume: '0.2 l',
    hollow: true,
  },
  risers: [
    { name: 'body:riser', on: boss, diameter: '30', height: '45 mm' },
    { name: 'loose', diameter: '', height: '' },
  ],
  inserts: [
    {
      name: 'part:arbor',
      part: cap,
      mass: '',
      material: 'pattern:steel',
      preheat: '250',
      length: '40',
      around: boss,
      stays: true,
    },
    { name: 'chill', mass: '0.2 kg', material: '', preheat: '', length: '', stays: false },
  ],
  overflow: '0.5',
  loss: '2 %',
  heel: '0.1 kg',
  copeWeight: '5',
  coverAbove: '80',
  coverAround: '50 mm',
  sandDensity: '1600',
  journal: {
    ...defaultJournal('2026-05-03T09:30:00Z'),
    temperature: '712',
    charged: '2.9 kg',
    meltMinutes: '35',
    weather: 'part:rain',
    result: 'scrap',
    defects: ['misrun', 'cold-shut'],
    note: 'body:seam half way up',
    change: 'preheat the arbor',
  },
  note: 'station:under the roof',
};

/** The next attempt, planned from the first. */
export const secondPour: Pour = {
  ...defaultPour('pour:two' as Pour['id'], 'second attempt', 2),
  castings: [{ part: arm, count: 1, pattern: secondPattern.id }],
  crucible: crucible.id,
  after: firstPour.id,
};

/** What the foundry adds to the sample of plans: an alloy, machines, castings, patterns and pours, with all that they can name. */
export const foundryRecords: readonly BuildRecord[] = [
  ownAlloy,
  furnace,
  crucible,
  flask,
  bow,
  fullCasting,
  plainCasting,
  fullPattern,
  secondPattern,
  firstPour,
  secondPour,
];

export const sampleFoundry = (): readonly BuildRecord[] => [...samplePlans(), ...foundryRecords];
