import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { accessibilityFaults } from '../support/axe.ts';
import { type Launched, launch } from '../support/electron.ts';
import { chooseMenu } from './shell-driver.ts';

const part = (page: Page, name: string) =>
  page.getByRole('listbox', { name: 'Parts' }).getByRole('option', { name }).first();
const tab = (page: Page, name: string) => page.getByRole('tab', { name }).click();
const board = (page: Page) => page.locator('.sheet-board');
const stage = (page: Page) => page.getByRole('application');
const field = (page: Page, name: string) => page.getByRole('combobox', { name, exact: true });
const figure = (page: Page, name: string) =>
  page.locator('.solid-figures > div', { hasText: name }).locator('dd').textContent();

async function onBoard(page: Page, name: string): Promise<void> {
  await part(page, name).click();
  await page.locator('.board h2', { hasText: new RegExp(`^${name}$`) }).waitFor();
}

/** How many pixels of the solid's picture, as it is on the screen, are of a grey that only shaded faces have. */
async function shadedPixels(page: Page): Promise<number> {
  const picture = await stage(page).screenshot();
  return page.evaluate(
    async (bytes) => {
      const bitmap = await createImageBitmap(new Blob([new Uint8Array(bytes)], { type: 'image/png' }));
      const canvas = document.createElement('canvas');
      canvas.width = bitmap.width;
      canvas.height = bitmap.height;
      const context = canvas.getContext('2d')!;
      context.drawImage(bitmap, 0, 0);
      const { data } = context.getImageData(0, 0, canvas.width, canvas.height);
      let count = 0;
      for (let i = 0; i < data.length; i += 4) if (data[i]! > 90 && data[i]! < 205 && data[i + 2]! < 195) count++;
      return count;
    },
    [...picture],
  );
}

