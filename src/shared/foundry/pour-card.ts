import type { LengthUnit } from '../quantity/kind.ts';
import { type Caution, cautions } from './card/cautions.ts';
import { type CardStep, stepsOf } from './card/steps.ts';
import type { Figure } from './figure.ts';
import { figureWords } from './figure-words.ts';
import type { PourVerdict } from './pour/verdict.ts';
import type { PourCheck } from './pour-check.ts';

/** A figure in big type. */
export interface CardFigure {
  /** Stable. */
  readonly id: 'temperature' | 'charge' | 'poured' | 'liquid' | 'minutes' | 'fill' | 'freezes' | 'weights';
  readonly label: string;
  /** With its unit; `—` where it is not known. */
  readonly text: string;
  /** Undefined where it is not known. */
  readonly figure: Figure | undefined;
  /** What stands small beneath it: a band, a rest. */
  readonly beneath: string;
}

/** What is taken to the furnace: all that is needed while the metal is hot, and nothing else. */
export interface PourCard {
  readonly title: string;
  readonly alloy: string;
  readonly castings: readonly { readonly name: string; readonly count: number; readonly up: string }[];
  readonly figures: readonly CardFigure[];
  readonly steps: readonly CardStep[];
  readonly cautions: readonly Caution[];
  /** What speaks against pouring, stops first; a card with stops is for planning, not for the furnace. */
  readonly against: readonly PourVerdict[];
  /** Things that are not known yet. */
  readonly unknownCount: number;
}

const NOT_KNOWN = '—';

/** @param nameOf of parts, bodies and machines */
export function pourCard(check: PourCheck, lengthUnit: LengthUnit, nameOf: (id: string) => string): PourCard {
  const words = (figure: Figure | undefined): string => (figure ? figureWords(figure, lengthUnit) : NOT_KNOWN);
  const { temperature, charge, melt, gating, lift, freezing } = check;
  const { least, most } = temperature;
  const big = (id: CardFigure['id'], label: string, figure: Figure | undefined, beneath = ''): CardFigure => ({
    id,
    label,
    text: words(figure),
    figure,
    beneath,
  });
  const last = freezing.castings
    .flatMap(({ zones }) => (zones[0]?.time ? [zones[0].time] : []))
    .reduce<Figure | undefined>((a, b) => (a && a.value >= b.value ? a : b), undefined);
  const stops = check.verdicts.filter(({ state }) => state === 'stop');
  return {
    title: check.pour.name,
    alloy: check.alloy ?? check.alloyName,
    castings: check.pour.castings.map(({ part, count, up }) => ({ name: nameOf(part), count, up: up ?? '' })),
    figures: [
      big(
        'temperature',
        temperature.isProposed ? 'Pour at (proposed)' : 'Pour at',
        temperature.chosen,
        least && most ? `${words(least)} to ${words(most)}` : '',
      ),
      big('charge', 'Charge', charge.charge, charge.loss ? `${words(charge.loss)} of it is lost as dross` : ''),
      big('poured', 'Into the mould', charge.poured, charge.heel ? `${words(charge.heel)} stays in the crucible` : ''),
      big('liquid', 'Liquid', charge.liquid, melt.capacity ? `the crucible holds ${words(melt.capacity)}` : ''),
      big('minutes', 'Melting', melt.minutes, melt.rate ? `at ${words(melt.rate)} to the metal` : ''),
      big('fill', 'To fill', gating.fillTime, 'without a stop'),
      big('freezes', 'Freezes last after', last, 'leave it alone till then'),
      big(
        'weights',
        'Weights on the mould',
        weightsOf(check),
        lift.lift ? `the metal lifts with ${words(lift.lift)}` : '',
      ),
    ],
    steps: stepsOf(check, words, nameOf),
    cautions: cautions.filter(({ only }) => only === undefined || only(check)),
    against: [...stops, ...check.verdicts.filter(({ state }) => state === 'caution')],
    unknownCount: check.unknown.length,
  };
}

/** What is to lie on the mould altogether: what is written, and what is still wanting. */
function weightsOf({ lift }: PourCheck): Figure | undefined {
  const { weights, weightNeeded } = lift;
  if (!weightNeeded) return weights;
  return { ...weightNeeded, value: weightNeeded.value + (weights?.value ?? 0), origin: 'laid on, and still wanting' };
}
