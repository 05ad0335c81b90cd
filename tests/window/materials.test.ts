import { mkdtempSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { accessibilityFaults } from '../support/axe.ts';
import { type Launched, launch } from '../support/electron.ts';
import { chooseMenu, invoke, menuItem } from './shell-driver.ts';

/** A busy machine takes a while until an edit is on disk. */
const soon = <T>(look: () => T) => expect.poll(look, { timeout: 10_000 });

interface Kept {
  readonly kind: string;
  readonly name: string;
  readonly material?: string;
  readonly values?: Readonly<Record<string, unknown>>;
  readonly source?: string;
}

describe('materials in the window', () => {
  let at: Launched;
  let page: Page;
  let data = '';
  const dialog = () => page.getByRole('dialog', { name: 'Materials' });
  const field = () => page.getByRole('combobox', { name: 'Material' });
  const row = (name: string) => dialog().getByRole('button', { name, exact: true });
  const inDetail = (label: RegExp | string) => dialog().getByLabel(label);
  const records = async (): Promise<readonly Kept[]> => {
    const loaded = await invoke(page, 'build:load', undefined);
    return loaded.ok && loaded.value ? (JSON.parse(loaded.value.records) as Kept[]) : [];
  };
  const own = async () => (await records()).filter(({ kind }) => kind === 'material');
  const materialOf = async (part: string) =>
    (await records()).find(({ kind, name }) => kind === 'part' && name === part)?.material;
  const hint = async () => {
    const ids = await field().getAttribute('aria-describedby');
    return page.locator(`[id="${ids}"]`).textContent();
  };

  beforeAll(async () => {
    data = mkdtempSync(path.join(os.tmpdir(), 'waywright-materials-'));
    at = await launch({ args: ['--example=as-corrected'], userData: data });
    page = at.page;
    page.setDefaultTimeout(10_000);
    await page.getByRole('listbox', { name: 'Parts' }).getByRole('option', { name: 'table' }).first().click();
    await field().waitFor();
  });
  afterAll(async () => {
    await at?.close();
    rmSync(data, { recursive: true, force: true, maxRetries: 5 });
  });

  test('the field offers what is known by any of its names, and says what it knows', async () => {
    await field().fill('LM2');
    const list = page.getByRole('listbox', { name: 'Material' });
    await list.waitFor();
    const offered = await list.getByRole('option').allTextContents();
    expect(offered).toEqual(['EN AC-421002.68 g/cm³', 'EN AC-462002.75 g/cm³']);
    expect(await accessibilityFaults(page)).toEqual([]);
    await field().press('ArrowDown');
    await field().press('ArrowDown');
    await field().press('Enter');
    await soon(() => materialOf('table')).toBe('EN AC-46200');
    expect(await hint()).toBe('2.75 g/cm³. Source: EN 1706, annex (from memory).');
    await field().fill('LM25');
    expect(await hint()).toBe('Taken as EN AC-42100: 2.68 g/cm³. Source: EN 1706, annex (from memory).');
    await field().press('Escape');
    await field().press('Escape');
    expect(await field().inputValue()).toBe('EN AC-46200');
  });

  test('free text stays, and asks for its figures', async () => {
    await field().fill('Melted-down wheels');
    await field().press('Enter');
    await soon(() => materialOf('table')).toBe('Melted-down wheels');
    expect(await hint()).toBe('Nothing is known of Melted-down wheels, so table has no mass.');
    await page.locator('[data-rule="material-unknown-density"]').first().waitFor();
    expect(await own()).toEqual([]);
    await page.locator('.part-form').getByRole('button', { name: 'Give Its Figures…' }).click();
    await dialog().waitFor();
    await soon(() => inDetail(/Density/).evaluate((e) => e === document.activeElement)).toBe(true);
    expect(await inDetail('Name').inputValue()).toBe('Melted-down wheels');
    expect(await accessibilityFaults(page)).toEqual([]);
  });

  test('a figure that cannot be is refused under its field, and nothing is lost', async () => {
    await inDetail(/Density/).fill('2690');
    await inDetail(/Density/).press('Enter');
    await dialog().getByText('If kg/m³ is meant, write "2690 kg/m³".').waitFor();
    expect(await inDetail(/Density/).inputValue()).toBe('2690');
    expect(await inDetail(/Density/).getAttribute('aria-invalid')).toBe('true');
    expect(await accessibilityFaults(page)).toEqual([]);
    await inDetail(/Density/).fill('2690 kg/m³');
    await inDetail(/Density/).press('Enter');
    await soon(own).toMatchObject([{ name: 'Melted-down wheels', values: { densityKgM3: 2690 } }]);
    await soon(() => inDetail(/Density/).inputValue()).toBe('2.69');
    expect(await dialog().locator('.error').count()).toBe(0);
    expect(await page.locator('[data-rule="material-unknown-density"]').count()).toBe(0);
  });

  test('every other field is an edit of its own; a new name goes along to the parts', async () => {
    await inDetail(/Expansion/).fill('12.5 µin/in·°F');
    await inDetail(/Expansion/).press('Tab');
    await inDetail(/Modulus/).fill('71');
    await inDetail(/Modulus/).press('Tab');
    await inDetail(/Cutting group/).selectOption('N');
    await inDetail('Source').fill('bar of 12 October, weighed');
    await inDetail('Source').press('Enter');
    await inDetail('Name').fill('Wheel metal');
    await inDetail('Name').press('Enter');
    await soon(own).toMatchObject([
      {
        name: 'Wheel metal',
        values: { densityKgM3: 2690, expansionPerK: 0.0000225, modulusGPa: 71, cuttingGroup: 'N' },
        source: 'bar of 12 October, weighed',
      },
    ]);
    expect(await materialOf('table')).toBe('Wheel metal');
    await dialog().getByText('Made of it: table.').waitFor();
  });

  test('a row of the table is for reading, and can be copied', async () => {
    await row('Wheel metal').focus();
    await row('Wheel metal').press('End');
    await soon(() => row('Stainless steel').evaluate((e) => e === document.activeElement)).toBe(true);
    await page.keyboard.type('319');
    await page.keyboard.press('Enter');
    expect(await row('319.0').getAttribute('aria-expanded')).toBe('true');
    await dialog().getByText('2.9 g/cm³').waitFor();
    expect(await inDetail('Name').count()).toBe(0);
    expect(await accessibilityFaults(page)).toEqual([]);
    await dialog().getByRole('button', { name: 'Copy to the Build’s Own' }).click();
    await soon(async () => (await own()).find(({ name }) => name === '319.0')).toMatchObject({
      values: { densityKgM3: 2900, expansionPerK: 0.000022, modulusGPa: 72, cuttingGroup: 'N' },
    });
    await dialog().getByText('behind own').waitFor();
  });

  test('a name that is taken is refused in words; a new row begins at its name', async () => {
    await dialog().getByRole('button', { name: 'Add a Material' }).click();
    await soon(() => inDetail('Name').inputValue()).toBe('new material');
    await soon(() => inDetail('Name').evaluate((e) => e === document.activeElement)).toBe(true);
    await page.keyboard.type('wheel METAL');
    await page.keyboard.press('Enter');
    await dialog().getByText('The build has a material "wheel METAL" of its own already.').waitFor();
    await page.keyboard.press('Escape');
    expect(await inDetail('Name').inputValue()).toBe('new material');
    expect(await dialog().isVisible()).toBe(true);
    await inDetail('Name').press('Tab');
    await soon(() => dialog().locator('.error').count()).toBe(0);
    await dialog().getByRole('button', { name: 'Remove' }).click();
    await soon(async () => (await own()).map(({ name }) => name).sort()).toEqual(['319.0', 'Wheel metal']);
  });

  test('removing one says who still names it; undo brings it back', async () => {
    await row('Wheel metal').press('Enter');
    await dialog().getByRole('button', { name: 'Remove' }).click();
    await dialog().getByText('Wheel metal is removed; table is still said to be made of it').waitFor();
    await soon(async () => (await own()).length).toBe(1);
    expect(await accessibilityFaults(page)).toEqual([]);
    await dialog().getByRole('button', { name: 'Undo' }).click();
    await row('Wheel metal').waitFor();
    await soon(async () => (await own()).length).toBe(2);
    await dialog().getByRole('button', { name: 'Done' }).click();
    await dialog().waitFor({ state: 'detached' });
    await chooseMenu(at.app, 'undo');
    // The step before: the row that was added and taken away.
    await soon(async () => (await own()).map(({ name }) => name)).toContain('new material');
  });

  test('they are in the Edit menu, and free of faults in the dark', async () => {
    expect((await menuItem(at.app, 'materials'))?.label).toBe('Materials…');
    await chooseMenu(at.app, 'materials');
    await dialog().waitFor();
    await page.emulateMedia({ colorScheme: 'dark' });
    await row('EN-GJL-250').click();
    expect(await accessibilityFaults(page)).toEqual([]);
    await dialog().getByRole('searchbox').fill('bronze');
    await soon(() => dialog().locator('.material-row').count()).toBe(4);
    await page.keyboard.press('Escape');
    await page.emulateMedia({ colorScheme: 'light' });
  });
});
