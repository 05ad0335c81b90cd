import { useSyncExternalStore } from 'react';
import type { Machine } from '../../../../shared/build/machine.ts';

/** The user's own machines, as far as they are known here. */
export interface Shop {
  /** Undefined until they are read. */
  readonly machines: readonly Machine[] | undefined;
  /** Why they could not be read, or kept. */
  readonly problem: string | undefined;
  keep(machine: Machine): Promise<void>;
}

let machines: readonly Machine[] | undefined = [];
const listeners = new Set<() => void>();

async function keep(machine: Machine): Promise<void> {
  machines = [...(machines ?? []).filter(({ id }) => id !== machine.id), machine];
  for (const listener of listeners) listener();
}

const shop: Shop = { machines, problem: undefined, keep };

export function useShop(): Shop {
  return useSyncExternalStore(
    (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    () => shop,
  );
}
