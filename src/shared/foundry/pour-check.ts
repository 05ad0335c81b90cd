import type { Pour } from '../build/pour.ts';
import { readFigures } from '../plan/machine-figures-read.ts';
import type { AlloyFamily } from '../tables/alloys.ts';
import { foundryPractice } from '../tables/foundry-practice.ts';
import { drawn, type Figure, fromTable } from './figure.ts';
import { distinctMissing, type FoundryUnknown } from './foundry-unknown.ts';
import { type ChargeCheck, chargeCheck } from './pour/charge-check.ts';
import { type CoatingCheck, coatingsCheck } from './pour/coating-check.ts';
import { type FreezingCheck, freezingCheck } from './pour/freezing-check.ts';
import { type GatingCheck, gatingCheck } from './pour/gating-check.ts';
import { insertMasses } from './pour/insert-case.ts';
import { type InsertCheck, insertsCheck } from './pour/insert-check.ts';
import { type LiftCheck, liftCheck } from './pour/lift-check.ts';
import { type MeltCheck, meltCheck } from './pour/melt-check.ts';
import { type FoamCheck, foamCheck, type MouldCheck, mouldCheck } from './pour/mould-check.ts';
import { alloyNameOf, pourAlloy } from './pour/pour-alloy.ts';
import { prepareInserts } from './pour/prepare-inserts.ts';
import { type ReadJournal, type ReadPour, readPour } from './pour/read-pour.ts';
import { type RiserCheck, risersCheck, type UnfedZone } from './pour/riser-check.ts';
import { standingOf } from './pour/standing.ts';
import { type TemperatureBand, temperatureBand } from './pour/temperature-band.ts';
import { type PourVerdict, verdict } from './pour/verdict.ts';
import type { PourInput } from './pour-input.ts';

/** All that is worked out of one pour. */
export interface PourCheck {
  readonly pour: Pour;
  /** As written, or the material of the first casting. */
  readonly alloyName: string;
  /** The alloy as the tables or the build call it; undefined where neither knows it. */
  readonly alloy: string | undefined;
  readonly family: AlloyFamily | undefined;
  readonly ambient: Figure;
  readonly temperature: TemperatureBand;
  readonly charge: ChargeCheck;
  readonly melt: MeltCheck;
  readonly freezing: FreezingCheck;
  readonly risers: readonly RiserCheck[];
  /** Thick places without a riser, those that freeze last first. */
  readonly unfed: readonly UnfedZone[];
  readonly gating: GatingCheck;
  readonly foam: FoamCheck | undefined;
  readonly inserts: readonly InsertCheck[];
  readonly lift: LiftCheck;
  readonly mould: MouldCheck;
  /** Of castings in foam, by the pattern that is used up. */
  readonly coatings: readonly CoatingCheck[];
  readonly journal: ReadJournal | undefined;
  /** In the order of the work: melt, mould, metal. */
  readonly verdicts: readonly PourVerdict[];
  /** Each thing that must be known, once. */
  readonly unknown: readonly FoundryUnknown[];
}

/**
 * Works out one pour: metal and crucible, heat and time, what freezes when, risers, gates, foam, inserts, lift, sand, coating.
 *
 * Every figure says where it comes from and how far it may be trusted; what cannot be worked out is undefined, and `unknown` names
 * what is missing. Where no pouring temperature is written, all is worked out at the one that is proposed.
 */
export function checkPour(input: PourInput): PourCheck {
  const unknown: FoundryUnknown[] = [];
  const read = readPour(input.pour, input.lengthUnit);
  const alloy = pourAlloy(input, unknown);
  const ambient = read.ambient ?? fromTable(foundryPractice.ambientC, '°C');
  const standings = standingOf(input, unknown);
  const charge = chargeCheck(input, read, alloy);
  const foam = foamCheck(input, alloy, standings);
  const masses = insertMasses(input, read, alloy, ambient);
  const prepared = prepareInserts(input, alloy, masses, standings, foam?.cooling);
  const temperature = temperatureBand({
    alloy,
    written: read.temperature,
    foam: foam !== undefined,
    thinnest: thinnestOf(input),
    inserts: prepared,
    furnace: furnaceHighest(input),
  });
  const { chosen } = temperature;
  const freezing = freezingCheck(input, alloy, chosen, ambient);
  const risers = risersCheck(input, read, alloy, freezing);
  const gating = gatingCheck(input, read, alloy, charge, freezing, standings);
  const melt = meltCheck(input, charge, alloy, chosen, ambient);
  const inserts = insertsCheck(prepared, alloy, chosen, temperature.most);
  const lift = liftCheck(input, read, alloy, charge, standings);
  const mould = mouldCheck(input, read, charge, standings);
  const coatings = coatingsCheck(input, alloy);
  return {
    pour: input.pour,
    alloyName: alloyNameOf(input),
    alloy: alloy?.name,
    family: alloy?.family,
    ambient,
    temperature,
    charge,
    melt,
    freezing,
    risers: risers.risers,
    unfed: risers.unfed,
    gating,
    foam,
    inserts: inserts.inserts,
    lift,
    mould,
    coatings: coatings.coatings,
    journal: read.journal,
    verdicts: [
      ...melt.verdicts,
      ...chargedVerdict(read, charge),
      ...temperature.verdicts,
      ...freezing.verdicts,
      ...gating.verdicts,
      ...risers.verdicts,
      ...inserts.verdicts,
      ...lift.verdicts,
      ...mould.verdicts,
      ...coatings.verdicts,
    ],
    unknown: distinctMissing([
      ...read.unknown,
      ...unknown,
      ...charge.unknown,
      ...melt.unknown,
      ...temperature.unknown,
      ...freezing.unknown,
      ...gating.unknown,
      ...risers.unknown,
      ...masses.flatMap((one) => one.unknown),
      ...lift.unknown,
      ...mould.unknown,
      ...coatings.unknown,
    ]),
  };
}

function thinnestOf({ pour, castingOf }: PourInput): Figure | undefined {
  const walls = pour.castings.flatMap(({ part }) => castingOf(part)?.sections?.thinnest?.thicknessMm ?? []);
  return walls.length > 0 ? drawn(Math.min(...walls), 'mm', 'the thinnest wall, square to its faces') : undefined;
}

function furnaceHighest({ pour, machines, lengthUnit }: PourInput): Figure | undefined {
  const furnace = machines.find(({ id }) => id === pour.furnace);
  const value = furnace && readFigures(furnace, lengthUnit).values.get('highest');
  if (!furnace || value === undefined) return undefined;
  return { value, unit: '°C', origin: furnace.name, status: furnace.generic ? 'starting value' : 'written' };
}

/** What was put into the crucible, held against what the pour takes. */
function chargedVerdict({ journal }: ReadPour, { charge, unknown }: ChargeCheck): readonly PourVerdict[] {
  const has = journal?.charged;
  if (!has || !charge) return [];
  const judged = { has, needs: charge, ways: [{ is: 'metal' as const, kg: charge.value - has.value }] };
  if (has.value < charge.value - 1e-9) return [verdict('metal-charged', 'stop', judged)];
  return [verdict('metal-charged', unknown.length === 0 ? 'clear' : 'unknown', { ...judged, unknown })];
}
