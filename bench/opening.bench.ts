import { mkdtempSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { createStore } from '../src/main/store/create-store.ts';
import { type Launched, launch } from '../tests/support/electron.ts';
import { goalLine, inWords, timesOf } from './measure.ts';
import { DIMENSIONS_PER_PART, syntheticBuild } from './synthetic-build.ts';

// The runtime, the built program and a screen are there already: `npm run bench` sees to them.
// A real window on a build of 10 000 dimensions in 500 parts: from the start of the program with the file, as a
// double-click does it, to the findings on the screen; and from the key that ends an edit to the frame that shows what it changed.

const DIMENSIONS = 10_000;
const OPENINGS = 5;
const EDITS = 30;
const WARM_UP = 6;
const OPENED_WITHIN_MS = 1_000;
const FRAME_MS = 1_000 / 60;
const PATIENCE_MS = 60_000;

const say = (line: string): void => console.log(line);
const wait = (ms: number): Promise<void> => new Promise((go) => setTimeout(go, ms));

/** Waits within the page, so that no message to and fro is measured. @returns the moment of the frame, ms since 1970. */
const findingsShown = (page: Page): Promise<number> =>
  page.evaluate(
    (patience) =>
      new Promise<number>((resolve, reject) => {
        const begun = Date.now();
        const look = (): void => {
          if (document.querySelector('.findings .finding-go') && document.querySelector('.grid-row')) {
            requestAnimationFrame(() => setTimeout(() => resolve(Date.now())));
          } else if (Date.now() - begun > patience) reject(new Error('No findings came to the screen.'));
          else setTimeout(look, 2);
        };
        look();
      }),
    PATIENCE_MS,
  );

interface Opening {
  readonly whole: number;
  /** From the start of the program until its window begins to load, and until the build is asked for. */
  readonly window: number;
  readonly page: number;
}

async function openOnce(file: string): Promise<{ opening: Opening; at: Launched }> {
  const at = await launch({ args: [file], root: process.cwd() });
  const shown = await findingsShown(at.page);
  const begun = await at.app.evaluate(() => process.getCreationTime() ?? Number.NaN);
  const [window, loaded] = await at.page.evaluate(() => [
    performance.timeOrigin,
    performance.timeOrigin +
      (performance.getEntriesByType('navigation')[0] as PerformanceNavigationTiming).domInteractive,
  ]);
  return { opening: { whole: shown - begun, window: window! - begun, page: loaded! - begun }, at };
}

/**
 * Watches for the next Enter and for the frame that shows another count of findings.
 * @returns ms between the two; the promise stands in the page until {@link editTime} fetches it.
 */
const watchEdit = (page: Page): Promise<void> =>
  page.evaluate((patience) => {
    const measured = new Promise<number>((resolve, reject) => {
      const watched = document.querySelector('.title-strip')!;
      let begun = Number.NaN;
      const giveUp = setTimeout(() => reject(new Error('An edit did not come to the screen.')), patience);
      addEventListener(
        'keydown',
        (event) => {
          if (event.key === 'Enter') begun = event.timeStamp;
        },
        { capture: true },
      );
      const counts = (): string => [...watched.querySelectorAll('.mark .figure')].map((e) => e.textContent).join();
      const before = counts();
      const observer = new MutationObserver(() => {
        if (counts() === before || Number.isNaN(begun)) return;
        observer.disconnect();
        clearTimeout(giveUp);
        requestAnimationFrame(() => {
          const channel = new MessageChannel();
          channel.port1.onmessage = () => resolve(performance.now() - begun);
          channel.port2.postMessage(undefined);
        });
      });
      observer.observe(watched, { subtree: true, childList: true, characterData: true });
    });
    Reflect.set(globalThis, 'measured', measured);
  }, PATIENCE_MS);

const editTime = (page: Page): Promise<number> =>
  page.evaluate(() => Reflect.get(globalThis, 'measured') as Promise<number>);

/** The length that closes the chain along X: 111.5 closes it, 131 contradicts it. */
async function edit(page: Page, value: string): Promise<number> {
  const row = page.locator('.grid-row', { has: page.locator('[data-column="name"]', { hasText: /^d15$/ }) });
  await row.locator('[data-column="value"]').click();
  await page.getByRole('grid').focus();
  await page.keyboard.type(value);
  await watchEdit(page);
  await page.keyboard.press('Enter');
  return editTime(page);
}

const folder = mkdtempSync(path.join(os.tmpdir(), 'waywright-bench-'));
try {
  const file = path.join(folder, 'large.wwb');
  const made = await createStore(file, [...syntheticBuild(DIMENSIONS).build.values()]);
  if (!made.ok) throw new Error(`The build could not be written: ${made.error.code}.`);
  say(`${DIMENSIONS} dimensions in ${DIMENSIONS / DIMENSIONS_PER_PART} parts, a real window:`);
  const openings: Opening[] = [];
  for (let i = 0; i < OPENINGS; i++) {
    const { opening, at } = await openOnce(file);
    openings.push(opening);
    if (i < OPENINGS - 1) {
      await at.close();
      continue;
    }
    try {
      const median = (of: (opening: Opening) => number): number => timesOf(openings.map(of)).median;
      say(
        `  until the window loads ${inWords(median((o) => o.window))}, until its page stands ${inWords(median((o) => o.page))}`,
      );
      say(
        goalLine(
          'from double-click to findings on the screen',
          median((o) => o.whole),
          OPENED_WITHIN_MS,
        ),
      );
      const times: number[] = [];
      for (let n = 0; n < EDITS; n++) {
        times.push(await edit(at.page, n % 2 === 0 ? '131' : '111.5'));
        await wait(50);
      }
      const { median: middle, p99 } = timesOf(times.slice(WARM_UP));
      say(goalLine('from the end of an edit to its findings on the screen', middle, FRAME_MS));
      say(`  99 of 100 within ${inWords(p99)}`);
    } finally {
      await at.close();
    }
  }
} finally {
  rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
}
