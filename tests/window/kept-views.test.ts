import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { syntheticBuild } from '../../bench/synthetic-build.ts';
import { createStore } from '../../src/main/store/create-store.ts';
import { type Launched, launch } from '../support/electron.ts';
import { chooseMenu, invoke } from './shell-driver.ts';

const DIMENSIONS = 4_000;
/** It is kept when the window was left alone for five seconds. */
const PATIENCE = { timeout: 60_000 };

let folder = '';
let data = '';
let file = '';
beforeAll(async () => {
  folder = mkdtempSync(path.join(os.tmpdir(), 'waywright-kept-'));
  data = path.join(folder, 'data');
  file = path.join(folder, 'works.wayw');
  const made = await createStore(file, [...syntheticBuild(DIMENSIONS).build.values()]);
  expect(made.ok).toBe(true);
});
afterAll(() => rmSync(folder, { recursive: true, force: true, maxRetries: 5 }));

const keptFiles = (): readonly string[] => {
  const kept = path.join(data, 'kept-views');
  return existsSync(kept) ? readdirSync(kept).map((name) => path.join(kept, name)) : [];
};
const open = (): Promise<Launched> => launch({ args: [file], userData: data });
const whatIsShown = async (page: Page): Promise<readonly string[]> => {
  await page.locator('.findings .finding-go').first().waitFor();
  await page.locator('.grid-row').nth(3).waitFor();
  return page.evaluate(() =>
    ['.title-strip', '.findings', '.grid', '[aria-label="Parts"]', '.strip'].map(
      (place) => document.querySelector(place)?.textContent ?? '',
    ),
  );
};
const marks = (page: Page): Promise<Readonly<Record<string, number>>> =>
  page.evaluate(() =>
    Object.fromEntries(performance.getEntriesByType('mark').map(({ name, startTime }) => [name, startTime])),
  );
const hasKept = async (page: Page): Promise<boolean> => {
  const loaded = await invoke(page, 'build:load', undefined);
  return loaded.ok && loaded.value?.keptViews !== undefined;
};

let shownFirst: readonly string[] = [];

test('what a build shows first is kept when the window was left alone, and shown by the next start at once', async () => {
  const first = await open();
  try {
    shownFirst = await whatIsShown(first.page);
    expect(await hasKept(first.page)).toBe(false);
    await expect.poll(() => keptFiles().length, PATIENCE).toBe(1);
  } finally {
    await first.close();
  }
  const again = await open();
  try {
    expect(await whatIsShown(again.page)).toEqual(shownFirst);
    await expect.poll(async () => (await marks(again.page))['worked out'], PATIENCE).toBeDefined();
    const at = await marks(again.page);
    // Painted from what was kept, before the engine had come to it.
    expect(at.findings).toBeLessThan(at['worked out'] ?? 0);
    expect(at.table).toBeLessThan(at['worked out'] ?? 0);
    // The engine's own views have come since: nothing looks different.
    expect(await whatIsShown(again.page)).toEqual(shownFirst);
    expect(await hasKept(again.page)).toBe(true);
  } finally {
    await again.close();
  }
});

test('a finding is gone to and an edit is made as soon as they are on the screen; after it, the build is worked out anew', async () => {
  const at = await open();
  const { page } = at;
  try {
    const finding = page.locator('.findings .finding').nth(3);
    await finding.locator('.finding-go').click();
    const named = await finding.locator('.finding-part').textContent();
    expect(named).not.toBe('item 0');
    await page
      .locator('.board h2', { hasText: new RegExp(`^${named}$`) })
      .first()
      .waitFor();
    await page.locator('.board:not([inert])').first().waitFor();
    const name = page.locator('.grid-row:not(.new) [data-column="name"]').first();
    await name.click();
    await page.getByRole('grid').focus();
    await page.keyboard.type('renamed');
    await page.keyboard.press('Enter');
    await expect.poll(() => name.textContent(), PATIENCE).toBe('renamed');
    // On disk: what is there is no longer what was kept.
    await expect.poll(() => hasKept(page), PATIENCE).toBe(false);
  } finally {
    // Before it is kept as it is now.
    await at.kill();
  }
  const again = await open();
  try {
    await whatIsShown(again.page);
    expect(await hasKept(again.page)).toBe(false);
    await expect.poll(() => keptFiles().length, PATIENCE).toBe(2);
    expect(await hasKept(again.page)).toBe(true);
  } finally {
    await again.close();
  }
});

test('a damaged one is removed and the build worked out; clearing the recent files clears them all', async () => {
  const spoilt = keptFiles();
  for (const each of spoilt) writeFileSync(each, readFileSync(each, 'utf8').slice(0, -20));
  const at = await open();
  try {
    const shown = await whatIsShown(at.page);
    expect(shown[1]).toBe(shownFirst[1]);
    expect(keptFiles()).toHaveLength(1);
    await expect.poll(() => keptFiles().length, PATIENCE).toBe(2);
    await chooseMenu(at.app, 'clear-recent');
    await expect.poll(() => keptFiles().length, PATIENCE).toBe(0);
  } finally {
    await at.close();
  }
});

test('another engine has another text to tell it by: each script is named by what is in it', () => {
  const built = path.resolve(import.meta.dirname, '../../out/renderer');
  const script = /src="\.\/(assets\/index-[\w-]{8}\.js)"/.exec(
    readFileSync(path.join(built, 'index.html'), 'utf8'),
  )?.[1];
  expect(script).toBeDefined();
  const worker = readdirSync(path.join(built, 'assets')).find((name) => /^worker-[\w-]{8}\.js$/.test(name));
  expect(worker).toBeDefined();
  expect(readFileSync(path.join(built, script ?? ''), 'utf8')).toContain(worker ?? '');
});
