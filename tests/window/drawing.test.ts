import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import os from 'node:os';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Launched, launch } from '../support/electron.ts';
import { chooseMenu, menuItem } from './shell-driver.ts';

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** Rules of WCAG 2.2 A and AA and of good practice that the page breaks, with the first place of each. */
async function violations(page: Page): Promise<readonly string[]> {
  await page.evaluate(axeSource);
  return page.evaluate(async () => {
    const axe = Reflect.get(globalThis, 'axe') as {
      run(root: Document, options: object): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }>;
    };
    const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
    const { violations: found } = await axe.run(document, { runOnly: tags });
    return found.map(({ id, nodes }) => `${id}: ${nodes[0]?.html.slice(0, 200)}`);
  });
}

const part = (page: Page, name: string) =>
  page.getByRole('listbox', { name: 'Parts' }).getByRole('option', { name }).first();
/** Chooses a part and waits until its sheet is on the board. */
async function onBoard(page: Page, name: string): Promise<void> {
  await part(page, name).click();
  await page.locator('.board h2', { hasText: new RegExp(`^${name}$`) }).waitFor();
}
const grid = (page: Page) => page.getByRole('grid');
const cell = (page: Page, dimension: string, column: string) =>
  page
    .locator('.grid-row', { has: page.locator(`[data-column="name"]`, { hasText: new RegExp(`^${dimension}$`) }) })
    .locator(`[data-column="${column}"]`);
const saved = (page: Page) => expect.poll(() => page.locator('[data-saved]').textContent()).toBe('saved');
const stops = async (page: Page): Promise<number> =>
  Number((await page.locator('.title-box .mark.stop .figure').textContent({ timeout: 5_000 })) ?? 0);

/** x of a station's tick on the strip, in px. */
const tickX = (page: Page, name: string) =>
  page
    .locator('.strip-tick', { hasText: new RegExp(`^${name}$`) })
    .locator('.tick')
    .evaluate((tick) => tick.getBoundingClientRect().x);

