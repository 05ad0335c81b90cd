import { hoursOfMoment, momentOfHours } from '../base/moment.ts';
import type { Pattern } from '../build/pattern.ts';
import { formatNumber } from '../quantity/format.ts';
import type { LengthUnit } from '../quantity/kind.ts';
import { foundryPractice } from '../tables/foundry-practice.ts';
import { type Drying, dryingOf, type Weighing } from './drying.ts';
import { drawn, type Figure, fromTable } from './figure.ts';
import type { FoundryUnknown } from './foundry-unknown.ts';
import { writtenReader } from './pour/written-reader.ts';

/** One weighing as it was read. */
export interface ReadWeighing extends Weighing {
  /** Place in the record's list. */
  readonly index: number;
  readonly at: string;
  readonly where: string;
}

/** Whether the pattern may be poured, as far as its coating goes. */
export type DryingGate =
  /** Constant in mass. */
  | 'dry'
  /** Not proved dry, and taken upon oneself in words. */
  | 'taken on'
  | 'shut';

export interface DryingCheck {
  readonly pattern: Pattern;
  /** In order of time. */
  readonly weighings: readonly ReadWeighing[];
  readonly bare: Figure | undefined;
  readonly scaleStep: Figure | undefined;
  /** Of the coating as last weighed. */
  readonly coating: Figure | undefined;
  /** Undefined while mass bare, step of the scale or all weighings are missing. */
  readonly drying: Drying | undefined;
  /** By the fit: water that has still to leave, and when the rule will hold. */
  readonly leaving: Figure | undefined;
  readonly dryAt: string | undefined;
  /** What the rule asks for: loss of the coating's mass in an interval, percent, and how long an interval is. */
  readonly share: Figure;
  readonly leastHours: Figure;
  /** Lighter with its coating than bare: one of the masses is wrong. */
  readonly lighterThanBare: boolean;
  /** Bound water leaves only far above drying temperatures. */
  readonly plaster: boolean;
  readonly gate: DryingGate;
  readonly unknown: readonly FoundryUnknown[];
}

/** How a pattern's coating dries, by its weighings. */
export function checkDrying(pattern: Pattern, lengthUnit: LengthUnit): DryingCheck {
  const unknown: FoundryUnknown[] = [];
  const read = writtenReader(lengthUnit, unknown);
  const { bare: bareText, scaleStep: stepText, plaster, takenOn } = pattern;
  const bare = read.mass(bareText, 'bare');
  const scaleStep = read.mass(stepText, 'scaleStep');
  const timed = pattern.weighings.flatMap(({ at, mass, where }, index) => {
    const [clock, kg] = [hoursOfMoment(at), read.mass(mass, `weighings/${index}/mass`)];
    if (clock === undefined) unknown.push({ is: 'written', field: `weighings/${index}/at`, text: at });
    if (kg === undefined && mass.trim() === '') unknown.push({ is: 'field', field: `weighings/${index}/mass` });
    return clock === undefined || kg === undefined ? [] : [{ index, at, where, clock, massKg: kg.value }];
  });
  timed.sort((a, b) => a.clock - b.clock);
  const first = timed[0]?.clock ?? 0;
  const weighings = timed.map(({ clock, ...one }): ReadWeighing => ({ ...one, hours: clock - first }));
  if (bareText.trim() === '') unknown.push({ is: 'field', field: 'bare' });
  if (stepText.trim() === '') unknown.push({ is: 'field', field: 'scaleStep' });
  if (weighings.length === 0) unknown.push({ is: 'field', field: 'weighings' });
  const share = fromTable(foundryPractice.dryShare, '%');
  const leastHours = fromTable(foundryPractice.dryHours, '');
  const last = weighings.at(-1);
  const coatingKg = last && bare && last.massKg - bare.value;
  const lighterThanBare = coatingKg !== undefined && coatingKg <= 0;
  const drying =
    bare && scaleStep && last && !lighterThanBare
      ? dryingOf({
          weighings,
          bareKg: bare.value,
          resolutionKg: scaleStep.value,
          share: share.value / 100,
          leastHours: leastHours.value,
        })
      : undefined;
  const isDry = drying?.state === 'constant';
  const end = timed.at(-1)?.clock;
  return {
    pattern,
    weighings,
    bare,
    scaleStep,
    coating:
      coatingKg !== undefined && !lighterThanBare ? drawn(coatingKg, 'kg', 'as last weighed, less bare') : undefined,
    drying,
    leaving:
      drying?.fit && !isDry
        ? { value: drying.fit.leavingKg, unit: 'kg', origin: 'by the curve through the weighings', status: 'derived' }
        : undefined,
    dryAt:
      drying?.hoursLeft !== undefined && !isDry && end !== undefined
        ? momentOfHours(end + drying.hoursLeft)
        : undefined,
    share,
    leastHours,
    lighterThanBare,
    plaster,
    gate: isDry ? 'dry' : takenOn.trim() !== '' ? 'taken on' : 'shut',
    unknown,
  };
}

