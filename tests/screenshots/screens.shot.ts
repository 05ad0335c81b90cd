import { mkdirSync } from 'node:fs';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { MenuAction } from '../../src/shared/ipc/contract.ts';
import { type Launched, launch } from '../support/electron.ts';

const folder = path.resolve(import.meta.dirname, '..', '..', 'docs', 'pictures');

let at: Launched;
beforeAll(async () => {
  mkdirSync(folder, { recursive: true });
  at = await launch({ args: ['--example=as-first-drawn'] });
});
afterAll(async () => {
  await at?.close();
});

/** Waits until nothing moves any more: layouts, fonts and transitions come to rest at their own pace. */
async function settled(page: Page): Promise<void> {
  await page.evaluate(() => document.fonts.ready);
  let before = '';
  for (let tries = 0; tries < 40; tries++) {
    await page.waitForTimeout(150);
    const now = (await page.screenshot()).toString('base64');
    if (now === before) return;
    before = now;
  }
}

async function arrange(theme: 'light' | 'dark', width: number, height: number, screen: MenuAction): Promise<void> {
  // The driver pretends a light theme by itself; the page is told the one that is wanted.
  await at.page.emulateMedia({ colorScheme: theme });
  await at.app.evaluate(
    ({ BrowserWindow, nativeTheme }, wanted) => {
      nativeTheme.themeSource = wanted.theme;
      const [window] = BrowserWindow.getAllWindows();
      window?.setContentSize(wanted.width, wanted.height);
      window?.webContents.send('menu', { action: wanted.screen });
    },
    { theme, width, height, screen },
  );
  await settled(at.page);
}

const screens = [
  ['works', 'show-works', '.react-flow__node'],
  ['drawing-office', 'show-drawing', '[role=grid]'],
] as const;

test.each(screens)('%s, light and dark', async (name, action, sign) => {
  for (const theme of ['light', 'dark'] as const) {
    await arrange(theme, 1440, 900, action);
    await at.page.locator(sign).first().waitFor();
    await settled(at.page);
    const picture = await at.page.screenshot({ path: path.join(folder, `${name}-${theme}.png`) });
    expect(picture.length).toBeGreaterThan(10_000);
  }
});

test.each([
  ['bodies', /Bodies/, 'canvas'],
  ['solid', /Solid/, 'canvas'],
  ['sheet', /Sheet/, '.sheet-paper'],
] as const)('%s of the guide column, light and dark', async (name, tab, sign) => {
  const { page } = at;
  await arrange('light', 1440, 900, 'show-drawing');
  await page.getByRole('listbox', { name: 'Parts' }).getByRole('option', { name: 'guide column' }).first().click();
  await page.getByRole('tab', { name: tab }).click();
  await page.locator(sign).first().waitFor();
  for (const theme of ['light', 'dark'] as const) {
    await arrange(theme, 1440, 900, 'show-drawing');
    const picture = await page.screenshot({ path: path.join(folder, `${name}-${theme}.png`) });
    expect(picture.length).toBeGreaterThan(10_000);
  }
});

test('the table of the example hits the bed; the route of the guide column; light and dark', async () => {
  const { page } = at;
  const desk = (name: string) => page.getByRole('tablist', { name: 'Desk' }).getByRole('tab', { name }).click();
  const take = async (name: string) => {
    for (const theme of ['light', 'dark'] as const) {
      await arrange(theme, 1440, 900, 'show-machining');
      const picture = await page.screenshot({ path: path.join(folder, `${name}-${theme}.png`) });
      expect(picture.length).toBeGreaterThan(10_000);
    }
  };
  await arrange('light', 1440, 900, 'show-machining');
  await desk('Set-ups');
  await page.getByRole('listbox', { name: 'Set-ups' }).getByRole('option', { name: 'trunnion boring' }).first().click();
  await page.locator('[data-verdict="over-bed"]').first().click();
  await take('swing');
  await desk('Route');
  await page.getByRole('listbox', { name: 'Parts' }).getByRole('option', { name: 'guide column' }).first().click();
  await take('route');
  await desk('Machines');
  await page.getByRole('listbox', { name: 'Machines of the build' }).getByRole('option').first().click();
  await take('machines');
});
