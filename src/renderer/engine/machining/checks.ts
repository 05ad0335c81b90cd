import type { Setup } from '../../../shared/build/setup.ts';
import type { SetupCheck, VerdictState } from '../../../shared/machining/setup-check.ts';
import { sweepPieces } from '../../../shared/machining/swept/sweep-pieces.ts';
import type { Scene } from '../view.ts';
import { machineScene } from './setup-scene.ts';

/** What the workshop says of a set-up; the same object until something behind it changes. */
export const checkOf = (scene: Scene, setup: Setup): SetupCheck | undefined => {
  const { work, on } = machineScene(scene, setup);
  if (on === undefined)
    return { setup, profile: undefined, extent: undefined, verdicts: [], unknown: work.unknown, balance: undefined, balanceUnknown: [] };
  const extent = on.worlds.drawn.extentOf(on.worlds.adding);
  return {
    setup,
    profile: sweepPieces(on.worlds.pieces, on.worlds.drawn.line),
    extent,
    verdicts: [],
    unknown: work.unknown,
    balance: undefined,
    balanceUnknown: [],
  };
};

const rank: Readonly<Record<VerdictState, number>> = { hits: 3, 'at the limit': 2, unknown: 1, clears: 0 };

/** The worst that is said; undefined while nothing is. */
export function worstOf(check: SetupCheck | undefined): VerdictState | undefined {
  if (check === undefined) return undefined;
  const states = check.verdicts.map(({ state }) => state);
  if (check.unknown.length > 0) states.push('unknown');
  return states.reduce<VerdictState | undefined>(
    (worst, state) => (worst === undefined || rank[state] > rank[worst] ? state : worst),
    undefined,
  );
}

/** `2 hit, 1 at the limit, 1 not known`; empty where all clears. */
export function countWords({ verdicts, unknown }: SetupCheck): string {
  const count = (state: VerdictState) => verdicts.filter((one) => one.state === state).length;
  const words = [
    [count('hits'), count('hits') === 1 ? 'hits' : 'hit'],
    [count('at the limit'), 'at the limit'],
    [count('unknown') + (verdicts.length === 0 && unknown.length > 0 ? 1 : 0), 'not known'],
  ] as const;
  return words
    .filter(([many]) => many > 0)
    .map(([many, word]) => `${many} ${word}`)
    .join(', ');
}