describe('bodies, solid and sheet', () => {
  let at: Launched;
  let page: Page;
  beforeAll(async () => {
    at = await launch({ args: ['--example=as-corrected'] });
    page = at.page;
    await page.waitForSelector('.strip-arc');
    await page.emulateMedia({ reducedMotion: 'reduce' });
  });
  afterAll(() => at?.close());

  test('a block typed as three lengths becomes a solid, its stations and dimensions with it', async () => {
    await page.getByRole('button', { name: 'Add a part' }).first().click();
    await page.keyboard.press('Escape');
    await tab(page, 'Bodies');
    await page.getByRole('button', { name: 'Block', exact: true }).click();
    await page.locator('.body-form').getByLabel('Name').fill('foot');
    await field(page, 'Right').fill('60');
    await field(page, 'Back').fill('40');
    await field(page, 'Top').fill('20');
    await expect.poll(() => page.locator('.body-preview').textContent()).toContain('60 × 40 × 20 mm');
    expect(await page.locator('.body-made-list li').allTextContents()).toContain('dimension foot length 60 mm');
    expect(await accessibilityFaults(page)).toEqual([]);
    await page.getByRole('button', { name: 'Draw It', exact: true }).click();
    await expect.poll(() => page.locator('.body-row').count()).toBe(1);
    await expect.poll(() => figure(page, 'Volume'), { timeout: 20_000 }).toBe('48 cm³');
    expect(await figure(page, 'Box')).toBe('60 × 40 × 20 mm');
    await expect.poll(() => page.getByRole('tab', { name: /Dimensions/ }).textContent()).toContain('3');
  });

  test('a hole is drawn on the stations that are there; a value that cannot be read is told and not taken', async () => {
    await page.getByRole('button', { name: 'Hole', exact: true }).click();
    await field(page, 'Mouth').fill('foot top');
    await field(page, 'Floor').fill('-20 furlongs');
    await expect.poll(() => page.locator('.body-made-list .unreadable').count()).toBe(1);
    await expect.poll(() => page.getByRole('button', { name: 'Draw It', exact: true }).isDisabled()).toBe(true);
    await field(page, 'Floor').fill('-20');
    await field(page, 'Centre X').fill('30');
    await field(page, 'Centre Y').fill('20');
    await field(page, 'Diameter').fill('12');
    await expect.poll(() => page.getByRole('button', { name: 'Draw It', exact: true }).isEnabled()).toBe(true);
    await page.keyboard.press('Enter');
    await expect.poll(() => page.locator('.body-row').count()).toBe(2);
    // 48 − π · 0.6² · 2 cm³.
    await expect.poll(() => figure(page, 'Volume'), { timeout: 20_000 }).toBe('45.738 cm³');
    await page.getByRole('button', { name: 'As cast' }).click();
    await expect.poll(() => figure(page, 'Volume')).toBe('48 cm³');
    await page.getByRole('button', { name: 'Finished' }).click();
  });

  test('a combobox offers the stations of its axis, and takes one by keys', async () => {
    await page.getByRole('button', { name: 'Cylinder, tube', exact: true }).click();
    await field(page, 'Bottom').click();
    const offered = page.getByRole('listbox', { name: 'Bottom' }).getByRole('option');
    await expect.poll(() => offered.allTextContents()).toContain('foot top20 mm');
    expect(await accessibilityFaults(page)).toEqual([]);
    await page.keyboard.type('foot t');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Enter');
    expect(await field(page, 'Bottom').inputValue()).toBe('foot top');
    await page.getByRole('button', { name: 'Cancel' }).click();
    expect(await page.locator('.body-row').count()).toBe(2);
  });

  test('a body that lost its dimension says what it lacks; undo brings it back', async () => {
    await tab(page, 'Dimensions');
    const row = page.locator('.grid-row', { hasText: 'foot height' });
    await row.locator('[data-column="value"]').click();
    await page.getByRole('grid').focus();
    await page.keyboard.press('Delete');
    await tab(page, 'Bodies');
    await expect.poll(() => page.locator('.body-row.lacks').first().textContent()).toContain('"foot top"');
    expect(await accessibilityFaults(page)).toEqual([]);
    await chooseMenu(at.app, 'undo');
    await expect.poll(() => page.locator('.body-row.lacks').count()).toBe(0);
  });

  test('bodies are moved in their order, changed and removed by keys', async () => {
    const list = page.getByRole('listbox', { name: 'Bodies' });
    await list.focus();
    await page.keyboard.press('End');
    await page.keyboard.press('Alt+ArrowUp');
    await expect.poll(() => page.locator('.body-name').allTextContents()).toEqual(['hole', 'foot']);
    await page.keyboard.press('Enter');
    await page.locator('.body-form').getByLabel('Name').fill('drain');
    await page.keyboard.press('Enter');
    await expect.poll(() => page.locator('.body-name').allTextContents()).toEqual(['drain', 'foot']);
    await list.focus();
    await page.keyboard.press('Delete');
    await expect.poll(() => page.locator('.body-name').allTextContents()).toEqual(['foot']);
    for (let i = 0; i < 3; i++) await chooseMenu(at.app, 'undo');
    await expect.poll(() => page.locator('.body-name').allTextContents()).toEqual(['foot', 'hole']);
  });

  test('the solid is seen, turned by keys, and a body is picked on it and by keys', async () => {
    await tab(page, 'Solid');
    await page.locator('[data-solid="fresh"]').waitFor({ timeout: 20_000 });
    await stage(page).focus();
    await page.keyboard.press('Escape');
    // The block fills a good part of the picture; lines and letters alone are fewer.
    await expect.poll(() => shadedPixels(page), { timeout: 20_000 }).toBeGreaterThan(20_000);
    await page.keyboard.press('t');
    const box = (await stage(page).boundingBox())!;
    // Seen from the top the plate covers the middle of the picture but for the hole; its corner is the block's.
    await page.mouse.click(box.x + box.width / 2 + 60, box.y + box.height / 2 + 60);
    await expect.poll(() => page.locator('.trace-name').textContent()).toBe('foot');
    await page.keyboard.press('PageDown');
    await expect.poll(() => page.locator('.trace-name').textContent()).toBe('hole');
    await page.keyboard.press('Escape');
    await expect.poll(() => page.locator('.trace-name').count()).toBe(0);
    expect(await accessibilityFaults(page)).toEqual([]);
  });

  test('the sheet of a large part is drawn whole; picking on it selects everywhere', async () => {
    await onBoard(page, 'guide column');
    await tab(page, 'Sheet');
    await expect.poll(() => page.locator('.sheet-text').count(), { timeout: 40_000 }).toBeGreaterThan(40);
    expect(await accessibilityFaults(page)).toEqual([]);
    const text = page.locator('.sheet-text[data-stands^="dimension:"]').first();
    const id = await text.getAttribute('data-stands');
    const at = (await text.boundingBox())!;
    await page.mouse.click(at.x + at.width / 2, at.y + at.height / 2);
    await expect.poll(() => page.locator(`.sheet-text.lit[data-stands="${id}"]`).count()).toBeGreaterThan(0);
    const name = await page.locator('.trace-name').textContent();
    await tab(page, 'Dimensions');
    await expect.poll(() => page.locator(`.grid-row.selected[data-row="${id}"]`).count()).toBe(1);
    await tab(page, 'Sheet');
    await board(page).focus();
    await page.keyboard.press('ArrowRight');
    await expect.poll(() => page.locator('.trace-name').textContent()).not.toBe(name);
    const active = await board(page).getAttribute('aria-activedescendant');
    expect(await page.locator(`[id="${active}"]`).textContent()).toMatch(/^(dimension|station|body) /);
  });

  test('hover tells where a figure comes from; Esc takes the tip away', async () => {
    const text = page.locator('.sheet-text[data-stands^="dimension:"]').first();
    await text.hover({ force: true });
    await expect.poll(() => page.getByRole('tooltip').count()).toBe(1);
    expect(await page.getByRole('tooltip').textContent()).toMatch(/written|drawn|measured|assumed|derived/);
    await board(page).focus();
    await page.keyboard.press('Escape');
    await expect.poll(() => page.getByRole('tooltip').count()).toBe(0);
  });

  test('another angle and a section are drawn; the choice of angle is remembered', async () => {
    const shape = () => page.locator('.sheet-line.visible').first().getAttribute('d');
    const first = await shape();
    await page.getByRole('button', { name: 'Third angle' }).click();
    await expect.poll(shape, { timeout: 20_000 }).not.toBe(first);
    expect(await page.locator('.sheet-line.hatching').count()).toBe(0);
    const select = page.getByRole('combobox', { name: 'Section' });
    const middle = select.locator('option', { hasText: /^Y / }).first();
    await select.selectOption((await middle.getAttribute('value'))!);
    await expect.poll(() => page.locator('.sheet-line.cutting').count(), { timeout: 20_000 }).toBeGreaterThan(0);
    await tab(page, 'Solid');
    await tab(page, 'Sheet');
    expect(await page.getByRole('button', { name: 'Third angle' }).getAttribute('aria-pressed')).toBe('true');
  });

  test('the paper is moved and brought near by wheel and keys, and fitted again', async () => {
    const lies = () => page.locator('.sheet-svg > g').getAttribute('transform');
    const fitted = await lies();
    await board(page).hover();
    await page.mouse.wheel(0, -300);
    await expect.poll(lies).not.toBe(fitted);
    await board(page).focus();
    const near = await lies();
    await page.keyboard.press('Shift+ArrowLeft');
    await expect.poll(lies).not.toBe(near);
    await page.keyboard.press('0');
    await expect.poll(lies).toBe(fitted);
    await page.keyboard.press('p');
    await expect.poll(lies).not.toBe(fitted);
  });

  test('the board takes the whole width and gives it back', async () => {
    const width = async () => (await board(page).boundingBox())!.width;
    const before = await width();
    await page.getByRole('button', { name: 'Whole width' }).click();
    await expect.poll(width).toBeGreaterThan(before + 200);
    expect(await accessibilityFaults(page)).toEqual([]);
    await page.getByRole('button', { name: 'Show the lists beside' }).click();
    await expect.poll(width).toBe(before);
  });

  test('the dark board is free of accessibility faults too', async () => {
    await page.emulateMedia({ colorScheme: 'dark' });
    for (const name of ['Bodies', 'Sheet', 'Solid']) {
      await tab(page, name);
      expect(await accessibilityFaults(page)).toEqual([]);
    }
  });
});

test('without WebGL a plain sentence stands in place of the solid, and the sheet is drawn all the same', async () => {
  const at = await launch({ args: ['--example=as-corrected'] });
  try {
    const { page } = at;
    await page.addInitScript(() => {
      const plain = HTMLCanvasElement.prototype.getContext;
      HTMLCanvasElement.prototype.getContext = function (this: HTMLCanvasElement, kind: string, ...rest: unknown[]) {
        return kind.startsWith('webgl') ? null : (plain as (...all: unknown[]) => unknown).call(this, kind, ...rest);
      } as typeof plain;
    });
    await page.reload();
    await page.waitForSelector('.strip-arc');
    await onBoard(page, 'flywheel');
    await tab(page, 'Solid');
    await expect.poll(() => page.locator('.solid-missing').textContent()).toContain('needs WebGL');
    await expect.poll(() => figure(page, 'Volume'), { timeout: 20_000 }).toMatch(/cm³$/);
    await tab(page, 'Sheet');
    await expect.poll(() => page.locator('.sheet-line.visible').count(), { timeout: 20_000 }).toBeGreaterThan(10);
  } finally {
    await at.close();
  }
});
