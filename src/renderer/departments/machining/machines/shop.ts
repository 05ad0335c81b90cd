import { useEffect, useSyncExternalStore } from 'react';
import type { MachineId } from '../../../../shared/base/ids.ts';
import type { Machine } from '../../../../shared/build/machine.ts';
import type { Response } from '../../../../shared/ipc/contract.ts';
import { shopLossWords, shopWords } from '../../../../shared/ipc/shop-words.ts';
import type { LengthUnit } from '../../../../shared/quantity/kind.ts';
import { shell } from '../../../app/shell.ts';
import { announce } from '../../../kit/announcer.tsx';

/** The user's own machines, shared by all builds, as far as they are known here. */
export interface Shop {
  /** Undefined until they are read. */
  readonly machines: readonly Machine[] | undefined;
  /** Why they could not be read, or kept: whole sentences. */
  readonly problem: string | undefined;
  /** What was set aside because it could not be read. */
  readonly lost: readonly string[];
}

let shop: Shop = { machines: undefined, problem: undefined, lost: [] };
let asked = false;
const listeners = new Set<() => void>();

function set(next: Shop): void {
  shop = next;
  for (const listener of listeners) listener();
}

/** @returns whether it went well */
function take(answer: Response<'shop:load'>): boolean {
  if (answer.ok) {
    const lost = answer.value.lost.map((loss) => {
      const { sentence, remedy } = shopLossWords(loss);
      return `${sentence} ${remedy}`;
    });
    set({ machines: answer.value.machines, problem: undefined, lost });
  } else {
    const { sentence, remedy } = shopWords(answer.error);
    set({ ...shop, problem: `${sentence} ${remedy}` });
  }
  return answer.ok;
}

const load = async (): Promise<void> => void take(await shell.invoke('shop:load', undefined));

/** Keeps a machine in the user's shop, in the place of the one of its id. */
export async function keepInShop(machine: Machine, lengthUnit: LengthUnit): Promise<void> {
  if (take(await shell.invoke('shop:put', { machine, lengthUnit }))) announce(`${machine.name} is kept in your shop.`);
}

/** Takes a machine out of the user's shop; builds that have it keep it. */
export async function removeFromShop(machine: MachineId): Promise<void> {
  take(await shell.invoke('shop:remove', { machine }));
}

/** The shop; read when it is first needed, and kept up to date when another window changes it. */
export function useShop(): Shop {
  useEffect(() => {
    if (!asked) {
      asked = true;
      shell.on('shop:changed', (content) => take({ ok: true, value: content }));
    }
    void load();
  }, []);
  return useSyncExternalStore(
    (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    () => shop,
  );
}
