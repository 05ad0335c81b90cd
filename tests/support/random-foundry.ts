import { axesAcross } from '../../src/shared/build/body-uses.ts';
import { type Casting, directions, mouldings } from '../../src/shared/build/casting.ts';
import type { AlloyFields } from '../../src/shared/build/commands/alloy-add.ts';
import type { CastingFields } from '../../src/shared/build/commands/casting-set.ts';
import type { PatternFields } from '../../src/shared/build/commands/pattern-add.ts';
import type { PourFields } from '../../src/shared/build/commands/pour-add.ts';
import type { Order } from '../../src/shared/build/commands/registry.ts';
import {
  alloysOf,
  bodiesOf,
  dimensionsOf,
  machinesOf,
  partsOf,
  patternsOf,
  poursOf,
  stationsOf,
} from '../../src/shared/build/look-up.ts';
import type { Machine } from '../../src/shared/build/machine.ts';
import { gateSpots, type PourJournal } from '../../src/shared/build/pour.ts';
import type { Build } from '../../src/shared/build/records.ts';
import { axes } from '../../src/shared/build/station.ts';
import { allowanceGrades } from '../../src/shared/tables/casting.ts';
import type { Dice } from './random-edits.ts';
import { endsOf, of, pick, placeOf, stream, type Throw, written } from './random-plans.ts';

type Next = () => number;

const masses = ['', '0.5 kg', '250 g', '1,2', 'about 2', '0'] as const;
const mass = (next: Next): string => of(masses, next());

/** Now and then no moment at all: that is refused. */
const moment = (next: Next): string => (next() % 12 ? `2026-05-0${1 + (next() % 3)}T06:00:00Z` : 'this morning');

const some = <T>(list: readonly T[], next: Next): T[] => list.filter(() => next() % 3 === 0).slice(0, 4);

/**
 * An order about alloys, castings, patterns, weighings and pours that the throw comes to in this build; some of them are refused,
 * and all of them may be.
 */
export function foundryOrderOf(build: Build, dice: Dice): Order | undefined {
  const next = stream(dice);
  const kind = dice.kind % 40;
  if (kind < 6) return alloyOrderOf(build, kind, next);
  if (kind < 20) {
    const part = pick(partsOf(build), dice.a)?.id;
    if (part === undefined) return undefined;
    const thrown: Throw = { build, part, next };
    return kind < 11
      ? { id: 'casting-set', params: { part, set: castingFieldsOf(thrown) } }
      : patternOrderOf(thrown, kind);
  }
  return pourOrderOf(build, kind - 20, next);
}

function alloyOrderOf(build: Build, kind: number, next: Next): Order {
  const own = pick(alloysOf(build), next());
  const figures =
    next() % 5
      ? { liquidusC: 560 + (next() % 90), contractionUsual: (next() % 30) / 10, solidusC: next() % 2 ? undefined : 540 }
      : { solidusC: 700, liquidusC: 600 };
  const alloy: AlloyFields = {
    name: of(['LM25', 'lm25', 'own mix', 'AlSi12', ' '], next()),
    family: of(['aluminium', 'copper'], next()),
    figures,
    source: '',
  };
  if (kind < 2 || !own) return { id: 'alloy-add', params: { alloy } };
  if (kind < 5) {
    const sets: readonly Partial<AlloyFields>[] = [{ figures }, { name: alloy.name }, { source: 'a bar' }];
    return { id: 'alloy-set', params: { alloy: own.id, set: pick(sets, next())! } };
  }
  return { id: 'alloy-remove', params: { alloy: own.id } };
}

const machineOf = (build: Build, next: Next): Machine['id'] | undefined => pick(machinesOf(build), next())?.id;

function castingFieldsOf(thrown: Throw): CastingFields {
  const { build, part, next } = thrown;
  const up = of(directions, next());
  // Along the way up, or now and then along any axis.
  const draw = next() % 8 ? axes.find((axis) => axis === up[1])! : of(axes, next());
  const axis = of(axes, next());
  const lugEnds = endsOf(thrown, axis);
  const [first, second] = axesAcross(axis).map((across) => endsOf(thrown, across));
  const lugs: Casting['lugs'] =
    lugEnds && first && second
      ? [{ name: next() % 2 ? '' : 'station:lug', axis, ends: lugEnds, across: [first, second] }]
      : [];
  const bodies = next() % 9 ? bodiesOf(build, part) : partsOf(build).flatMap(({ id }) => bodiesOf(build, id));
  const stock = some(stationsOf(build, part), next).map(({ id }) => ({ station: id, written: written(next) }));
  const sets: readonly CastingFields[] = [
    { moulding: of(mouldings, next()) },
    { contraction: ['1.3', written(next), ''] },
    { stockGrade: next() % 2 ? '' : of(allowanceGrades, next()) },
    { stock: next() % 3 ? stock : [...stock, ...stock] },
    { sizeStock: some(dimensionsOf(build, part), next).map(({ id }) => ({ size: id, written: written(next) })) },
    { up: next() % 3 ? up : undefined },
    { up, parting: placeOf(thrown, draw) },
    { parting: undefined },
    { draft: '2', coating: written(next), closeUnder: written(next), copeExtra: written(next) },
    { prints: some(bodies, next).map(({ id }) => ({ body: id, ends: [written(next), ''] as [string, string] })) },
    { lugs },
    { boards: [{ name: '', thickness: written(next), length: '1200', width: '600', count: next() % 5 }] },
    { bow: machineOf(build, next), flask: machineOf(build, next), sectionAxis: next() % 2 ? axis : undefined },
    { note: 'part:none', foamDensity: '20', glueJoint: written(next) },
  ];
  return pick(sets, next())!;
}

