import type { Kernel } from '../../../shared/solid/manifold/kernel.ts';

/** How the kernel stands: it is loaded when the first body asks for it. */
export type KernelState = 'not asked' | 'loading' | 'there' | 'failed';

export interface KernelLoader {
  readonly state: KernelState;
  /** Undefined until it is there. */
  readonly kernel: Kernel | undefined;
  /** Begins to load, unless that was done before. */
  ask(): void;
}

/**
 * @param load fetches the kernel; undefined where there is none to be had.
 * @param onSettled called once, when it is there or cannot be had.
 */
export function createKernelLoader(load: (() => Promise<Kernel>) | undefined, onSettled: () => void): KernelLoader {
  let state: KernelState = 'not asked';
  let kernel: Kernel | undefined;
  const settle = (to: KernelState) => {
    state = to;
    onSettled();
  };
  return {
    get state() {
      return state;
    },
    get kernel() {
      return kernel;
    },
    ask() {
      if (state !== 'not asked') return;
      state = load === undefined ? 'failed' : 'loading';
      load?.().then(
        (loaded) => {
          kernel = loaded;
          settle('there');
        },
        (error: unknown) => {
          console.error(error);
          settle('failed');
        },
      );
    },
  };
}
