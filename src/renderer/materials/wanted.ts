import { useSyncExternalStore } from 'react';

/** Which row of the materials is to be shown at once, and in which of its fields to begin. */
export interface WantedMaterials {
  /** Key of a line; undefined: none in particular. */
  readonly row: string | undefined;
  /** Undefined: on the row itself. */
  readonly field: string | undefined;
}

let wanted: WantedMaterials | undefined;
const listeners = new Set<() => void>();

function set(next: WantedMaterials | undefined): void {
  wanted = next;
  for (const listener of listeners) listener();
}

/** Opens the materials from wherever they are needed. */
export const openMaterials = (row?: string, field?: string): void => set({ row, field });

export const closeMaterials = (): void => set(undefined);

/** Undefined while they are closed. */
export function useWantedMaterials(): WantedMaterials | undefined {
  return useSyncExternalStore(
    (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    () => wanted,
  );
}
