import type { Direction } from '../../build/casting.ts';
import { foundryPractice } from '../../tables/foundry-practice.ts';
import { type Figure, weakest, worked } from '../figure.ts';
import type { FoundryUnknown } from '../foundry-unknown.ts';
import { contactTemperature, LIQUID_ALUMINIUM_EFFUSIVITY, MILD_STEEL_EFFUSIVITY } from '../inserts.ts';
import type { Fed } from './feeding-order.ts';
import type { InsertMasses } from './insert-case.ts';
import { balance, coldestInsert, type Given, meets } from './insert-heat.ts';
import { insertWays } from './insert-ways.ts';
import type { PourAlloy } from './pour-alloy.ts';
import type { PreparedInsert } from './prepare-inserts.ts';
import { opposite } from './standing.ts';
import { type PourVerdict, verdict } from './verdict.ts';

/** An insert, what it does to the metal round it, and what would help. */
export interface InsertCheck extends InsertMasses {
  /** Insert by metal. */
  readonly ratio: Figure | undefined;
  /** Of the metal as it comes to the insert: as poured, less what foam has taken. */
  readonly arrives: Figure | undefined;
  /** When both have come to one temperature. */
  readonly together: Figure | undefined;
  readonly solidFraction: Figure | undefined;
  readonly superheat: Figure | undefined;
  /** Heat over what brings the insert to the liquidus with the metal wholly liquid; negative: short. */
  readonly margin: Figure | undefined;
  /** Of the touching faces in the first instant. Under the solidus a skin freezes at once: a grip, no fusion. */
  readonly contact: Figure | undefined;
  readonly fuses: boolean | undefined;
  /** Whether a thin section is filled past it; undefined where that cannot be told, and then the worse is taken. */
  readonly fed: Fed | undefined;
  /** The casting the other way up turns the order round. */
  readonly turnOver: Direction | undefined;
  /** What is asked of the metal at the insert. */
  readonly solidFractionAllowed: Figure;
  readonly superheatNeeded: Figure;
  /** Coldest that the insert may be at this pouring temperature; undefined where it may be as cold as any shop. */
  readonly leastPreheat: Figure | undefined;
  /** Coldest that the metal may be poured at this preheat. */
  readonly leastPour: Figure | undefined;
}

export interface InsertsCheck {
  readonly inserts: readonly InsertCheck[];
  readonly verdicts: readonly PourVerdict[];
}

/** @param most hottest pour of the band */
export function insertsCheck(
  prepared: readonly PreparedInsert[],
  alloy: PourAlloy | undefined,
  temperature: Figure | undefined,
  most: Figure | undefined,
): InsertsCheck {
  const inserts = prepared.map((one) => checkInsert(one, alloy, temperature));
  const verdicts = inserts.map((check, i) => judge(check, prepared[i]!, temperature, most));
  return { inserts, verdicts };
}

function checkInsert(
  prepared: PreparedInsert,
  alloy: PourAlloy | undefined,
  temperature: Figure | undefined,
): InsertCheck {
  const { masses, given, from, fed, standing, demand, demandFrom, leastPour } = prepared;
  const { preheat } = masses;
  const at = given && temperature && preheat ? balance(given, temperature.value, preheat.value) : undefined;
  const sure = weakest([...from, ...(temperature ? [temperature] : [])].map(({ status }) => status));
  const figure = (value: number | undefined, unit: Figure['unit'], origin: string): Figure | undefined =>
    value === undefined || !Number.isFinite(value) ? undefined : { value, unit, origin, status: sure };
  const contact = contactOf(masses, alloy, given, temperature);
  return {
    ...masses,
    ratio: worked('', 'insert by the metal round it', [masses.mass, masses.metal], (insert, metal) => insert / metal),
    arrives: figure(
      given && temperature && temperature.value - given.foamK,
      '°C',
      given && given.foamK > 0 ? 'as poured, less what foam takes on the mean' : 'as poured',
    ),
    together: figure(at?.temperatureC, '°C', 'heat balance without losses'),
    solidFraction: figure(at?.solidFraction, '', 'heat balance without losses'),
    superheat: figure(at?.superheatK, 'K', 'over the liquidus'),
    margin: figure(at?.marginKJ, 'kJ', 'over what brings the insert to the liquidus'),
    contact,
    fuses: contact && given ? contact.value >= given.thermal.solidusC : undefined,
    fed,
    turnOver: fed === 'after' && standing ? opposite(standing.up) : undefined,
    solidFractionAllowed: 'solidFraction' in demand ? demandFrom : { ...demandFrom, value: 0, unit: '' },
    superheatNeeded: 'superheatK' in demand ? demandFrom : { ...demandFrom, value: 0, unit: 'K' },
    leastPreheat: figure(
      warmerThanShop(given && temperature && coldestInsert(given, demand, temperature.value)),
      '°C',
      'heat balance without losses, at this pouring temperature',
    ),
    leastPour,
  };
}

const warmerThanShop = (value: number | undefined): number | undefined =>
  value !== undefined && value > foundryPractice.ambientC.value ? value : undefined;

function contactOf(
  { material, preheat }: InsertMasses,
  alloy: PourAlloy | undefined,
  given: Given | undefined,
  temperature: Figure | undefined,
): Figure | undefined {
  if (alloy?.family !== 'aluminium' || !/steel|iron/i.test(material) || !given || !temperature || !preheat)
    return undefined;
  const value = contactTemperature(
    temperature.value - given.foamK,
    LIQUID_ALUMINIUM_EFFUSIVITY,
    preheat.value,
    MILD_STEEL_EFFUSIVITY,
  );
  return {
    value,
    unit: '°C',
    origin: 'two bodies that meet: by √(k ρ c) of both (from memory)',
    status: 'from memory',
  };
}

function judge(
  check: InsertCheck,
  { given, demand, masses, standing }: PreparedInsert,
  temperature: Figure | undefined,
  most: Figure | undefined,
): PourVerdict {
  const about = { part: masses.part, body: masses.around, insert: masses.insert };
  const { preheat, unknown } = masses;
  const runs = 'superheatK' in demand;
  const [has, needs] = runs
    ? [check.superheat, check.superheatNeeded]
    : [check.solidFraction, check.solidFractionAllowed];
  if (!given || !temperature || !preheat) {
    const missing: FoundryUnknown[] = temperature ? [] : [{ is: 'field', field: 'temperature' }];
    return verdict('insert-cold', 'unknown', { about, has, needs, unknown: [...unknown, ...missing] });
  }
  if (meets(given, demand, temperature.value, preheat.value))
    return verdict('insert-cold', 'clear', { about, has, needs });
  const ways = insertWays(check, given, demand, temperature.value, most?.value ?? temperature.value, standing);
  // Metal that is liquid still, if only just, may run; metal that has begun to freeze on its way laps.
  const state = runs && (check.solidFraction?.value ?? 1) === 0 ? 'caution' : 'stop';
  return verdict('insert-cold', state, { about, has, needs, ways });
}
