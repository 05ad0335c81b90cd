import type { PartId } from '../base/ids.ts';
import { allOf, type Pieces } from '../base/pieces.ts';
import { sameContent } from '../drawing/keep.ts';
import { type Kernel, KernelFault, type KernelMesh } from '../solid/manifold/kernel.ts';
import { type MadePattern, makingPattern, type PatternOrder, patternMesh } from './make-pattern.ts';
import { checkPattern, type PatternCheck, type PatternInput, type PatternPlan, planPattern } from './pattern-check.ts';

/** The patterns of a build over a kernel that is loaded; without one, everything that needs no solid. */
export interface PatternShop {
  /**
   * What is said of a casting now. Keeps its identity while nothing behind it changes, and its solids while none of its bodies
   * does.
   */
  check(input: PatternInput): PatternCheck;
  /** Parts whose solids are still to be made of what they were last checked with. */
  pending(): readonly PartId[];
  /** Makes the solids of a part. @returns whether what `check` says of it is now another. */
  compute(part: PartId): boolean;
  /** The same in pieces. It may be left at any of them, or begun anew; what it holds of the kernel's memory is given back then. */
  computing(part: PartId): Pieces<boolean>;
  /** The surface of the pattern as it was last checked, for showing. */
  meshOf(part: PartId): KernelMesh | undefined;
  /** Lets go of a part that is no longer cast. */
  forget(part: PartId): void;
}

interface Kept {
  readonly plan: PatternPlan;
  readonly order: PatternOrder;
  /** Of `order`; undefined while it is not made. The kernel may have given up on it. */
  readonly made: { readonly of: MadePattern | undefined } | undefined;
  readonly check: PatternCheck;
}

/** @param kernelOf the kernel once it is loaded; asked at each use. */
export function createPatternShop(kernelOf: () => Kernel | undefined): PatternShop {
  const kept = new Map<PartId, Kept>();
  const making = new Map<PartId, Pieces<MadePattern>>();

  const leave = (part: PartId) => {
    making.get(part)?.return({} as MadePattern);
    making.delete(part);
  };

  function* computing(part: PartId): Pieces<boolean> {
    leave(part);
    const kernel = kernelOf();
    const first = kept.get(part);
    if (!kernel || !first || first.made) return false;
    const { order } = first;
    const pieces = makingPattern(kernel, order);
    making.set(part, pieces);
    const of = yield* orNothing(pieces);
    // Begun anew, or checked with other bodies meanwhile: this is of no use.
    if (making.get(part) !== pieces) return false;
    making.delete(part);
    const now = kept.get(part);
    if (!now || now.order !== order) return false;
    kept.set(part, { ...now, made: { of }, check: keepFields(now.check, checkPattern(now.plan, of)) });
    return of !== undefined;
  }

  return {
    check(input) {
      const before = kept.get(input.part);
      if (before && sameInput(before.plan.input, input)) return before.check;
      const plan = planPattern(input);
      const isSame = before !== undefined && sameContent(before.order, plan.order);
      const order = isSame ? before.order : plan.order;
      const made = isSame ? before.made : undefined;
      const check = keepFields(before?.check, checkPattern(plan, made?.of));
      kept.set(input.part, { plan, order, made, check });
      return check;
    },
    pending: () => (kernelOf() ? [...kept].flatMap(([part, { made }]) => (made ? [] : [part])) : []),
    compute: (part) => allOf(computing(part)),
    computing,
    meshOf(part) {
      const kernel = kernelOf();
      const now = kept.get(part);
      return kernel && now ? patternMesh(kernel, now.order) : undefined;
    },
    forget(part) {
      leave(part);
      kept.delete(part);
    },
  };
}

/** Undefined when the kernel gave up on the bodies. */
function* orNothing(pieces: Pieces<MadePattern>): Pieces<MadePattern | undefined> {
  try {
    return yield* pieces;
  } catch (error) {
    if (error instanceof KernelFault) return undefined;
    throw error;
  }
}

/** Whether every entry is the very one of before, lists entry by entry. */
function sameInput(a: PatternInput, b: PatternInput): boolean {
  return (Object.keys(a) as (keyof PatternInput)[]).every((key) => {
    const [x, y] = [a[key], b[key]];
    if (Array.isArray(x) && Array.isArray(y)) return x.length === y.length && x.every((one, i) => one === y[i]);
    return x === y;
  });
}

/** The fresh check with all fields that say what they said before; the very one of before where all do. */
function keepFields(before: PatternCheck | undefined, fresh: PatternCheck): PatternCheck {
  if (!before) return fresh;
  const fields = Object.keys(fresh) as (keyof PatternCheck)[];
  const kept = Object.fromEntries(
    fields.map((field) => [field, sameContent(before[field], fresh[field]) ? before[field] : fresh[field]]),
  ) as unknown as PatternCheck;
  return fields.every((field) => kept[field] === before[field]) ? before : kept;
}
