import type { Setup } from '../../../shared/build/setup.ts';
import type { SetupCheck, VerdictState } from '../../../shared/machining/setup-check.ts';
import type { Scene } from '../view.ts';

const nothing = { profile: undefined, extent: undefined, balance: undefined } as const;

/** What the workshop says of a set-up; the same object until something behind it changes. */
export function checkOf({ works }: Scene, setup: Setup): SetupCheck {
  const fact = works.factsOf(setup.part)?.setups.find(({ check }) => check.setup.id === setup.id);
  // Of a part that is not there nothing is said.
  return fact?.check ?? { ...nothing, setup, verdicts: [], unknown: [], balanceUnknown: [] };
}

const rank: Readonly<Record<VerdictState, number>> = { hits: 3, 'at the limit': 2, unknown: 1, clears: 0 };

/** The worst that is said; undefined while nothing is. */
export function worstOf(check: SetupCheck): VerdictState | undefined {
  const states = check.verdicts.map(({ state }) => state);
  if (check.unknown.length > 0) states.push('unknown');
  return states.reduce<VerdictState | undefined>(
    (worst, state) => (worst === undefined || rank[state] > rank[worst] ? state : worst),
    undefined,
  );
}

/** `2 hits, 1 at the limit, 1 not known`; empty where all clears. */
export function countWords({ verdicts, unknown }: SetupCheck): string {
  const count = (state: VerdictState) => verdicts.filter((one) => one.state === state).length;
  const words = [
    [count('hits'), count('hits') === 1 ? 'hit' : 'hits'],
    [count('at the limit'), 'at the limit'],
    [count('unknown') + (verdicts.length === 0 && unknown.length > 0 ? 1 : 0), 'not known'],
  ] as const;
  return words
    .filter(([many]) => many > 0)
    .map(([many, word]) => `${many} ${word}`)
    .join(', ');
}
