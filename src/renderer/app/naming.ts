import { useSyncExternalStore } from 'react';
import type { RecordId } from '../../shared/build/records.ts';

/**
 * What was just added and waits for its name: the list or table that shows it puts the caret there, so that one goes on
 * writing without looking for it.
 */
let unnamed: RecordId | undefined;
const listeners = new Set<() => void>();

export function askName(id: RecordId | undefined): void {
  unnamed = id;
  for (const listener of listeners) listener();
}

export function useUnnamed(): RecordId | undefined {
  return useSyncExternalStore(
    (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    () => unnamed,
  );
}
