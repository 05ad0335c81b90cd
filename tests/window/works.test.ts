import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { accessibilityFaults } from '../support/axe.ts';
import { type Launched, launch } from '../support/electron.ts';
import { chooseMenu } from './shell-driver.ts';

const map = (page: Page) => page.getByRole('application', { name: /^Dependency map/ });
const block = (page: Page, name: string) =>
  page.locator('.block', { has: page.locator('.block-name > .ellipsis', { hasText: new RegExp(`^${name}$`) }) });
const says = (page: Page) => page.locator('.works-says').textContent();
const row = (page: Page, name: RegExp) => page.getByRole('treeitem', { name }).first();
const names = (page: Page, look: string) =>
  page
    .locator(`.block.${look} .block-name > .ellipsis`)
    .allTextContents()
    .then((found) => found.sort());
const selectedName = (page: Page) => page.locator('.block.selected .block-name > .ellipsis').textContent();

describe('the Works on the example as first drawn', () => {
  let at: Launched;
  let page: Page;
  const complaints: string[] = [];
  beforeAll(async () => {
    at = await launch({ args: ['--example=as-first-drawn'] });
    page = at.page;
    page.on('console', (message) => {
      if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text());
    });
    await at.app.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows()[0]?.setContentSize(1280, 800));
    await page.getByRole('button', { name: 'Works', exact: true }).click();
    await page.waitForSelector('.block');
  });
  afterAll(async () => {
    await at?.close();
  });

  test('every part stands on the map, and the whole map is in view', async () => {
    await expect.poll(() => page.locator('.block').count()).toBe(16);
    const outside = await page.evaluate(() => {
      const room = document.querySelector('.works-map')?.getBoundingClientRect();
      return [...document.querySelectorAll('.block')].filter((part) => {
        const box = part.getBoundingClientRect();
        return (
          !room || box.left < room.left || box.right > room.right || box.top < room.top || box.bottom > room.bottom
        );
      }).length;
    });
    expect(outside).toBe(0);
    expect(await page.locator('.link.broken').count()).toBe(1);
  });

  test('map and list are free of accessibility faults, light and dark', async () => {
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme });
      for (const form of ['List', 'Map']) {
        await page.getByRole('tab', { name: form }).click();
        await page.waitForTimeout(200);
        expect(await accessibilityFaults(page), `${form}, ${colorScheme}`).toEqual([]);
      }
    }
    await page.emulateMedia({ colorScheme: 'light' });
  });

  test('T and H light up what the selected part touches and hangs on, and say it; Esc lights everything', async () => {
    await block(page, 'crank disc').click();
    await map(page).focus();
    await page.keyboard.press('t');
    await expect
      .poll(() => says(page))
      .toMatch(/^crank disc touches \d+ dimensions and \d+ stations in \d other parts/);
    expect(await names(page, 'lit')).toContain('crank pin');
    expect(await names(page, 'dim')).toContain('clamp screw');
    expect(await accessibilityFaults(page)).toEqual([]);
    await page.keyboard.press('h');
    await expect.poll(() => says(page)).toMatch(/^crank disc hangs on/);
    expect(await page.getByRole('status').textContent()).toMatch(/^crank disc hangs on/);
    await page.keyboard.press('Escape');
    await expect.poll(() => page.locator('.block.dim').count()).toBe(0);
  });

  test('a part opens in place; its rows are walked by arrows, lit up, and lead to the Drawing Office', async () => {
    await block(page, 'ram').click();
    await map(page).focus();
    await page.keyboard.press(' ');
    await page.waitForSelector('.block.open .sheet-row');
    await page.keyboard.press('ArrowDown');
    await expect.poll(() => page.locator('.sheet-row .selected').count()).toBe(1);
    await page.locator('.sheet-dimension', { hasText: /^diameter/ }).click();
    await map(page).focus();
    await page.keyboard.press('t');
    await expect.poll(() => says(page)).toMatch(/^diameter of ram touches \d+ dimensions/);
    // The bore of the guide column is made to it.
    expect(await page.locator('.link.lit').count()).toBeGreaterThan(0);
    expect(await accessibilityFaults(page)).toEqual([]);
    await page.keyboard.press('Escape');
    await page.keyboard.press('Enter');
    await expect.poll(() => page.locator('.grid-row.selected').textContent()).toContain('diameter');
    await chooseMenu(at.app, 'show-works');
    await page.waitForSelector('.block.open');
    await map(page).focus();
    await page.keyboard.press(' ');
    await expect.poll(() => page.locator('.block.open').count()).toBe(0);
  });

  test('arrow keys go from part to part, and the ear is told', async () => {
    await block(page, 'crankshaft bearing').click();
    await map(page).focus();
    await page.keyboard.press('ArrowDown');
    await expect.poll(() => selectedName(page)).not.toBe('crankshaft bearing');
    const name = await selectedName(page);
    await expect
      .poll(() => page.getByRole('status').textContent())
      .toMatch(new RegExp(`^${name}, .*clear to cut.*feeds`));
  });

  test('a line tells what it carries', async () => {
    await page.getByRole('button', { name: 'Fit the map' }).click();
    const point = await page.locator('.link.broken .link-reach').evaluate((line) => {
      const path = line as SVGPathElement;
      const middle = path.getPointAtLength(path.getTotalLength() * 0.85);
      const there = new DOMPoint(middle.x, middle.y).matrixTransform(path.getScreenCTM() ?? undefined);
      return { x: there.x, y: there.y };
    });
    await page.mouse.move(point.x, point.y);
    await expect
      .poll(() => page.getByRole('tooltip').textContent())
      .toContain('diametre (there is none of that name) → slot width');
    await page.mouse.move(2, 2);
  });

  test('the search finds a dimension, opens its part and shows it large', async () => {
    await page.getByRole('combobox', { name: 'Find on the map' }).fill('bearing bore as cast');
    await expect.poll(() => page.locator('.works-found [role=option]').count()).toBeGreaterThan(0);
    await page.keyboard.press('Enter');
    await expect.poll(() => page.locator('.sheet-row .selected').textContent()).toContain('bearing bore as cast');
    const inside = await page.locator('.sheet-row .selected').evaluate((found) => {
      const [box, room] = [
        found.getBoundingClientRect(),
        document.querySelector('.works-map')?.getBoundingClientRect(),
      ];
      return room !== undefined && box.top > room.top && box.bottom < room.bottom && box.height > 15;
    });
    expect(inside).toBe(true);
  });

  test('the list says the same by keys alone, and shares the selection', async () => {
    await page.getByRole('tab', { name: 'List' }).click();
    await page.getByRole('tree').focus();
    await page.keyboard.press('Home');
    await expect.poll(() => row(page, /^base/).getAttribute('aria-selected')).toBe('true');
    expect(await row(page, /^base/).textContent()).toMatch(/feeds \d parts, hangs on 1 part/);
    expect(await row(page, /^hangs on crankshaft bearing/i).textContent()).toContain('outside');
    await page.keyboard.press('t');
    await expect.poll(() => says(page)).toMatch(/^base touches/);
    expect(await page.locator('.works-row.dim').count()).toBeGreaterThan(0);
    await page.keyboard.press('Escape');
    // Open already, from the search; the second press steps inside it.
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('ArrowLeft');
    await page.keyboard.press('ArrowLeft');
    await expect.poll(() => row(page, /^base/).getAttribute('aria-expanded')).toBe('false');
    await page.keyboard.press('ArrowDown');
    await page.getByRole('tab', { name: 'Map' }).click();
    await expect.poll(() => selectedName(page)).toBe('guide column');
  });

  test('an edit in the Drawing Office draws its line on the map', async () => {
    const links = async () => Number(/, (\d+) links/.exec((await map(page).getAttribute('aria-label')) ?? '')?.[1]);
    const before = await links();
    await page.getByRole('button', { name: 'Fit the map' }).click();
    await block(page, 'trunnion bracket').dblclick();
    await page.waitForSelector('[role=grid]');
    const cell = page.locator('.grid-row [data-column="value"]').first();
    await cell.click();
    await page.getByRole('grid').focus();
    await page.keyboard.type('diameter of ram');
    await page.keyboard.press('Enter');
    await chooseMenu(at.app, 'show-works');
    await expect.poll(links).toBe(before + 1);
  });

  test('nothing complained', () => expect(complaints).toEqual([]));
});
