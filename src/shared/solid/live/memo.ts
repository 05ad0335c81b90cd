import type { Kernel, KernelSolid } from '../manifold/kernel.ts';

/** Solids of the kernel by what they were made of: each is made once and kept as long as every `sweep` finds it used. */
export interface Memo {
  (key: string, make: () => KernelSolid | undefined): KernelSolid | undefined;
  /** Releases what was not asked for since the last sweep. */
  sweep(): void;
  drop(): void;
}

export function createMemo(kernel: Kernel): Memo {
  const kept = new Map<string, { readonly solid: KernelSolid | undefined; used: boolean }>();
  const forget = (unused: boolean) => {
    for (const [key, one] of kept) {
      if (unused && one.used) {
        one.used = false;
        continue;
      }
      if (one.solid) kernel.release(one.solid);
      kept.delete(key);
    }
  };
  const memo = (key: string, make: () => KernelSolid | undefined): KernelSolid | undefined => {
    const before = kept.get(key);
    if (before) {
      before.used = true;
      return before.solid;
    }
    const solid = make();
    kept.set(key, { solid, used: true });
    return solid;
  };
  return Object.assign(memo, { sweep: () => forget(true), drop: () => forget(false) });
}
