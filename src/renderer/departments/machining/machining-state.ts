import { useSyncExternalStore } from 'react';
import type { MachineId, OperationId, SetupId } from '../../../shared/base/ids.ts';
import { readKept, writeKept } from '../../kit/kept.ts';

export const desks = ['setups', 'route', 'machines'] as const;
export type Desk = (typeof desks)[number];

/** What stands on the desks of the Machine Shop: not part of the build, kept while the reader is in other departments. */
export interface MachiningState {
  readonly desk: Desk;
  readonly setup: SetupId | undefined;
  readonly operation: OperationId | undefined;
  readonly machine: MachineId | undefined;
  /** The verdict that the picture measures, by its key; undefined: the worst. */
  readonly verdict: string | undefined;
  /** A figure of the machine that is asked for: its field takes the focus once. */
  readonly figure: string | undefined;
}

const keptDesk = readKept('machining:desk');
let state: MachiningState = {
  desk: desks.find((desk) => desk === keptDesk) ?? 'setups',
  setup: undefined,
  operation: undefined,
  machine: undefined,
  verdict: undefined,
  figure: undefined,
};
const listeners = new Set<() => void>();

export function setMachining(change: Partial<MachiningState>): void {
  if (change.desk !== undefined) writeKept('machining:desk', change.desk);
  const other = 'setup' in change && change.setup !== state.setup;
  state = { ...state, ...(other ? { verdict: undefined } : {}), ...change };
  for (const listener of listeners) listener();
}

export function useMachining(): MachiningState {
  return useSyncExternalStore(
    (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    () => state,
  );
}
