import { rm } from 'node:fs/promises';
import path from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { defaultSettings } from '../../src/shared/build/settings.ts';
import { workbench } from '../store/sample-build.ts';
import { killAndCheck } from './kill-and-check.ts';
import { bundleChild } from './run-child.ts';
import { randomOf } from './strokes.ts';

const bench = workbench();
let bundle = '';
beforeAll(async () => {
  bundle = await bundleChild('editor');
});
afterAll(() => rm(path.dirname(bundle), { recursive: true, force: true }));

/** Kills of each of the two builds that are edited at a time; `scripts/soak/soak.mjs` asks for more. */
const KILLS = Number(process.env.WAYWRIGHT_SOAK ?? 100);

test(`${2 * KILLS} kills lose no acknowledged edit`, { timeout: 3_000 * KILLS }, async () => {
  const seed = Date.now() % 2 ** 31;
  const edits = await Promise.all(
    [seed, seed + 1].map(async (start) => {
      const file = await bench.file([defaultSettings('Frame')]);
      try {
        return await killAndCheck({ bundle, file, kills: KILLS, random: randomOf(start) });
      } catch (error) {
        throw new Error(`with seed ${start}: ${String(error)}`, { cause: error });
      }
    }),
  );
  // A test in which nothing was edited would prove nothing.
  expect(edits[0]! + edits[1]!).toBeGreaterThan(2 * KILLS);
});
