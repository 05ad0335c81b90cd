import type { DimensionId, SetupId } from '../../base/ids.ts';
import type { BuildRecord, RecordId } from '../../build/records.ts';
import type { Setup } from '../../build/setup.ts';
import type { ResolvedDimension } from '../../drawing/drawing.ts';
import type { SetupCheck } from '../setup-check.ts';
import { checkSetup, type SweptWork, sweptWork } from './check-setup.ts';
import { keepCheck } from './keep-check.ts';
import { partsHeld } from './resolve-work.ts';
import type { KeptInput } from './setup-input.ts';

/** What is kept of a set-up between edits. */
interface Kept {
  /** All that its work was resolved from. */
  readonly workBehind: readonly unknown[];
  readonly work: SweptWork;
  /** All else that it was judged by. */
  readonly behind: readonly unknown[];
  readonly roots: readonly Root[];
  readonly check: SetupCheck;
}

/** A dimension of any part that a remedy was sought in, as it was. */
interface Root {
  readonly id: DimensionId;
  readonly record: BuildRecord | undefined;
  readonly resolved: ResolvedDimension | undefined;
}

/** The checks of a build's set-ups, kept as long as nothing behind them changes. */
export interface SetupChecks {
  /** The very check of before where it would say the same. */
  check(input: KeptInput): SetupCheck;
  forget(setup: SetupId): void;
  /** Set-ups whose remedies were sought in dimensions that are other ones now: no part that they hold may have changed for it. */
  stale(
    get: (id: RecordId) => BuildRecord | undefined,
    resolved: (id: DimensionId) => ResolvedDimension | undefined,
  ): readonly Setup[];
}

export function createSetupChecks(): SetupChecks {
  const kept = new Map<SetupId, Kept>();
  const isStale = ({ id, record, resolved }: Root, get: (id: RecordId) => unknown, now: (id: DimensionId) => unknown) =>
    get(id) !== record || now(id) !== resolved;
  return {
    check(input) {
      const { setup, machines, numbers } = input;
      const before = kept.get(setup.id);
      const held = partsHeld(setup);
      const parts = held.map((part) => input.partOf(part));
      const workBehind: unknown[] = [setup, input.lengthUnit, ...held];
      for (const part of held) workBehind.push(input.partOf(part)?.bodies, ...input.behindOf(part));
      const behind: unknown[] = [machines];
      for (const part of parts)
        behind.push(part?.figures?.asCast, part?.figures?.finished, part?.material, part?.part.material);
      for (const { material } of setup.fixtures) behind.push(input.materialNamed(material));
      const sameWork = before !== undefined && sameList(before.workBehind, workBehind);
      const sameRoots = before?.roots.every((root) => !isStale(root, numbers.record, numbers.resolved)) ?? false;
      if (sameWork && sameRoots && sameList(before.behind, behind)) return before.check;
      const work = sameWork ? before.work : sweptWork(input);
      const { check: fresh, roots } = checkSetup(input, work);
      const check = before ? keepCheck(before.check, fresh) : fresh;
      const rootsNow = roots.map((id): Root => ({ id, record: numbers.record(id), resolved: numbers.resolved(id) }));
      kept.set(setup.id, { workBehind, work, behind, roots: rootsNow, check });
      return check;
    },
    forget: (setup) => void kept.delete(setup),
    stale: (get, resolved) =>
      [...kept.values()].flatMap(({ check, roots }) =>
        roots.some((root) => isStale(root, get, resolved)) ? [check.setup] : [],
      ),
  };
}

const sameList = (a: readonly unknown[], b: readonly unknown[]): boolean =>
  a.length === b.length && a.every((value, i) => Object.is(value, b[i]));
