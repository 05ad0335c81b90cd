import type { Kernel, KernelSolid } from './manifold/kernel.ts';

/**
 * What a run of bodies does to whatever stands before it: x ↦ (x − takes) ∪ adds. One body does so with one of the two
 * empty, and any two such steps in a row are one such step again, so that the bodies of a part, taken in list order, can be
 * put together in any grouping. Its solids are worked out when they are first asked for; `undefined` is the empty one.
 */
export interface Step {
  readonly id: number;
  adds(): KernelSolid | undefined;
  takes(): KernelSolid | undefined;
}

/** Groups steps into a tree and keeps every group that was used last, so that one changed step re-does one group per level. */
export interface StepTree {
  /** A step of one solid, which stays the caller's. */
  leaf(solid: KernelSolid, adds: boolean): Step;
  /** The solid that runs of steps make of nothing, in their order. A run only adds or only takes. It stays the tree's, and is there until the next `sweep` or `drop`. */
  solidOf(runs: readonly (readonly Step[])[]): KernelSolid | undefined;
  /** Forgets the groups that no `solidOf` since the last `sweep` has used. */
  sweep(): void;
  drop(): void;
}

interface Group extends Step {
  used: boolean;
  /** What it made itself; the rest it borrows from what it is made of. */
  readonly made: KernelSolid[];
}

export function createStepTree(kernel: Kernel): StepTree {
  const groups = new Map<string, Group>();
  let lastId = 0;

  function compose(first: Step, second: Step): Step {
    const key = `${first.id} ${second.id}`;
    const before = groups.get(key);
    if (before) {
      before.used = true;
      return before;
    }
    const made: KernelSolid[] = [];
    const own = (solid: KernelSolid | undefined) => {
      if (solid) made.push(solid);
      return solid;
    };
    const group: Group = {
      id: ++lastId,
      used: true,
      made,
      // (x − R₁) ∪ A₁, then the same with 2: R = R₁ ∪ R₂, A = (A₁ − R₂) ∪ A₂.
      takes: once(() => {
        const [a, b] = [first.takes(), second.takes()];
        return a && b ? own(kernel.unite([a, b])) : (a ?? b);
      }),
      adds: once(() => {
        const [stands, cut, more] = [first.adds(), second.takes(), second.adds()];
        if (!stands) return more;
        if (!cut) return more ? own(kernel.unite([stands, more])) : stands;
        const rest = kernel.subtract(stands, cut);
        if (!rest) return more;
        if (!more) return own(rest);
        const all = own(kernel.unite([rest, more]));
        kernel.release(rest);
        return all;
      }),
    };
    groups.set(key, group);
    return group;
  }

  /** Splits at the greatest power of two below the length: what is added at the end of the list leaves all groups before it. */
  function grouped(steps: readonly Step[], from: number, to: number): Step {
    const count = to - from;
    if (count === 1) return steps[from]!;
    const middle = from + 2 ** Math.floor(Math.log2(count - 1));
    return compose(grouped(steps, from, middle), grouped(steps, middle, to));
  }

  const forget = (key: string, group: Group) => {
    for (const solid of group.made) kernel.release(solid);
    groups.delete(key);
  };

  return {
    leaf: (solid, adds) => ({
      id: ++lastId,
      adds: () => (adds ? solid : undefined),
      takes: () => (adds ? undefined : solid),
    }),
    // A run is put together first: no tool is then taken from what another has been taken from, along the same surface.
    solidOf: (runs) => {
      const steps = runs.filter((run) => run.length > 0).map((run) => grouped(run, 0, run.length));
      return steps.length === 0 ? undefined : grouped(steps, 0, steps.length).adds();
    },
    sweep: () => {
      for (const [key, group] of groups) {
        if (!group.used) forget(key, group);
        group.used = false;
      }
    },
    drop: () => {
      for (const [key, group] of groups) forget(key, group);
    },
  };
}

function once<T>(work: () => T): () => T {
  let done: { readonly value: T } | undefined;
  return () => {
    done ??= { value: work() };
    return done.value;
  };
}
