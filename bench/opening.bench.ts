import { existsSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { createStore } from '../src/main/store/create-store.ts';
import type { Stage } from '../src/renderer/engine/stages.ts';
import { goalLine, inWords, timesOf } from './measure.ts';
import { pagesOf, type Running, startPlain, writeEmptyProgram } from './plain-start.ts';
import { DIMENSIONS_PER_PART, syntheticBuild } from './synthetic-build.ts';

// The runtime, the built program and a screen are there already: `npm run bench` sees to them.
// A real window on a build of 10 000 dimensions in 500 parts: from the start of the program with the file, as a
// double-click does it, to the findings on the screen; the same in a program that runs already, to which the second start
// hands the file; and from the key that ends an edit to the frame that shows what it changed. Beside them stands the
// floor: a program of one empty window. The page marks its stages by its own clock, and they are read when all is over:
// nothing looks on meanwhile. The first opening of all is not counted: the compiled code is kept from then on. A build is
// opened for the first time (nothing of it is kept: the views that were are taken away before) and again, as it was left.

const DIMENSIONS = 10_000;
const OPENINGS = 7;
const EDITS = 36;
const WARM_UP = 6;
const OPENED_WITHIN_MS = 1_000;
const FRAME_MS = 1_000 / 60;
const EDIT_MS = 50;
const PATIENCE_MS = 60_000;
const REST_MS = 400;

const say = (line: string): void => console.log(line);
const wait = (ms: number): Promise<void> => new Promise((go) => setTimeout(go, ms));
const stages: readonly Stage[] = ['script', 'read', 'worked out', 'table', 'findings'];

/** Moments of an opening, ms since 1970. */
interface Opening extends Readonly<Record<Stage, number>> {
  /** The page begins to load. */
  readonly page: number;
}

async function until<T>(look: () => Promise<T | undefined>): Promise<T> {
  for (const begun = Date.now(); Date.now() - begun < PATIENCE_MS; await wait(50)) {
    const found = await look();
    if (found !== undefined) return found;
  }
  throw new Error('The findings did not come to the screen.');
}

/** What a page marked, when it has marked all, and truly shows findings and a table. */
const openingOf = (page: Page): Promise<Opening | undefined> =>
  page.evaluate((names) => {
    const begun = performance.timeOrigin;
    const marks = names.map((name) => performance.getEntriesByName(name, 'mark')[0]);
    const isShown = document.querySelector('.findings .finding-go') && document.querySelector('.grid-row');
    if (!isShown || marks.some((mark) => mark === undefined)) return undefined;
    const moments = names.map((name, i) => [name, begun + (marks[i]?.startTime ?? Number.NaN)]);
    return { page: begun, ...Object.fromEntries(moments) };
  }, stages);

const shownAt = ({ findings, table }: Opening): number => Math.max(findings, table);

/** @returns the time that an empty window takes, ms. */
async function floor(graphics: boolean): Promise<number> {
  const running = startPlain([writeEmptyProgram(folder, graphics)], path.join(folder, 'empty-data'));
  await running.ended;
  return Number(/painted (\d+)/.exec(running.output())?.[1]) - running.begun;
}

/** Once the program has had time to show its findings undisturbed. */
async function firstPage(running: Running): Promise<{ page: Page; opening: Opening }> {
  await wait(REST_MS * 6);
  const browser = await running.attach();
  return until(async () => {
    const [page] = pagesOf(browser);
    const opening = page && (await openingOf(page));
    return opening && { page, opening };
  });
}

interface EditTimes {
  /** ms from the key to the frame in which the cell shows what was written, its editor gone. */
  readonly cell: number;
  /** ms from the key to the frame that shows another count of findings. */
  readonly findings: number;
}

/** Watches for the next Enter and for what follows it; the promise stands in the page until {@link editTimes} fetches it. */
const watchEdit = (page: Page, value: string): Promise<void> =>
  page.evaluate(
    ([patience, written]) => {
      const measured = new Promise<EditTimes>((resolve, reject) => {
        const watched = document.querySelector('.window')!;
        let cell = Number.NaN;
        let findings = Number.NaN;
        const isWritten = (): boolean =>
          document.querySelector('.grid .edited') === null &&
          [...document.querySelectorAll('.grid [data-column="value"]')].some((e) => e.textContent?.startsWith(written));
        let begun = Number.NaN;
        const giveUp = setTimeout(() => reject(new Error('An edit did not come to the screen.')), patience);
        addEventListener(
          'keydown',
          (event) => {
            if (event.key === 'Enter') begun = event.timeStamp;
          },
          { capture: true },
        );
        const counts = (): string =>
          [...watched.querySelectorAll('.title-strip .mark .figure')].map((e) => e.textContent).join();
        const before = counts();
        // The frame is painted between the callbacks for it and the next task; one of the highest rank is that.
        const atFrame = (then: (ms: number) => void): void =>
          void requestAnimationFrame(() => {
            void scheduler.postTask(() => then(performance.now() - begun), { priority: 'user-blocking' });
          });
        const settle = (): void => {
          if (Number.isNaN(cell) || Number.isNaN(findings)) return;
          clearTimeout(giveUp);
          resolve({ cell, findings });
        };
        let isCellSeen = false;
        let isCountSeen = false;
        const observer = new MutationObserver(() => {
          if (Number.isNaN(begun)) return;
          if (!isCellSeen && isWritten()) {
            isCellSeen = true;
            atFrame((ms) => {
              cell = ms;
              settle();
            });
          }
          if (!isCountSeen && counts() !== before) {
            isCountSeen = true;
            atFrame((ms) => {
              findings = ms;
              settle();
            });
          }
          if (isCellSeen && isCountSeen) observer.disconnect();
        });
        observer.observe(watched, { subtree: true, childList: true, characterData: true });
      });
      Reflect.set(globalThis, 'measured', measured);
    },
    [PATIENCE_MS, value] as const,
  );

const editTimes = (page: Page): Promise<EditTimes> =>
  page.evaluate(() => Reflect.get(globalThis, 'measured') as Promise<EditTimes>);

/** The length that closes the chain along X: 111.5 closes it, 131 contradicts it. */
async function edit(page: Page, value: string): Promise<EditTimes> {
  const row = page.locator('.grid-row', { has: page.locator('[data-column="name"]', { hasText: /^d15$/ }) });
  await row.locator('[data-column="value"]').click();
  await page.getByRole('grid').focus();
  await page.keyboard.type(value);
  await watchEdit(page, value);
  await page.keyboard.press('Enter');
  return editTimes(page);
}

/** A second start, which hands its file to the program that runs and goes. @returns ms to the findings. */
async function openFurther(running: Running, file: string): Promise<number> {
  const second = startPlain([process.cwd(), file], userData);
  await second.ended;
  await wait(REST_MS * 4);
  const browser = await running.attach();
  try {
    return await until(async () => {
      for (const page of pagesOf(browser)) {
        const opening = await openingOf(page);
        if (opening !== undefined && opening.page > second.begun) return shownAt(opening) - second.begun;
      }
      return undefined;
    });
  } finally {
    await browser.close();
  }
}

const folder = mkdtempSync(path.join(os.tmpdir(), 'waywright-bench-'));
const userData = path.join(folder, 'data');
const keptViews = path.join(userData, 'kept-views');

async function makeBuild(name: string): Promise<string> {
  const file = path.join(folder, name);
  if (existsSync(file)) return file;
  const made = await createStore(file, [...syntheticBuild(DIMENSIONS).build.values()]);
  if (!made.ok) throw new Error(`The build could not be written: ${made.error.code}.`);
  return file;
}

const median = (samples: readonly number[]): number => timesOf(samples).median;
const spread = (samples: readonly number[]): string =>
  `${inWords(Math.min(...samples))} to ${inWords(Math.max(...samples))}`;

interface Started {
  readonly begun: number;
  readonly opening: Opening;
}

const areKept = (): boolean => existsSync(keptViews) && readdirSync(keptViews).some((name) => name.endsWith('.json'));

/** @param keep waits until the first views are kept, as they are when the window was left alone for a while. */
async function openOnce(file: string, keep: boolean): Promise<Started> {
  const running = startPlain([process.cwd(), file], userData);
  try {
    const { opening } = await firstPage(running);
    if (keep) await until(async () => areKept() || undefined);
    return { begun: running.begun, opening };
  } finally {
    await running.close();
  }
}

function sayOpenings(title: string, openings: readonly Started[], floorMs: number): void {
  const since = (of: (opening: Opening) => number): number[] =>
    openings.map(({ begun, opening }) => of(opening) - begun);
  const whole = since(shownAt);
  say(goalLine(`from double-click to findings on the screen, ${title}`, median(whole), OPENED_WITHIN_MS));
  say(`  ${spread(whole)}; above the floor ${inWords(median(whole) - floorMs)}`);
  say(`  the page begins to load after ${inWords(median(since((o) => o.page)))}`);
  for (const stage of stages) say(`    ${stage}: ${inWords(median(since((o) => o[stage])))}`);
}

async function benchOpening(file: string): Promise<void> {
  const bare: number[] = [];
  const bareWithout: number[] = [];
  const firsts: Started[] = [];
  const others: Started[] = [];
  for (let i = -1; i < OPENINGS; i++) {
    const empty = await floor(true);
    const emptyWithout = await floor(false);
    rmSync(keptViews, { recursive: true, force: true });
    const first = await openOnce(file, true);
    const again = await openOnce(file, false);
    if (i < 0) continue;
    bare.push(empty);
    bareWithout.push(emptyWithout);
    firsts.push(first);
    others.push(again);
  }
  say(`  the floor: an empty window of Electron on this machine: ${inWords(median(bare))} (${spread(bare)});`);
  say(`    not looking for a graphics device: ${inWords(median(bareWithout))} (${spread(bareWithout)})`);
  sayOpenings('for the first time', firsts, median(bare));
  sayOpenings('again', others, median(bare));
}

async function benchRunning(files: readonly string[]): Promise<void> {
  const [first, ...others] = files;
  const running = startPlain([process.cwd(), first!], userData);
  try {
    const { page } = await firstPage(running);
    const times: EditTimes[] = [];
    for (const n of Array.from({ length: EDITS }).keys()) {
      times.push(await edit(page, n % 2 === 0 ? '131' : '111.5'));
      await wait(50);
    }
    const counted = times.slice(WARM_UP);
    const cell = timesOf(counted.map((each) => each.cell));
    const findings = timesOf(counted.map((each) => each.findings));
    const further: number[] = [];
    for (const file of others) further.push(await openFurther(running, file));
    say(goalLine('the same in a program that runs already', median(further), OPENED_WITHIN_MS));
    say(`  ${spread(further)}`);
    say(goalLine('from the key that ends an edit to the cell that shows it', cell.median, FRAME_MS));
    say(
      `  99 of 100 within ${inWords(cell.p99)}; the quickest ${inWords(Math.min(...counted.map((each) => each.cell)))}`,
    );
    say(goalLine('from the key that ends an edit to its findings on the screen', findings.median, EDIT_MS));
    say(
      `  99 of 100 within ${inWords(findings.p99)}; the quickest ${inWords(Math.min(...counted.map((each) => each.findings)))}`,
    );
  } finally {
    await running.close();
  }
}

try {
  const files = await Promise.all(['a', 'b', 'c', 'd', 'e', 'f'].map((name) => makeBuild(`${name}.wayw`)));
  say(`${DIMENSIONS} dimensions in ${DIMENSIONS / DIMENSIONS_PER_PART} parts, a real window:`);
  await benchOpening(files[0]!);
  await benchRunning(files);
} finally {
  rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
}
