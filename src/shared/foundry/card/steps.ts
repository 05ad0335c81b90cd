import { foundryPractice } from '../../tables/foundry-practice.ts';
import type { Figure } from '../figure.ts';
import type { PourCheck } from '../pour-check.ts';

/** One thing to do, in its turn. */
export interface CardStep {
  /** Stable. */
  readonly id: string;
  /** Before the fire is lit, while it melts, the pour itself, and after it. */
  readonly phase: 'before' | 'melt' | 'pour' | 'after';
  readonly words: string;
}

type Words = (figure: Figure | undefined) => string;

/** The sequence of a pour with its figures in it; what is not known is asked for with a dash to be filled in by hand. */
export function stepsOf(check: PourCheck, words: Words, nameOf: (id: string) => string): readonly CardStep[] {
  return [
    ...before(check, words, nameOf),
    ...melting(check, words, nameOf),
    ...pouring(check, words),
    ...after(check, words),
  ];
}

const step = (phase: CardStep['phase'], id: string, text: string): CardStep => ({ id, phase, words: text });

function before(check: PourCheck, words: Words, nameOf: (id: string) => string): readonly CardStep[] {
  const { pour, mould, lift, coatings, inserts, foam } = check;
  const flask = pour.flask === undefined ? 'the flask' : nameOf(pour.flask);
  const steps = [
    ...coatings.map(({ part, drying }) =>
      step(
        'before',
        `coating-${part}`,
        drying.gate === 'dry'
          ? `${nameOf(part)}: the coating weighs constant. Leave the pattern where it is dry.`
          : `${nameOf(part)}: the coating is not proved dry. Weigh it once more before it goes into the sand.`,
      ),
    ),
    ...inserts.map((insert) =>
      step(
        'before',
        `insert-${insert.insert}`,
        `${insert.record.name}: bright, free of rust and oil${insert.mass ? `, ${words(insert.mass)}` : ''}.`,
      ),
    ),
  ];
  const castings = pour.castings.map(
    ({ part, count, up }) => `${count > 1 ? `${count} × ` : ''}${nameOf(part)}${up ? `, ${up} up` : ''}`,
  );
  steps.push(
    step(
      'before',
      'mould',
      `Set ${castings.join('; ')} in ${flask}${foam ? ' and vibrate the sand in' : ''}: ${words(mould.coverAroundWanted)} of sand round about, ${words(mould.coverAboveWanted)} above${mould.sandMass ? `; ${words(mould.sandMass)} of dry sand` : ''}.`,
    ),
  );
  if (lift.weightNeeded && (lift.weightNeeded.value > 0 || lift.weights)) {
    const kg = { ...lift.weightNeeded, value: lift.weightNeeded.value + (lift.weights?.value ?? 0) };
    steps.push(step('before', 'weights', `Lay ${words(kg)} on the mould.`));
  }
  return steps;
}

function melting(check: PourCheck, words: Words, nameOf: (id: string) => string): readonly CardStep[] {
  const { pour, charge, melt, inserts } = check;
  const crucible = pour.crucible === undefined ? 'the crucible' : nameOf(pour.crucible);
  const steps = [
    step(
      'melt',
      'charge',
      `Weigh ${words(charge.charge)} of clean, dry metal. Put it into ${crucible} loosely, never wedged.`,
    ),
    step(
      'melt',
      'light',
      `Light the furnace${melt.minutes ? `; about ${words(melt.minutes)} to pouring heat` : ''}. Ingot moulds and tools beside it to get hot.`,
    ),
  ];
  for (const { insert, record, preheat } of inserts) {
    if (!preheat || preheat.value <= foundryPractice.foamStandsC.value) continue;
    steps.push(
      step('melt', `preheat-${insert}`, `Bring ${record.name} to ${words(preheat)}, and set it just before the pour.`),
    );
  }
  return steps;
}

function pouring({ temperature, gating, charge }: PourCheck, words: Words): readonly CardStep[] {
  const { chosen, least, most } = temperature;
  const band = least && most ? ` (between ${words(least)} and ${words(most)})` : '';
  return [
    step('pour', 'temperature', `Measure: pour at ${words(chosen)}${band}. Colder, wait for it; hotter, let it stand.`),
    step('pour', 'skim', 'Fire off. Skim once, gently. Out with the crucible.'),
    step(
      'pour',
      'pour',
      `Pour in one stream, the cup full all the time${gating.fillTime ? `: about ${words(gating.fillTime)} to fill` : ''}. ${words(charge.poured)} with what goes over.`,
    ),
    step('pour', 'rest', `The rest, about ${words(charge.heel)}, into the hot ingot moulds at once.`),
  ];
}

function after({ freezing, inserts }: PourCheck, words: Words): readonly CardStep[] {
  const times = freezing.castings.flatMap(({ zones }) => (zones[0]?.time ? [zones[0].time] : []));
  const last = times.reduce<Figure | undefined>((a, b) => (a && a.value >= b.value ? a : b), undefined);
  return [
    step(
      'after',
      'wait',
      `Nothing moved for ${words(last && { ...last, value: 2 * last.value })}: the thickest place freezes in about ${words(last)}, and that is reckoned roughly.`,
    ),
    step(
      'after',
      'knock-out',
      `Knock out when it can be touched with a stick without smoke${inserts.length > 0 ? '; slowly, where an insert grips' : ''}.`,
    ),
    step('after', 'journal', 'Write down: temperature, times, mass charged and left, weather, what came of it.'),
  ];
}
