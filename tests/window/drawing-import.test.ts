import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { type Launched, launch } from '../support/electron.ts';
import { answerDialogs, chooseMenu } from './shell-driver.ts';

let folder = '';
let at: Launched;
beforeEach(async () => {
  folder = mkdtempSync(path.join(os.tmpdir(), 'waywright-import-'));
  at = await launch({ args: ['--example=as-corrected'] });
  await at.page.waitForSelector('.strip-arc');
});
afterEach(async () => {
  await at?.close();
  rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
});

const inFolder = (name: string) => path.join(folder, name);

test('a table is reported row by row before anything is taken, and taken in one step', async () => {
  const { app, page } = at;
  const rows = [
    'part;name;from;to;axis;value;plus;minus;source;sheet',
    'oil can;bore;;;diameter;12,5;;;measured;',
    'oil can;height;foot;lip;Z;80;;;drawn;',
    'oil can;height again;foot;nowhere;;80;;;drawn;',
  ];
  writeFileSync(inFolder('oil can.csv'), rows.join('\r\n'));
  await answerDialogs(app, { open: [[inFolder('oil can.csv')]] });
  await chooseMenu(app, 'import-csv');
  await page.getByRole('button', { name: 'Choose File…' }).click();
  await page.locator('.import-report').waitFor();
  const report = await page.locator('.import-report tbody tr').allTextContents();
  expect(report).toHaveLength(3);
  expect(report[0]).toMatch(/^4.*height again.*refused/);
  expect(await page.locator('.part-name', { hasText: 'oil can' }).count()).toBe(0);

  await page.getByRole('button', { name: 'Take 2 Rows' }).click();
  await page.locator('.part-name', { hasText: 'oil can' }).first().click();
  await page.locator('.board h2', { hasText: 'oil can' }).waitFor();
  await expect
    .poll(() => page.locator('[data-column="resolved"]').allTextContents())
    .toEqual(expect.arrayContaining(['12.5 mm', '80 mm']));
  await chooseMenu(app, 'undo');
  await expect.poll(() => page.locator('.part-name', { hasText: 'oil can' }).count()).toBe(0);
});

test('what is exported as JSON comes back the same; a faulty file is refused with every place', async () => {
  const { app, page } = at;
  await answerDialogs(app, { save: [inFolder('out.json')] });
  await chooseMenu(app, 'export-json');
  await expect.poll(() => page.locator('.foot').textContent()).toContain('Exported to');
  const text = readFileSync(inFolder('out.json'), 'utf8');

  writeFileSync(
    inFolder('bad.json'),
    text.replace('"make": "cast"', '"make": "forged"').replace('"make":"cast"', '"make":"forged"'),
  );
  await answerDialogs(app, { open: [[inFolder('bad.json')], [inFolder('out.json')]] });
  await chooseMenu(app, 'import-json');
  await page.getByRole('button', { name: 'Choose File…' }).click();
  await expect.poll(() => page.locator('.report tbody tr').first().textContent()).toMatch(/\/records\/\d+\/make/);

  await page.getByRole('button', { name: 'Choose Another File…' }).click();
  await expect.poll(() => page.getByRole('dialog').count()).toBe(0);
  await answerDialogs(app, { save: [inFolder('again.json')] });
  await chooseMenu(app, 'export-json');
  await expect.poll(() => page.locator('.foot').textContent()).toContain('again.json');
  expect(readFileSync(inFolder('again.json'), 'utf8')).toBe(text);
});
