import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { readSolid } from '../../src/main/files/solids/read-solid.ts';
import { writeStl } from '../../src/shared/solid/formats/write-stl.ts';
import { type Launched, launch } from '../support/electron.ts';
import { boxMesh } from '../support/sample-meshes.ts';
import { answerDialogs, chooseMenu, invoke } from './shell-driver.ts';

const bracket = fileURLToPath(new URL('../formats/solids/bracket-inch.step', import.meta.url));
/** As the kernel that wrote the file gives it: see tests/cli/solids.test.ts. */
const BRACKET_MM3 = 146_531.847_078;

/** A large solid takes a while to be on disk. */
const patient = { timeout: 20_000 };

interface Kept {
  readonly kind: string;
  readonly id: string;
  readonly name: string;
  readonly unit?: string;
  readonly shape?: { readonly type: string; readonly turn?: readonly string[] };
}

describe('solids of other programs in the window', () => {
  let at: Launched;
  let page: Page;
  let folder = '';
  const inFolder = (name: string) => path.join(folder, name);
  const dialog = () => page.getByRole('dialog');
  const records = async (): Promise<readonly Kept[]> => {
    const loaded = await invoke(page, 'build:load', undefined);
    return loaded.ok && loaded.value ? (JSON.parse(loaded.value.records) as Kept[]) : [];
  };
  const solidNamed = async (name: string) =>
    (await records()).find((each) => each.kind === 'solid' && each.name === name);

  beforeAll(async () => {
    folder = mkdtempSync(path.join(os.tmpdir(), 'waywright-solids-'));
    at = await launch({ args: ['--example=as-corrected'], userData: inFolder('data') });
    page = at.page;
    await page.getByRole('listbox', { name: 'Parts' }).getByRole('option', { name: 'crank pin' }).first().click();
  });
  afterAll(async () => {
    await at?.close();
    rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
  });

  test('STL asks for its unit, doubts a wrong one, and comes in turned', async () => {
    writeFileSync(inFolder('spare lug.stl'), writeStl(boxMesh([0, 0, 0], [40, 30, 20]), 'pad'));
    await answerDialogs(at.app, { open: [[inFolder('spare lug.stl')]] });
    await chooseMenu(at.app, 'import-solid');
    await dialog().getByRole('button', { name: 'Choose File…' }).click();
    await dialog().getByText('40 × 30 × 20 in its own numbers').waitFor();
    const take = dialog().getByRole('button', { name: 'Take It In' });
    expect(await take.isDisabled()).toBe(true);
    await dialog().getByRole('radio', { name: 'm', exact: true }).check();
    await dialog().getByText('The size is right').waitFor();
    expect(await take.isDisabled()).toBe(true);
    await dialog().getByRole('radio', { name: 'mm', exact: true }).check();
    await dialog().getByText('40 × 30 × 20 mm, 24 cm³').waitFor();
    await dialog().getByLabel('Its Z becomes').selectOption('+Y');
    await take.click();
    await expect.poll(async () => (await solidNamed('spare lug'))?.unit, patient).toBe('mm');
    const body = (await records()).find(({ kind, name }) => kind === 'body' && name === 'spare lug');
    expect(body?.shape).toMatchObject({ type: 'imported', turn: ['+X', '-Z', '+Y'] });
  });

  test('STEP comes in at its size; undo takes it out again', async () => {
    await answerDialogs(at.app, { open: [[bracket]] });
    await chooseMenu(at.app, 'import-solid');
    await dialog().getByRole('button', { name: 'Choose File…' }).click();
    await dialog().getByText('90 × 56 × 70 mm, 146.53 cm³').waitFor({ timeout: 60_000 });
    const sure = dialog().getByLabel('The size is right');
    if (await sure.isVisible()) await sure.check();
    await dialog().getByRole('button', { name: 'Take It In' }).click();
    await expect.poll(() => solidNamed('bracket-inch'), patient).toBeDefined();
    await chooseMenu(at.app, 'undo');
    await expect.poll(() => solidNamed('bracket-inch'), patient).toBeUndefined();
    await chooseMenu(at.app, 'redo');
    await expect.poll(() => solidNamed('bracket-inch'), patient).toBeDefined();
  });

  test('one that is open is refused with its place, and nothing changes', async () => {
    const box = boxMesh([0, 0, 0], [40, 30, 20]);
    writeFileSync(inFolder('open.stl'), writeStl({ ...box, triangles: box.triangles.slice(3) }, 'open'));
    const before = (await records()).length;
    await answerDialogs(at.app, { open: [[inFolder('open.stl')]] });
    await chooseMenu(at.app, 'import-solid');
    await dialog().getByRole('button', { name: 'Choose File…' }).click();
    await dialog()
      .getByText(/open\.stl, x 20, y 15, z 0 .* not closed/)
      .waitFor();
    await dialog().getByRole('button', { name: 'Cancel' }).click();
    expect((await records()).length).toBe(before);
  });

  test('the solid of the part goes out, with all that was taken in', async () => {
    const out = inFolder('pin.3mf');
    await expect
      .poll(
        async () => {
          await answerDialogs(at.app, { save: [out] });
          await chooseMenu(at.app, 'export-3mf');
          await page.waitForTimeout(500);
          try {
            const read = await readSolid('pin.3mf', new Uint8Array(readFileSync(out)));
            return read.ok && read.value.volume > BRACKET_MM3 * 0.9999;
          } catch {
            return false;
          }
        },
        { timeout: 30_000 },
      )
      .toBe(true);
  });
});
