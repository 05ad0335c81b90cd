import { expect, test } from 'vitest';
import { createPauses, type Left } from './pauses.ts';

/** Time in the test's own hand. */
function start(pieces: readonly Left[]) {
  const done: boolean[] = [];
  let planned: { readonly run: () => void; readonly afterMs: number } | undefined;
  let plans = 0;
  const left = [...pieces];
  const pauses = createPauses(
    (run, afterMs) => {
      const plan = { run, afterMs };
      planned = plan;
      plans++;
      return () => {
        if (planned === plan) planned = undefined;
      };
    },
    (isQuiet) => {
      done.push(isQuiet);
      return left.shift() ?? 'nothing';
    },
  );
  return {
    pauses,
    done,
    plans: () => plans,
    waits: () => planned?.afterMs,
    go: () => {
      const run = planned?.run;
      planned = undefined;
      run?.();
    },
  };
}

test('what someone waits for is done piece by piece, at once', () => {
  const at = start(['more', 'more', 'nothing']);
  at.pauses.wake();
  at.pauses.wake();
  for (let i = 0; i < 3; i++) {
    expect(at.waits()).toBe(0);
    at.go();
  }
  expect(at.waits()).toBeUndefined();
  expect(at.done).toEqual([false, false, false]);
});

test('what no one looks at waits until the window is quiet; a message makes it wait anew', () => {
  const at = start(['unseen', 'unseen', 'nothing']);
  at.pauses.wake();
  at.go();
  expect(at.waits()).toBeGreaterThan(0);
  const before = at.plans();
  at.pauses.disturb();
  expect(at.plans()).toBe(before + 1);
  expect(at.waits()).toBeGreaterThan(0);
  at.go();
  at.go();
  expect(at.done).toEqual([false, true, true]);
  expect(at.waits()).toBeUndefined();
});

test('being woken goes before what waits for quiet, and a message does not put off what someone waits for', () => {
  const at = start(['unseen', 'nothing']);
  at.pauses.wake();
  at.go();
  at.pauses.wake();
  expect(at.waits()).toBe(0);
  const before = at.plans();
  at.pauses.disturb();
  expect(at.plans()).toBe(before);
  at.go();
  expect(at.done).toEqual([false, false]);
});
