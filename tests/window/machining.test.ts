import { mkdtempSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { createStore } from '../../src/main/store/create-store.ts';
import { accessibilityFaults } from '../support/axe.ts';
import { drumBuild, FLANGE_CORNER } from '../support/drum-build.ts';
import { type Launched, launch } from '../support/electron.ts';
import { chooseMenu, invoke } from './shell-driver.ts';

const patient = { timeout: 20_000 };

/** As margins are told: to the hundredth, what is free as no more than it is, what is wanting as no less. */
const told = (mm: number): string => String(Math.floor(mm * 100) / 100);
const short = String(Math.ceil((FLANGE_CORNER - 80) * 100) / 100);

interface Kept {
  readonly kind: string;
  readonly id: string;
  readonly name: string;
  readonly order: number;
  readonly machine?: string;
  readonly figures?: Readonly<Record<string, string>>;
  readonly headEnd?: string;
  readonly holding?: { readonly as: string };
  readonly line?: { readonly axis: string; readonly through?: readonly string[] };
}

describe('the Machine Shop', () => {
  let at: Launched;
  let page: Page;
  let folder = '';
  const records = async (): Promise<readonly Kept[]> => {
    const loaded = await invoke(page, 'build:load', undefined);
    return loaded.ok && loaded.value ? (JSON.parse(loaded.value.records) as Kept[]) : [];
  };
  const named = async (kind: string, name: string) =>
    (await records()).find((each) => each.kind === kind && each.name === name);
  const desk = (name: string) => page.getByRole('tablist', { name: 'Desk' }).getByRole('tab', { name }).click();
  const setup = (name: string) => page.getByRole('listbox', { name: 'Set-ups' }).getByRole('option', { name });
  const machine = (name: string) =>
    page.getByRole('listbox', { name: 'Machines of the build' }).getByRole('option', { name });
  const verdicts = () => page.locator('[aria-label="Verdicts"]');
  const verdict = (kind: string) => page.locator(`[data-verdict="${kind}"]`);

  /** Waits until a verdict leaves so much. */
  const margin = (kind: string, words: string) =>
    expect.poll(() => verdict(kind).locator('.verdict-margin').textContent(), patient).toBe(`${words} mm`);

  beforeAll(async () => {
    folder = mkdtempSync(path.join(os.tmpdir(), 'waywright-machining-'));
    const file = path.join(folder, 'drum.wayw');
    const made = await createStore(file, drumBuild());
    expect(made.ok).toBe(true);
    at = await launch({ args: [file], userData: path.join(folder, 'data') });
    page = at.page;
    await page.getByRole('button', { name: 'Machine Shop' }).click();
    await setup('barrel between centres').waitFor();
  });
  afterAll(async () => {
    await at?.close();
    rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
  });

  test('a flange that is too long is a stop that says by how much, where, and what carries it', async () => {
    await setup('barrel between centres').click();
    await margin('over-bed', `−${short}`);
    await verdict('over-bed').getByRole('button').first().click();
    await verdict('over-bed')
      .getByRole('button', { name: /^flange reach/ })
      .waitFor();
    await verdict('over-bed').getByText('flange', { exact: true }).waitFor();
    // The picture fills it and measures it.
    await page.locator('.swing-view.front .swing-area.collision').waitFor();
    await page.locator('.swing-view.end .swing-area.collision').waitFor();
    await expect.poll(() => page.locator('.swing-view.front .swing-measure.hits text').textContent()).toContain(short);
  });

  test('the same is a finding that shuts the gate, and leads here', async () => {
    await chooseMenu(at.app, 'show-works');
    const finding = page.locator('.finding', { hasText: `drum hits the bed of Small lathe by ${short} mm` });
    await finding.waitFor(patient);
    expect(await finding.textContent()).toContain('flange');
    await finding.getByRole('button').first().click();
    await setup('barrel between centres').waitFor();
    expect(await setup('barrel between centres').getAttribute('aria-selected')).toBe('true');
  });

  test('the saddle is moved along the cut by keys, and each zone says how it passes there', async () => {
    const slider = page.getByRole('slider', { name: 'Edge of the tool' });
    await slider.focus();
    await page.keyboard.press('Home');
    const zones = page.locator('.swing-zones');
    await expect.poll(() => zones.textContent()).toMatch(/cross slide.*hits by 32\.47/i);
    await page.keyboard.press('End');
    // At the top the slide reaches from 90 to 150: the flange lies behind it.
    await expect.poll(() => zones.textContent()).toMatch(/cross slide.*25 mm clear/i);
    expect(await slider.getAttribute('aria-valuetext')).toBe('120 mm along Z');
    await page.keyboard.press('Home');
    expect(await slider.getAttribute('aria-valuetext')).toBe('20 mm along Z');
  });

  test('the dimension that carries it is changed in the Drawing Office, and the margin turns', async () => {
    await verdict('over-bed')
      .getByRole('button', { name: /^flange reach/ })
      .click();
    const value = page
      .locator('.grid-row', { has: page.locator('[data-column="name"]', { hasText: /^flange reach$/ }) })
      .locator('[data-column="value"]');
    await value.dblclick();
    await page.keyboard.press('ControlOrMeta+A');
    await page.keyboard.type('76');
    await page.keyboard.press('Enter');
    await chooseMenu(at.app, 'show-machining');
    const clear = told(80 - Math.hypot(76, 20));
    await margin('over-bed', `+${clear}`);
    await expect.poll(() => page.locator('.swing-view.front .swing-area.collision').count()).toBe(1);
    await chooseMenu(at.app, 'undo');
    await margin('over-bed', `−${short}`);
  });

  test('on the larger lathe every verdict follows', async () => {
    await page.getByLabel('Machine', { exact: true }).selectOption({ label: 'Large lathe' });
    await margin('over-bed', `+${told(165 - FLANGE_CORNER)}`);
    await expect.poll(() => verdicts().locator('.verdict .mark.stop').count(), patient).toBe(0);
    await expect.poll(() => page.locator('.swing-area.collision').count()).toBe(0);
    await chooseMenu(at.app, 'undo');
    await margin('over-bed', `−${short}`);
  });

  test('a larger swing written for the machine does the same, beside what it comes to', async () => {
    await desk('Machines');
    await machine('Small lathe').click();
    const field = page.getByLabel(/^Swing over bed/);
    await field.fill('13 apples');
    await page.locator('[data-figure="swingOverBed"] .figure-error').waitFor();
    await field.fill('13 in');
    await expect.poll(() => page.locator('[data-figure="swingOverBed"] output').textContent()).toBe('330.2 mm');
    await field.press('Enter');
    await desk('Set-ups');
    await margin('over-bed', `+${told(165.1 - FLANGE_CORNER)}`);
    await chooseMenu(at.app, 'undo');
    await margin('over-bed', `−${short}`);
  });

  test('a line whose station nothing places is not guessed', async () => {
    await setup('about a line that is lost').click();
    await verdicts()
      .getByText(/No dimension ties lost line of drum/)
      .waitFor(patient);
    await page.getByText('Not in the machine yet').waitFor();
    expect(await page.locator('.swing-area.collision').count()).toBe(0);
    await setup('barrel between centres').click();
  });

  test('a figure that is not known is said by the verdict that needs it, and leads to its field', async () => {
    await desk('Machines');
    const field = page.getByLabel(/^Swing over cross slide/);
    await field.fill('');
    await field.press('Enter');
    await desk('Set-ups');
    await verdict('over-cross-slide').getByRole('button').first().click();
    await verdict('over-cross-slide')
      .getByRole('button', { name: /Swing over cross slide of Small lathe is not known/ })
      .click();
    await expect
      .poll(() => page.evaluate(() => document.activeElement?.closest('[data-figure]')?.getAttribute('data-figure')))
      .toBe('swingOverCrossSlide');
    // In a field the menu takes back what was typed there.
    await page.getByRole('listbox', { name: 'Machines of the build' }).focus();
    await chooseMenu(at.app, 'undo');
    await expect.poll(async () => (await named('machine', 'Small lathe'))?.figures?.swingOverCrossSlide).toBe('100 mm');
  });

  test('a machine is kept in the shop, differs when it is changed, and is taken back from there', async () => {
    await page.getByRole('button', { name: 'Keep in My Shop' }).click();
    await expect.poll(() => page.getByRole('button', { name: 'Keep in My Shop' }).count()).toBe(0);
    const shop = await invoke(page, 'shop:load', undefined);
    expect(shop.ok && shop.value.machines.map(({ name }) => name)).toEqual(['Small lathe']);
    const field = page.getByLabel(/^Spindle bore/);
    await field.fill('21 mm');
    await field.press('Enter');
    await page.getByText(/It differs from the one in your shop: Spindle bore 21 mm here, not known there/).waitFor();
    await page.getByRole('button', { name: 'Take the Shop’s' }).click();
    await expect.poll(async () => (await named('machine', 'Small lathe'))?.figures?.spindleBore).toBeUndefined();
    await page.keyboard.press('Escape');
    await page.getByRole('listbox', { name: 'Machines of the build' }).focus();
    await page.keyboard.press('Delete');
    await page.getByText('In your shop, not in this build').waitFor();
    await page.getByRole('button', { name: 'Add Small lathe to the build' }).click();
    await expect.poll(() => named('machine', 'Small lathe')).toBeDefined();
    await chooseMenu(at.app, 'undo');
    await chooseMenu(at.app, 'undo');
    await expect.poll(async () => (await named('setup', 'barrel between centres'))?.machine).toBeDefined();
  });

  test('a machine begins with the figures of its size class, and is marked so', async () => {
    await page.getByRole('button', { name: /Add a machine/ }).click();
    await page.getByRole('dialog').getByLabel('What it is').selectOption('drill press');
    await page.getByRole('dialog').getByLabel('Begin with').selectOption({ index: 1 });
    await page.getByRole('dialog').getByLabel('Name').fill('Pillar drill');
    await page.getByRole('dialog').getByRole('button', { name: 'Add', exact: true }).click();
    await page.getByText('Generic figures of its size class').waitFor();
    await page.getByRole('button', { name: 'These Are My Machine’s' }).click();
    await expect.poll(() => page.getByText('Generic figures of its size class').count()).toBe(0);
    await chooseMenu(at.app, 'undo');
    await page.getByText('Generic figures of its size class').waitFor();
  });

  test('the bed has an outline of its own, point by point, with its picture', async () => {
    await machine('Large lathe').click();
    for (const [across, down] of [
      ['-70', '165'],
      ['-20', '160'],
    ]) {
      await page.getByRole('button', { name: 'Add a Point' }).click();
      const row = page.locator('.bed-points tbody tr').last();
      await row.getByLabel(/across/).fill(across!);
      await row.getByLabel(/down/).fill(down!);
      await row.getByLabel(/down/).press('Enter');
    }
    await page.locator('.bed-picture').waitFor();
    await page.getByRole('button', { name: 'Add a Point' }).click();
    const last = page.locator('.bed-points tbody tr').last();
    await last.getByLabel(/across/).fill('-90');
    await last.getByLabel(/down/).fill('165');
    await page.getByText(/Point 3: .*from front to back/).waitFor();
    await last.getByLabel(/across/).fill('70');
    await last.getByLabel(/down/).press('Enter');
    await expect
      .poll(async () => (await records()).find((one) => one.name === 'Large lathe') as unknown as { bed: unknown[] })
      .toMatchObject({ bed: [{}, {}, {}] });
  });

  test('a set-up is added and said field by field; names that are none are refused in words', async () => {
    await desk('Set-ups');
    await page.getByRole('listbox', { name: 'Set-ups' }).focus();
    await page.keyboard.press('Insert');
    await page.getByRole('dialog').getByLabel('Name').fill('foot in the chuck');
    await page.getByRole('dialog').getByLabel('Machine').selectOption({ label: 'Large lathe' });
    await page.getByRole('dialog').getByRole('button', { name: 'Add', exact: true }).click();
    await setup('foot in the chuck').waitFor();
    const form = page.locator('.setup-form');
    await form.getByText('Z', { exact: true }).click();
    const first = form.getByRole('combobox', { name: 'Through, along X' });
    await first.fill('middel');
    await first.press('Enter');
    await form.getByText(/No station of drum along X is called "middel"/).waitFor();
    await first.fill('middle');
    await first.press('Enter');
    await form.getByText(/the line needs both/).waitFor();
    const second = form.getByRole('combobox', { name: 'Through, along Y' });
    await second.fill('centre');
    await second.press('Enter');
    await expect.poll(async () => (await named('setup', 'foot in the chuck'))?.line?.through).toHaveLength(2);
    await form.getByLabel('Held', { exact: true }).selectOption('three-jaw chuck');
    await expect.poll(async () => (await named('setup', 'foot in the chuck'))?.holding?.as).toBe('three-jaw chuck');
    await form.getByText('High Z end').click();
    await expect.poll(async () => (await named('setup', 'foot in the chuck'))?.headEnd).toBe('high');
    await page.locator('.swing-view.front .swing-work-lines').waitFor(patient);
  });

  test('operations are put in order by keys, and an order is proposed before it is taken', async () => {
    await desk('Route');
    await page.getByRole('group', { name: 'Add an operation' }).getByRole('button', { name: 'face' }).click();
    const list = page.getByRole('listbox', { name: 'Operations' });
    await expect.poll(() => list.getByRole('option').count()).toBe(2);
    const form = page.locator('.operation-form');
    await form.getByLabel('Name').fill('face the foot');
    await form.getByLabel('Name').press('Enter');
    await form.getByRole('combobox', { name: 'Makes true' }).fill('foot');
    await form.getByRole('combobox', { name: 'Makes true' }).press('Enter');
    await list.getByRole('option', { name: /turn the barrel/ }).click();
    await form.getByRole('combobox', { name: 'Located by, measured from' }).fill('foot');
    await form.getByRole('combobox', { name: 'Located by, measured from' }).press('Enter');
    await page.getByRole('button', { name: 'Propose an Order…' }).click();
    const dialog = page.getByRole('dialog');
    await dialog.getByText(/after face the foot, which makes foot/).waitFor();
    await dialog.getByRole('button', { name: 'Take This Order' }).click();
    const order = async () =>
      (await list.getByRole('option').allTextContents()).map((text) => /face|turn/.exec(text)?.[0]);
    await expect.poll(order).toEqual(['face', 'turn']);
    await list.focus();
    await list.getByRole('option', { name: /face the foot/ }).click();
    await list.press('Alt+ArrowDown');
    await expect.poll(order).toEqual(['turn', 'face']);
    await chooseMenu(at.app, 'undo');
    await expect.poll(order).toEqual(['face', 'turn']);
    await page.locator('.route-totals').getByText('Taken up').waitFor();
  });

  test.each(['light', 'dark'] as const)('no desk breaks a rule of accessibility, %s', async (theme) => {
    await page.emulateMedia({ colorScheme: theme });
    for (const name of ['Set-ups', 'Route', 'Machines']) {
      await desk(name);
      await page.waitForTimeout(300);
      expect(await accessibilityFaults(page), name).toEqual([]);
    }
    await desk('Set-ups');
  });
});
