import { describe, expect, test } from 'vitest';
import type { CommitError } from '../../shared/ipc/contract.ts';
import { emptyReport, windowTitle } from './build-window.ts';
import { PATIENCE_MS, waitToClose } from './closing.ts';

/** A save that takes so many milliseconds and then succeeds or fails. */
function saving(forMs: number, end: CommitError | undefined, answer = false) {
  let now = 0;
  const asked: (CommitError | undefined)[] = [];
  return {
    asked,
    elapsed: () => now,
    isSaving: () => now < forMs || end !== undefined,
    failure: () => (now >= forMs ? end : undefined),
    askToLose: async (failure: CommitError | undefined) => {
      asked.push(failure);
      return answer;
    },
    pause: async (ms: number) => {
      now += ms;
    },
  };
}

describe('closing', () => {
  test('goes at once when everything is on disk', async () => {
    const s = saving(0, undefined);
    expect(await waitToClose(s)).toBe(true);
    expect(s.elapsed()).toBe(0);
  });

  test('waits for a save under way and does not ask', async () => {
    const s = saving(300, undefined);
    expect(await waitToClose(s)).toBe(true);
    expect(s.elapsed()).toBeGreaterThanOrEqual(300);
    expect(s.asked).toEqual([]);
  });

  test.each([true, false])('asks when the last edit could not be saved (answer %s)', async (answer) => {
    const s = saving(100, { code: 'disk-full' }, answer);
    expect(await waitToClose(s)).toBe(answer);
    expect(s.asked).toEqual([{ code: 'disk-full' }]);
  });

  test('asks when the disk does not answer', async () => {
    const s = saving(Number.POSITIVE_INFINITY, undefined);
    expect(await waitToClose(s)).toBe(false);
    expect(s.asked).toEqual([undefined]);
    expect(s.elapsed()).toBeLessThan(PATIENCE_MS + 100);
  });
});

describe('the title', () => {
  const saved = { report: emptyReport, pending: 0, failed: undefined, edited: false, readOnly: false };
  test.each([
    ['Engine — Waywright', saved],
    ['Engine (saved) — Waywright', { ...saved, edited: true }],
    ['Engine (saving…) — Waywright', { ...saved, edited: true, pending: 1 }],
    ['Engine (saving…) — Waywright', { ...saved, report: { ...emptyReport, saving: true } }],
    ['Engine (not saved) — Waywright', { ...saved, pending: 1, failed: { code: 'disk-full' } as const }],
    ['Engine (read-only) — Waywright', { ...saved, readOnly: true }],
  ])('%s', (title, state) => {
    expect(windowTitle('Engine', state)).toBe(title);
  });

  test('without a build is the program', () => {
    expect(windowTitle(undefined, saved)).toBe('Waywright');
  });
});