function patternOrderOf({ build, part, next }: Throw, kind: number): Order {
  const pattern = pick(
    partsOf(build).flatMap(({ id }) => patternsOf(build, id)),
    next(),
  );
  const patterns = pattern ? patternsOf(build, pattern.part) : [];
  if (kind < 12 || !pattern) {
    const before = next() % 3 ? undefined : pick(patternsOf(build, part), next())?.id;
    const set = next() % 2 ? patternFieldsOf(build, part, next) : {};
    return { id: 'pattern-add', params: before === undefined ? { part, set } : { part, set, before } };
  }
  if (kind < 14)
    return { id: 'pattern-set', params: { pattern: pattern.id, set: patternFieldsOf(build, pattern.part, next) } };
  if (kind < 15) return { id: 'pattern-move', params: { pattern: pattern.id, before: pick(patterns, next())?.id } };
  if (kind < 18) {
    const at = next() % 4 ? { at: moment(next) } : {};
    return { id: 'weighing-add', params: { pattern: pattern.id, mass: mass(next), where: 'oven', ...at } };
  }
  if (kind < 19) {
    const at = pick(pattern.weighings, next())?.at ?? moment(next);
    return { id: 'weighing-remove', params: { pattern: pattern.id, at } };
  }
  return { id: 'pattern-remove', params: { patterns: [pattern.id] } };
}

function patternFieldsOf(build: Build, part: Throw['part'], next: Next): PatternFields {
  const lines = some(dimensionsOf(build, part), next).map(({ id }) => ({ of: id, value: written(next) }));
  const weighings = [0, 1, 2].map(() => ({ at: moment(next), mass: mass(next), where: '' }));
  const sets: readonly PatternFields[] = [
    { name: `pattern ${next() % 4}` },
    { measured: [...lines, { of: 'box:X', value: written(next) }] },
    { cast: lines },
    { trials: [{ what: next() % 2 ? '' : 'swing', fits: next() % 2 > 0, at: moment(next), note: '' }] },
    { bare: mass(next), scaleStep: '1 g', rule: { hours: written(next) } },
    { plaster: next() % 2 > 0 },
    { weighings },
    { takenOn: next() % 2 ? '' : 'no oven' },
  ];
  return pick(sets, next())!;
}

function pourOrderOf(build: Build, kind: number, next: Next): Order {
  const pours = poursOf(build);
  const pour = pick(pours, next());
  if (kind < 4 || !pour) {
    const before = next() % 3 ? undefined : pour?.id;
    const set = { ...pourFieldsOf(build, next), castings: castingsOf(build, next) };
    return { id: 'pour-add', params: before === undefined ? { set } : { set, before } };
  }
  if (kind < 11) {
    const fields = pourFieldsOf(build, next, new Set(pour.castings.map(({ part }) => part)));
    const set = next() % 3 ? fields : { ...fields, castings: castingsOf(build, next) };
    return { id: 'pour-set', params: { pour: pour.id, set } };
  }
  if (kind < 12) return { id: 'pour-move', params: { pour: pour.id, before: pick(pours, next())?.id } };
  if (kind < 14) return { id: 'pour-copy', params: { pour: pour.id } };
  if (kind < 18) return { id: 'journal-set', params: { pour: pour.id, set: next() % 5 ? journalOf(next) : undefined } };
  return { id: 'pour-remove', params: { pours: next() % 3 ? [pour.id] : some(pours, next).map(({ id }) => id) } };
}

function castingsOf(build: Build, next: Next): NonNullable<PourFields['castings']> {
  return some(partsOf(build), next).map(({ id }) => {
    // Now and then the pattern of another part.
    const patterns = next() % 9 ? patternsOf(build, id) : partsOf(build).flatMap((part) => patternsOf(build, part.id));
    const pattern = pick(patterns, next())?.id;
    const up = next() % 2 ? { up: of(directions, next()) } : {};
    return { part: id, count: 1 + (next() % 3), ...up, ...(pattern ? { pattern } : {}) };
  });
}

function pourFieldsOf(build: Build, next: Next, parts?: ReadonlySet<string>): PourFields {
  const poured = partsOf(build).filter(({ id }) => next() % 9 === 0 || (parts?.has(id) ?? false));
  const bodies = poured.flatMap(({ id }) => bodiesOf(build, id));
  const body = pick(bodies, next())?.id;
  const part = pick(partsOf(build), next())?.id;
  const text = written(next);
  const sets: readonly PourFields[] = [
    { name: `pour ${next() % 4}` },
    { alloy: of(['', 'LM25', 'own mix'], next()) },
    { furnace: machineOf(build, next), crucible: machineOf(build, next), flask: machineOf(build, next) },
    { temperature: '740', ambient: text, overflow: mass(next), loss: '3 %', heel: mass(next), copeWeight: '5' },
    { gating: { spot: of(gateSpots, next()), sprueHeight: text, gates: next() % 4, hollow: next() % 2 > 0 } },
    { gating: { cupVolume: '0.2 l' } },
    { risers: [{ name: '', on: body, diameter: text, height: text }] },
    {
      inserts: [
        { name: '', part, mass: mass(next), material: 'steel', preheat: '', length: text, around: body, stays: true },
      ],
    },
    { coverAbove: text, coverAround: text, sandDensity: '1600' },
    { after: next() % 3 ? pick(poursOf(build), next())?.id : undefined },
  ];
  return pick(sets, next())!;
}

function journalOf(next: Next): Partial<PourJournal> {
  const sets: readonly Partial<PourJournal>[] = [
    { pouredAt: moment(next) },
    { result: of(['sound', 'usable', 'scrap'], next()), defects: ['misrun'] },
    { temperature: '720', charged: mass(next), meltMinutes: '40', weather: 'dry' },
    { change: 'hotter', note: '' },
  ];
  return pick(sets, next())!;
}