describe('the Drawing Office on the example as first drawn', () => {
  let at: Launched;
  let page: Page;
  let data = '';
  beforeAll(async () => {
    data = mkdtempSync(path.join(os.tmpdir(), 'waywright-drawing-'));
    at = await launch({ args: ['--example=as-first-drawn'], userData: data });
    page = at.page;
    await page.waitForSelector('.strip-arc');
  });
  afterAll(async () => {
    await at?.close();
    rmSync(data, { recursive: true, force: true, maxRetries: 5 });
  });

  test('is free of accessibility faults, light and dark', async () => {
    await page.emulateMedia({ colorScheme: 'light' });
    expect(await violations(page)).toEqual([]);
    await page.emulateMedia({ colorScheme: 'dark' });
    expect(await violations(page)).toEqual([]);
    await page.getByRole('tab', { name: /Stations/ }).click();
    expect(await violations(page)).toEqual([]);
    await page.getByRole('tab', { name: /Dimensions/ }).click();
    await page.emulateMedia({ colorScheme: 'light' });
  });

  test('a finding goes to its place and lights up what it points at', async () => {
    const finding = page.locator('[data-rule="contradiction"] .finding-go').first();
    await finding.click();
    await expect.poll(() => page.locator('.grid-row.selected').count()).toBe(1);
    const id = await page.locator('.grid-row.selected').getAttribute('data-row');
    await expect.poll(() => page.locator(`.strip-arc.conflict.lit[data-arc="${id}"]`).count()).toBe(1);
    expect(await page.locator('.strip-arc.conflict.lit').count()).toBeGreaterThan(1);
    expect(await page.locator('.strip-conflicts').textContent()).toMatch(/does not close by \d/);
    expect(await violations(page)).toEqual([]);
  });

  test('what is written is judged at every keystroke, and Esc leaves the cell as it was', async () => {
    await onBoard(page, 'trunnion bracket');
    await cell(page, 'boss diameter', 'value').click();
    await grid(page).focus();
    await page.keyboard.type('2 * pivot');
    await expect.poll(() => page.locator('[data-cell-problem] u').textContent()).toBe('pivot');
    expect(await violations(page)).toEqual([]);
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Enter');
    await expect.poll(() => page.locator('[data-cell-shown]').textContent()).toBe('= 19.05 mm');
    await page.keyboard.press('Escape');
    expect(await cell(page, 'boss diameter', 'value').textContent()).toBe('22');
    await expect.poll(() => menuItem(at.app, 'undo').then((item) => item?.enabled)).toBe(false);
  });

  test('a missing dimension is filled in: the tick falls into place, the finding goes, the gate opens', async () => {
    const before = await stops(page);
    await page.locator('[data-rule="station-not-placed"] .finding-go').first().click();
    await expect.poll(() => page.locator('.strip-tie').count()).toBe(1);
    expect(await page.locator('.strip-base.floats').count()).toBe(1);
    await page.locator('.strip-tie text').click();
    await expect.poll(() => page.locator('.cell-input').count()).toBe(1);
    await page.keyboard.type('38');
    await page.keyboard.press('Enter');
    await expect.poll(() => page.locator('.strip-base.floats').count()).toBe(0);
    // The station, and the three bodies that hang on it.
    await expect.poll(() => stops(page)).toBe(before - 8);
    await expect.poll(() => part(page, 'trunnion bracket').textContent()).toContain('clear to cut');
    // Its solid is worked out between messages.
    await expect
      .poll(() => part(page, 'trunnion bracket').textContent(), { timeout: 10_000 })
      .not.toContain('not clear to cut');
    await saved(page);
    await page.waitForTimeout(400);
    const [foot, top, line] = [
      await tickX(page, 'foot'),
      await tickX(page, 'foot top'),
      await tickX(page, 'pivot line'),
    ];
    expect((line - top) / (top - foot)).toBeCloseTo(38 / 10, 1);
  });

  test('undo and redo go by the menu, and survive a kill', async () => {
    await expect.poll(() => menuItem(at.app, 'undo').then((item) => item?.label)).toMatch(/^Undo set .*38/);
    await chooseMenu(at.app, 'undo');
    await expect.poll(() => page.locator('.strip-base.floats').count()).toBe(1);
    await expect.poll(() => part(page, 'trunnion bracket').textContent()).toContain('not clear to cut');
    await saved(page);
    await at.kill();

    at = await launch({ args: ['--example=as-first-drawn'], userData: data });
    page = at.page;
    await page.waitForSelector('.strip-arc');
    await onBoard(page, 'trunnion bracket');
    await expect.poll(() => menuItem(at.app, 'redo').then((item) => item?.label)).toMatch(/^Redo set .*38/);
    await chooseMenu(at.app, 'redo');
    await expect
      .poll(() => part(page, 'trunnion bracket').textContent(), { timeout: 10_000 })
      .not.toContain('not clear to cut');
  });

  test('a block goes to a spreadsheet and comes back, as one step', async () => {
    await onBoard(page, 'trunnion bracket');
    await cell(page, 'foot thickness', 'name').click();
    await grid(page).focus();
    await page.keyboard.press('Shift+ArrowDown');
    for (let i = 0; i < 3; i++) await page.keyboard.press('Shift+ArrowRight');
    await page.keyboard.press('Control+c');
    await expect
      .poll(() => at.app.evaluate(({ clipboard }) => clipboard.readText()))
      .toBe('foot thickness\tfoot\tfoot top\t10\ncrown height\tpivot line\tcrown\t"""boss diameter"" / 2"\n');
    await at.app.evaluate(({ clipboard }) =>
      clipboard.writeText('dowel hole\tdiameter\t\t1/4"\ndowel depth\tlength\t\t"""dowel hole"" * 2"\n'),
    );
    await page.keyboard.press('Control+End');
    await page.keyboard.press('Home');
    await page.keyboard.press('Control+v');
    await expect.poll(() => cell(page, 'dowel depth', 'resolved').textContent()).toBe('12.7 mm');
    await chooseMenu(at.app, 'undo');
    await expect.poll(() => cell(page, 'dowel hole', 'name').count()).toBe(0);
  });

  test('a pasted block that cannot be taken is refused whole, naming its row', async () => {
    await at.app.evaluate(({ clipboard }) => clipboard.writeText('good\tdiameter\t\t5\nbad\tnowhere\tfoot\t7\n'));
    await grid(page).focus();
    await page.keyboard.press('Control+End');
    await page.keyboard.press('Home');
    await page.keyboard.press('Control+v');
    await expect.poll(() => page.locator('.foot.refusal').textContent()).toMatch(/Row 2.*"nowhere"/);
    expect(await cell(page, 'good', 'name').count()).toBe(0);
  });

  test('a dimension is written into the empty last row, from station to station', async () => {
    await onBoard(page, 'clamp screw');
    await page.getByRole('tab', { name: /Stations/ }).click();
    await grid(page).focus();
    await page.keyboard.press('Control+End');
    await page.keyboard.press('Home');
    for (const name of ['tip', 'collar']) {
      await page.keyboard.type(name);
      await page.keyboard.press('Enter');
      await page.locator('.grid-row:not(.new) [data-column="name"]', { hasText: new RegExp(`^${name}$`) }).waitFor();
    }
    const rows = await page.locator('.grid-row:not(.new)').count();
    await page.getByRole('tab', { name: /Dimensions/ }).click();
    await grid(page).focus();
    await page.keyboard.press('Control+End');
    await page.keyboard.press('Home');
    await page.keyboard.press('ArrowRight');
    await page.keyboard.type('tip');
    await page.keyboard.press('Tab');
    await expect.poll(() => page.locator('.grid-row.new [data-column="from"]').textContent()).toBe('tip');
    await page.keyboard.type('collar');
    await page.keyboard.press('Tab');
    await page.locator('[data-column="name"]', { hasText: 'tip to collar' }).waitFor();
    await page.keyboard.type('1-1/4"');
    await page.keyboard.press('Enter');
    await expect.poll(() => cell(page, 'tip to collar', 'resolved').textContent()).toBe('31.75 mm');
    expect(rows).toBeGreaterThanOrEqual(2);
  });

  test('an edit that cannot be put on disk is told, halts the rest, and is tried again or taken back', async () => {
    await onBoard(page, 'trunnion bracket');
    const refuse = (on: boolean) =>
      at.app.evaluate(({ ipcMain }, wanted) => {
        // Electron's own table of handlers: the only way to put another in the place of one and back.
        const { _invokeHandlers: handlers } = ipcMain as unknown as { _invokeHandlers: Map<string, unknown> };
        const kept = globalThis as unknown as { keptCommit?: unknown };
        kept.keptCommit ??= handlers.get('build:commit');
        const full = async () => ({ ok: false, error: { code: 'disk-full' } });
        handlers.set('build:commit', wanted ? full : kept.keptCommit);
      }, on);
    const write = async (value: string) => {
      await cell(page, 'boss diameter', 'value').click();
      await grid(page).focus();
      await page.keyboard.type(value);
      await page.keyboard.press('Enter');
    };
    await refuse(true);
    await write('23');
    await expect.poll(() => page.locator('.banner.stop').textContent()).toMatch(/not on disk.*disk is full/i);
    expect(await violations(page)).toEqual([]);
    await write('24');
    await expect.poll(() => page.locator('[data-cell-problem]').textContent()).toContain('This edit waits');
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: 'Take Back' }).click();
    await expect.poll(() => cell(page, 'boss diameter', 'value').textContent()).toBe('22');
    expect(await page.locator('.banner.stop').count()).toBe(0);

    await write('23');
    await page.getByRole('button', { name: 'Try Again' }).waitFor();
    await refuse(false);
    await page.getByRole('button', { name: 'Try Again' }).click();
    await saved(page);
    expect(await cell(page, 'boss diameter', 'value').textContent()).toBe('23');
    await chooseMenu(at.app, 'undo');
    await expect.poll(() => cell(page, 'boss diameter', 'value').textContent()).toBe('22');
  });

  test('the strip can be walked by keys alone', async () => {
    const strip = page.getByRole('listbox', { name: /Chain along/ });
    await strip.focus();
    await page.keyboard.press('Home');
    const first = await strip.getAttribute('aria-activedescendant');
    await page.keyboard.press('ArrowRight');
    const second = await strip.getAttribute('aria-activedescendant');
    expect(second).not.toBe(first);
    expect(second).toContain('station:');
    await page.keyboard.press('ArrowUp');
    expect(await strip.getAttribute('aria-activedescendant')).toContain('dimension:');
    await page.keyboard.press('Enter');
    await expect.poll(() => page.evaluate(() => document.activeElement?.getAttribute('role'))).toBe('grid');
  });

  test('arrows go from tab to tab of the board, and the focus stays with them', async () => {
    await page.getByRole('tab', { name: /Dimensions/ }).focus();
    for (const name of ['Stations', 'Bodies', 'Sheet', 'Solid']) {
      await page.keyboard.press('ArrowRight');
      await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toContain(name);
    }
    await page.keyboard.press('Home');
    await page.waitForSelector('[role="grid"]');
    await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toContain('Dimensions');
  });

  test('F6 enters the table of a part, not the tabs in its head', async () => {
    await page.getByRole('listbox', { name: 'Parts' }).focus();
    await page.keyboard.press('F6');
    await expect.poll(() => page.evaluate(() => document.activeElement?.getAttribute('role'))).toBe('grid');
  });

  test('F6 goes round the panes', async () => {
    const seen = new Set<string>();
    for (let i = 0; i < 8; i++) {
      await page.keyboard.press('F6');
      seen.add(
        await page.evaluate(() => document.activeElement?.closest('[data-pane]')?.getAttribute('aria-label') ?? ''),
      );
    }
    expect(seen.size).toBeGreaterThanOrEqual(6);
    expect(seen).not.toContain('');
  });

  test('parts are renamed, added and removed by keys; letters jump to a name', async () => {
    const list = page.getByRole('listbox', { name: 'Parts' });
    await list.focus();
    await page.keyboard.type('fly');
    await expect.poll(() => page.locator('.part-row[aria-selected="true"] .part-name').textContent()).toBe('flywheel');
    await page.keyboard.press('F2');
    await page.keyboard.type('balance wheel');
    await page.keyboard.press('Enter');
    await expect
      .poll(() => page.locator('.part-row[aria-selected="true"] .part-name').textContent())
      .toBe('balance wheel');
    await saved(page);
    await list.focus();
    await page.keyboard.press('Delete');
    await expect.poll(() => part(page, 'balance wheel').count()).toBe(0);
    await chooseMenu(at.app, 'undo');
    await expect.poll(() => part(page, 'balance wheel').count()).toBe(1);
    await chooseMenu(at.app, 'undo');
    await expect.poll(() => part(page, 'flywheel').count()).toBe(1);
  });

  test('a finding is accepted with a reason and opened again', async () => {
    // So many are listed at first; the rest are asked for.
    const more = page.locator('.findings-more button');
    if ((await more.count()) > 0) await more.click();
    await page.locator('[data-rule="assumed-in-use"] .finding-go').first().click();
    await page.getByRole('button', { name: 'Accept…' }).first().click();
    expect(await violations(page)).toEqual([]);
    await page.getByRole('dialog').getByRole('button', { name: 'Accept', exact: true }).click();
    await expect.poll(() => page.locator('.field .error').textContent()).toContain('No reason is given');
    await page.getByRole('textbox', { name: 'Reason' }).fill('measured on the pattern tomorrow');
    await page.keyboard.press('Enter');
    await expect
      .poll(() => page.locator('.trace .finding-under').textContent())
      .toContain('measured on the pattern tomorrow');
    await page.getByRole('button', { name: 'Re-open' }).click();
    await expect.poll(() => page.getByRole('button', { name: 'Accept…' }).count()).toBeGreaterThan(0);
  });

  test('the find box goes to a dimension of another part', async () => {
    await chooseMenu(at.app, 'find');
    await page.getByRole('dialog').getByRole('combobox').fill('rim width');
    await expect.poll(() => page.getByRole('dialog').getByRole('option').count()).toBeGreaterThan(0);
    expect(await violations(page)).toEqual([]);
    const name = await page.getByRole('dialog').getByRole('option').first().locator('.grow').textContent();
    await page.keyboard.press('Enter');
    await expect.poll(() => page.locator('.trace-name').textContent()).toBe(name);
  });

  test('settings and keys open from the menu and are free of faults', async () => {
    await chooseMenu(at.app, 'settings');
    await page.getByRole('dialog').waitFor();
    expect(await violations(page)).toEqual([]);
    await page.getByLabel('Inch').click();
    // What is written as 24 mm stays that, whichever unit the build is in.
    await page.getByRole('button', { name: 'Keep Every Size' }).click();
    // Every dimension of the build is read anew.
    await expect
      .poll(() => page.locator('.title-box', { hasText: 'Units' }).textContent(), { timeout: 15_000 })
      .toContain('inch');
    await page.keyboard.press('Escape');
    await chooseMenu(at.app, 'undo');
    await expect
      .poll(() => page.locator('.title-box', { hasText: 'Units' }).textContent(), { timeout: 15_000 })
      .toContain('mm');
    await chooseMenu(at.app, 'keys');
    await page.getByRole('dialog').waitFor();
    expect(await violations(page)).toEqual([]);
    await page.keyboard.press('Escape');
  });
});

test('the window without a build says how to begin, and is free of faults', async () => {
  const at = await launch();
  try {
    await at.page.getByRole('button', { name: 'New Build…' }).waitFor();
    expect(await at.page.getByRole('button', { name: /As First Drawn|As Corrected/ }).count()).toBe(2);
    expect(await violations(at.page)).toEqual([]);
    await at.page.emulateMedia({ colorScheme: 'dark' });
    expect(await violations(at.page)).toEqual([]);
  } finally {
    await at.close();
  }
});
