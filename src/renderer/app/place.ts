import { useSyncExternalStore } from 'react';
import type { PartId } from '../../shared/base/ids.ts';
import type { RecordId } from '../../shared/build/records.ts';

/** Where the reader stands. Not part of the build, not undone. */
export interface Place {
  /** Id of the department on show. */
  readonly department: string;
  readonly part: PartId | undefined;
  /** The station or dimension selected everywhere. */
  readonly subject: RecordId | undefined;
  /** Others that are lit up with it, e.g. the rest of a contradiction's loop. */
  readonly also: readonly RecordId[];
}

let place: Place = { department: 'drawing', part: undefined, subject: undefined, also: [] };
const listeners = new Set<() => void>();

/** Goes somewhere: what is not named stays, but another part takes the selection with it. */
export function goTo(to: Partial<Place>): void {
  const otherPart = 'part' in to && to.part !== place.part;
  const fresh = otherPart || 'subject' in to ? { subject: undefined, also: [] } : {};
  place = { ...place, ...fresh, ...to };
  for (const listener of listeners) listener();
}

export const placeNow = (): Place => place;

export function usePlace(): Place {
  return useSyncExternalStore((listener) => {
    listeners.add(listener);
    return () => listeners.delete(listener);
  }, placeNow);
}
