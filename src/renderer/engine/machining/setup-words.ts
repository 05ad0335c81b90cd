import type { HoldingWay } from '../../../shared/build/setup.ts';
import type { VerdictKind } from '../../../shared/machining/setup-check.ts';
import { verdictTitles } from '../../../shared/machining/verdict-titles.ts';

export const holdingWords: Readonly<Record<HoldingWay, string>> = {
  'between centres': 'between centres',
  'three-jaw chuck': 'three-jaw chuck',
  'four-jaw chuck': 'four-jaw chuck',
  'face plate': 'face plate',
  steady: 'fixed steady',
  vise: 'vise',
  'clamped to the table': 'on the table',
};

/** What a verdict is about, as its head in a list. */
export function verdictTitle(kind: VerdictKind): string {
  const words = verdictTitles[kind];
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
}
