import { useSyncExternalStore } from 'react';
import type { RunOutcome } from '../engine/engine.ts';
import { announce } from '../kit/announcer.tsx';

/** A sentence at the foot of the window: what was done, or why it was not. */
export interface Notice {
  readonly sentence: string;
  readonly isRefusal: boolean;
}

let notice: Notice | undefined;
const listeners = new Set<() => void>();

export function notify(next: Notice | undefined): void {
  notice = next;
  if (next !== undefined) announce(next.sentence);
  for (const listener of listeners) listener();
}

/** Shows a refusal; a success is seen by itself and clears what stood there. */
export function notifyOutcome(outcome: RunOutcome): RunOutcome {
  if (!outcome.ok) notify({ sentence: outcome.sentence, isRefusal: true });
  else if (notice !== undefined) notify(undefined);
  return outcome;
}

export function useNotice(): Notice | undefined {
  return useSyncExternalStore(
    (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    () => notice,
  );
}