const grams = (kg: number): string => `${formatNumber(kg * 1000, Math.abs(kg) < 0.01 ? 2 : 1)} g`;
const percent = (share: number): string => `${formatNumber(share * 100, 2)} %`;
const hoursWords = (hours: number): string => `${formatNumber(hours, hours < 10 ? 1 : 0)} h`;

/** What the log says, and what to do, in sentences. */
export function dryingWords(check: DryingCheck): readonly string[] {
  const { drying, weighings, share, leastHours, coating, pattern } = check;
  const words: string[] = [];
  const rule = `A loss of no more than ${share.value} % of the coating in ${leastHours.value} h, twice running, counts as dry.`;
  if (check.lighterThanBare) {
    words.push('The pattern weighs less than it did bare. Weigh it again, or put the mass before coating right.');
  } else if (!drying) {
    words.push(`Nothing can be said of the coating yet. ${missing(check)} ${rule}`);
  } else {
    words.push(`${stateWords(drying, weighings)} ${drying.state === 'constant' ? '' : rule}`.trim());
    if (coating && drying.state === 'scale-too-coarse') {
      words.push(
        `The coating weighs ${grams(coating.value)}: use a scale that shows ${grams((coating.value * share.value) / 100)}.`,
      );
    }
  }
  if (check.leaving && check.dryAt) {
    const left = drying?.hoursLeft;
    words.push(
      `By its curve ${grams(check.leaving.value)} has still to leave${left === undefined ? '' : `, and in ${hoursWords(left)} two weighings will show it dry`}.`,
    );
  }
  if (check.plaster) words.push(PLASTER);
  if (check.gate === 'taken on') words.push(`Poured all the same, taken upon oneself: ${pattern.takenOn.trim()}`);
  return words;
}

/** 36.03 of 172.17 g of each mole of CaSO₄·2H₂O; it leaves near 150 °C and the last of it near 200 °C (read in a discussion of chemists). */
const PLASTER =
  'The coating holds plaster: a fifth of its gypsum is bound water, which leaves only near 150 °C. Constant mass at drying temperature says nothing of it; liquid metal turns it to steam. Take a coating without plaster, or bake the mould.';

function missing({ bare, scaleStep, weighings }: DryingCheck): string {
  const asked = [
    ...(bare ? [] : ['the mass before coating']),
    ...(scaleStep ? [] : ['the smallest step of the scale']),
    ...(weighings.length > 0 ? [] : ['a weighing']),
  ];
  return asked.length === 0 ? '' : `Write ${asked.join(' and ')}.`;
}

function stateWords({ state, lastShare }: Drying, weighings: readonly ReadWeighing[]): string {
  const last = lastShare === undefined ? '' : percent(Math.abs(lastShare));
  switch (state) {
    case 'too-few':
      return `${weighings.length === 1 ? 'One weighing is' : `${weighings.length} weighings are`} too few, or they lie too close together. Weigh again after some hours.`;
    case 'scale-too-coarse':
      return 'The scale cannot show so small a loss.';
    case 'losing':
      return `Still losing water: ${last} of the coating in the last interval. Leave it to dry.`;
    case 'gaining':
      return `It has grown heavier, by ${last} of the coating: it takes up moisture where it stands. Put it somewhere dry and warm.`;
    case 'nearly':
      return `Nearly dry: ${last} of the coating in the last interval. Weigh once more.`;
    case 'constant':
      return 'Dry: constant in mass over the last two intervals.';
  }
}
