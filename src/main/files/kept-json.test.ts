import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { z } from 'zod';
import { keepJson } from './kept-json.ts';
import { writeAtomically } from './write-atomically.ts';

const schema = z.object({ theme: z.enum(['light', 'dark']) });
const light = { theme: 'light' } as const;
let folder = '';
beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'waywright-kept-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));
const inFolder = (name: string) => path.join(folder, name);

test('what was set is there after a restart, and the last of many wins', async () => {
  const file = inFolder('deep/er/kept.json');
  const kept = keepJson(file, schema, light);
  for (let i = 0; i < 20; i++) kept.set({ theme: i % 2 === 0 ? 'light' : 'dark' });
  expect(kept.get()).toEqual({ theme: 'dark' });
  await kept.settled();
  expect(keepJson(file, schema, light).get()).toEqual({ theme: 'dark' });
});

test.each([
  ['absent', undefined],
  ['empty', ''],
  ['cut short', '{"theme": "da'],
  ['of another shape', '{"theme": "pink"}'],
  ['a list', '[1, 2]'],
])('a file that is %s counts as the fallback', (_, text) => {
  const file = inFolder('kept.json');
  if (text !== undefined) writeFileSync(file, text);
  expect(keepJson(file, schema, light).get()).toEqual(light);
});

test('fields of a later version are passed over', () => {
  writeFileSync(inFolder('kept.json'), '{"theme": "dark", "later": true}');
  expect(keepJson(inFolder('kept.json'), schema, light).get()).toEqual({ theme: 'dark' });
});

test('a write that fails is told, and the value still holds', async () => {
  mkdirSync(inFolder('kept.json'));
  const troubles: unknown[] = [];
  const kept = keepJson(inFolder('kept.json'), schema, light, (error) => troubles.push(error));
  kept.set({ theme: 'dark' });
  await kept.settled();
  expect(troubles).toHaveLength(1);
  expect(kept.get()).toEqual({ theme: 'dark' });
});

test('an atomic write replaces the text and leaves nothing beside it', async () => {
  const file = inFolder('a.csv');
  await writeAtomically(file, 'old');
  await writeAtomically(file, 'new');
  expect(readFileSync(file, 'utf8')).toBe('new');
  expect(readdirSync(folder)).toEqual(['a.csv']);
});

test('an atomic write that fails leaves no part file', async () => {
  await expect(writeAtomically(inFolder('none/a.csv'), 'x')).rejects.toMatchObject({ code: 'ENOENT' });
  mkdirSync(inFolder('taken'));
  await expect(writeAtomically(inFolder('taken'), 'x')).rejects.toThrow();
  expect(readdirSync(folder)).toEqual(['taken']);
  expect(existsSync(inFolder('none'))).toBe(false);
});
