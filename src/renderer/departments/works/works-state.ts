import { useSyncExternalStore } from 'react';
import type { PartId } from '../../../shared/base/ids.ts';
import type { RecordId } from '../../../shared/build/records.ts';
import type { ReachParams } from '../../engine/views/reach.ts';
import { readKept, writeKept } from '../../kit/kept.ts';

/** How the Works looks: not part of the build, kept while the reader is in other departments. */
export interface WorksState {
  readonly form: 'map' | 'list';
  /** Parts opened in place, in map and list alike. */
  readonly opened: readonly PartId[];
  /** What is lit up, if anything is. */
  readonly lit: ReachParams | undefined;
}

let state: WorksState = {
  form: readKept('works:form') === 'list' ? 'list' : 'map',
  opened: [],
  lit: undefined,
};
const listeners = new Set<() => void>();

function set(change: Partial<WorksState>): void {
  state = { ...state, ...change };
  for (const listener of listeners) listener();
}

export function showForm(form: WorksState['form']): void {
  writeKept('works:form', form);
  set({ form });
}

/** Opens or closes a part in place. */
export function setOpened(part: PartId, open: boolean): void {
  if (state.opened.includes(part) === open) return;
  set({ opened: open ? [...state.opened, part].sort() : state.opened.filter((each) => each !== part) });
}

export const isOpened = (part: PartId): boolean => state.opened.includes(part);

/** Lights up how far something reaches. The same again, or undefined, lights everything. */
export function light(id: RecordId | undefined, way: ReachParams['way']): void {
  const same = id !== undefined && state.lit?.id === id && state.lit.way === way;
  set({ lit: id === undefined || same ? undefined : { id, way } });
}

export const lightAll = (): void => {
  if (state.lit !== undefined) set({ lit: undefined });
};

export function useWorksState(): WorksState {
  return useSyncExternalStore(
    (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    () => state,
  );
}
