import { sameContent } from '../../drawing/keep.ts';
import type { SetupCheck, SweptProfile } from '../setup-check.ts';

/** A fresh check with whatever says the same taken from the one before; that itself where all does. */
export function keepCheck(before: SetupCheck, fresh: SetupCheck): SetupCheck {
  const verdicts = keepEach(before.verdicts, fresh.verdicts);
  const unknown = keepEach(before.unknown, fresh.unknown);
  const balanceUnknown = keepEach(before.balanceUnknown, fresh.balanceUnknown);
  const balance = sameContent(before.balance, fresh.balance) ? before.balance : fresh.balance;
  const extent = sameContent(before.extent, fresh.extent) ? before.extent : fresh.extent;
  const profile = sameProfile(before.profile, fresh.profile) ? before.profile : fresh.profile;
  const same =
    before.setup === fresh.setup &&
    verdicts === before.verdicts &&
    unknown === before.unknown &&
    balanceUnknown === before.balanceUnknown &&
    balance === before.balance &&
    extent === before.extent &&
    profile === before.profile;
  return same ? before : { setup: fresh.setup, profile, extent, verdicts, unknown, balance, balanceUnknown };
}

function keepEach<T>(before: readonly T[], fresh: readonly T[]): readonly T[] {
  let same = before.length === fresh.length;
  const kept = fresh.map((one, i) => {
    const old = before[i];
    if (old !== undefined && sameContent(old, one)) return old;
    same = false;
    return one;
  });
  return same ? before : kept;
}

function sameProfile(a: SweptProfile | undefined, b: SweptProfile | undefined): boolean {
  if (!a || !b) return a === b;
  return (
    a.axis === b.axis &&
    sameNumbers(a.edges, b.edges) &&
    sameNumbers(a.most, b.most) &&
    sameNumbers(a.least, b.least) &&
    sameNumbers(a.by, b.by) &&
    sameContent(a.pieces, b.pieces)
  );
}

function sameNumbers(a: Float64Array | Int32Array, b: Float64Array | Int32Array): boolean {
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (!Object.is(a[i], b[i])) return false;
  return true;
}
