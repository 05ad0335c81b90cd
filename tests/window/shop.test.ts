import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { createStore } from '../../src/main/store/create-store.ts';
import type { MachineId } from '../../src/shared/base/ids.ts';
import { defaultMachine, type Machine } from '../../src/shared/build/machine.ts';
import type { BuildRecord } from '../../src/shared/build/records.ts';
import { defaultSettings } from '../../src/shared/build/settings.ts';
import { type Launched, launch } from '../support/electron.ts';
import { answerDialogs, chooseMenu, heard, invoke, listen, titles } from './shell-driver.ts';

let folder = '';
let running: Launched | undefined;
const inFolder = (name: string) => path.join(folder, name);
beforeEach(() => {
  folder = mkdtempSync(path.join(os.tmpdir(), 'waywright-shop-window-'));
});
afterEach(async () => {
  await running?.close();
  running = undefined;
  rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
});

const lathe: Machine = {
  ...defaultMachine('machine:mylathe001' as MachineId, 'my lathe', 'lathe', 1),
  figures: { swingOverBed: '250' },
};
const kept: Machine = { ...lathe, figures: { swingOverBed: '250 mm' } };

test('two windows see each other’s machines; they outlive the program and stand in every new build', async () => {
  const first = inFolder('First.wayw');
  const second = inFolder('Second.wayw');
  for (const file of [first, second]) expect((await createStore(file, [defaultSettings('m')])).ok).toBe(true);
  running = await launch({ userData: inFolder('data'), args: [first] });
  const { app, page } = running;
  await expect.poll(() => titles(app)).toEqual(['First — Waywright']);
  await answerDialogs(app, { open: [[second]] });
  const [other] = await Promise.all([app.waitForEvent('window'), chooseMenu(app, 'open')]);
  await expect.poll(() => titles(app)).toHaveLength(2);
  expect(await invoke(other, 'shop:load', undefined)).toEqual({ ok: true, value: { machines: [], lost: [] } });
  await listen(other, 'shop:changed');

  const put = await invoke(page, 'shop:put', { machine: lathe, lengthUnit: 'mm' });
  expect(put).toEqual({ ok: true, value: { machines: [kept], lost: [] } });
  await expect.poll(() => heard(other, 'shop:changed')).toEqual([{ machines: [kept], lost: [] }]);
  expect(await invoke(other, 'shop:load', undefined)).toEqual(put);
  expect(readFileSync(path.join(inFolder('data'), 'shop.json'), 'utf8')).toContain('"my lathe"');
  await expect(
    invoke(page, 'shop:put', { machine: { ...lathe, type: 'anvil' } as never, lengthUnit: 'mm' }),
  ).rejects.toThrow(/Refused/);

  await running.close();
  running = await launch({ userData: inFolder('data') });
  const again = running;
  await answerDialogs(again.app, { save: [inFolder('Shaper')] });
  await invoke(again.page, 'files:new', undefined);
  await expect.poll(() => titles(again.app)).toContain('Shaper — Waywright');
  const loaded = await invoke(again.page, 'build:load', undefined);
  if (!loaded.ok || loaded.value === undefined) throw new Error('no build');
  const records = JSON.parse(loaded.value.records) as BuildRecord[];
  expect(records).toEqual([defaultSettings('Shaper'), kept]);
  const gone = await invoke(again.page, 'shop:remove', { machine: lathe.id });
  expect(gone).toEqual({ ok: true, value: { machines: [], lost: [] } });
});
