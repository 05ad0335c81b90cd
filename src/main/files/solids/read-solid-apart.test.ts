import { mkdtempSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, expect, test } from 'vitest';
import { boxMesh } from '../../../../tests/support/sample-meshes.ts';
import { writeStl } from '../../../shared/solid/formats/write-stl.ts';
import { readSolidApart } from './read-solid-apart.ts';

const root = fileURLToPath(new URL('../../../..', import.meta.url));
// Built before the tests run, so it is reached by its place and not as an import.
const thread = path.join(root, 'out', 'cli', 'solid-thread.js');
const bracket = path.join(root, 'tests', 'formats', 'solids', 'bracket-inch.step');
const folder = mkdtempSync(path.join(os.tmpdir(), 'waywright-solid-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function fileWith(name: string, content: string | Uint8Array): string {
  const file = path.join(folder, name);
  writeFileSync(file, content);
  return file;
}

test('a solid crosses from the thread whole', async () => {
  const read = await readSolidApart(fileWith('box.stl', writeStl(boxMesh([0, 0, 0], [4, 3, 2]), '')), 60_000, thread);
  expect(read.ok && read.value).toMatchObject({ form: 'stl', volume: 24, max: [4, 3, 2] });
  expect(read.ok && read.value.mesh.vertices).toBeInstanceOf(Float64Array);
});

test('reading that takes too long is given up', async () => {
  const read = await readSolidApart(bracket, 20, thread);
  expect(read.ok ? undefined : read.error.code).toBe('took-too-long');
});

test('a thread that ends or fails is told of, not waited for', async () => {
  const dies = fileWith('dies.mjs', 'process.exit(3);');
  const fails = fileWith('fails.mjs', "throw new RangeError('Array buffer allocation failed');");
  for (const broken of [dies, fails]) {
    const read = await readSolidApart(bracket, 60_000, broken);
    expect(read.ok ? undefined : read.error.code).toBe('too-large');
  }
});

test('a file beyond all size is not read at all', async () => {
  const file = fileWith('vast.stl', '');
  truncateSync(file, 300 * 1024 * 1024);
  const read = await readSolidApart(file, 60_000, thread);
  expect(read.ok ? undefined : read.error).toMatchObject({ code: 'too-large' });
});

test('a folder, and a file that is not there', async () => {
  for (const name of [folder, path.join(folder, 'none.stl')]) {
    const read = await readSolidApart(name, 60_000, thread);
    expect(read.ok ? undefined : read.error.code).toBe('unreadable');
  }
});
