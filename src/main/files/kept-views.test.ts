import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { MOST_KEPT, MOST_KEPT_BYTES, openKeptViews } from './kept-views.ts';

let data = '';
beforeEach(() => {
  data = mkdtempSync(path.join(tmpdir(), 'waywright-kept-'));
});
afterEach(() => rmSync(data, { recursive: true, force: true }));

const troubles: unknown[] = [];
const openWith = (engine: string) =>
  openKeptViews(
    data,
    () => engine,
    (error) => troubles.push(error),
  );
const folder = () => path.join(data, 'kept-views');
const names = () => (existsSync(folder()) ? readdirSync(folder()).sort() : []);

const RECORDS = '[{"name":"Ständer, 12 Ω, 𝄞"}]';
const VIEWS = '{"first":"part:a","models":[["summary null",{"name":"Ständer\\n𝄞"}]]}';

async function keptBy(engine: string, records = RECORDS, views = VIEWS): Promise<string> {
  const kept = openWith(engine);
  const key = kept.keyOf(records);
  kept.keep(key, views);
  await kept.settled();
  return key;
}

test('what is kept is found by the next start, and only for these records and this engine', async () => {
  const key = await keptBy('engine 1');
  const again = openWith('engine 1');
  expect(again.keyOf(RECORDS)).toBe(key);
  expect(again.has(key)).toBe(true);
  expect(again.find(again.keyOf(RECORDS))).toBe(VIEWS);
  expect(again.find(again.keyOf(RECORDS.replace('12', '13')))).toBeUndefined();
  const other = openWith('engine 2');
  expect(other.find(other.keyOf(RECORDS))).toBeUndefined();
  expect(troubles).toEqual([]);
});

test.each([
  ['cut short', (text: string) => text.slice(0, -3)],
  ['changed by one letter', (text: string) => text.replace('part:a', 'part:b')],
  ['empty', () => ''],
  ['of another program', () => '{"views":[]}'],
  ['without its first line', (text: string) => text.slice(text.indexOf('\n') + 1)],
])('a file that is %s is ignored and removed', async (_, spoil) => {
  const key = await keptBy('engine');
  const [name] = names();
  const file = path.join(folder(), name!);
  writeFileSync(file, spoil(readFileSync(file, 'utf8')));
  const kept = openWith('engine');
  expect(kept.find(key)).toBeUndefined();
  await kept.settled();
  expect(names()).toEqual([]);
});

test('those that were asked for last stay; what is not ours is left alone', async () => {
  const keys: string[] = [];
  for (let i = 0; i < MOST_KEPT; i++) {
    keys.push(await keptBy('engine', `[${i}]`));
    utimesSync(path.join(folder(), `${keys[i]}.json`), 1_000 + i, 1_000 + i);
  }
  writeFileSync(path.join(folder(), 'notes.txt'), 'mine');
  writeFileSync(path.join(folder(), `.${keys[0]}.json.0a1b2c.part`), 'half');
  const kept = openWith('engine');
  expect(kept.find(keys[0]!)).toBe(VIEWS);
  await kept.settled();
  const newest = await keptBy('engine', '[one more]');
  const expected = [keys[0]!, ...keys.slice(2), newest].map((key) => `${key}.json`);
  expect(names()).toEqual([...expected, 'notes.txt'].sort());
  kept.clear();
  await kept.settled();
  expect(names()).toEqual(['notes.txt']);
});

test('what is very large is not kept', async () => {
  await keptBy('engine', RECORDS, 'x'.repeat(MOST_KEPT_BYTES));
  expect(names()).toHaveLength(1);
  await keptBy('engine', '[]', 'Ω'.repeat(MOST_KEPT_BYTES / 2 + 1));
  expect(names()).toHaveLength(1);
});

test('where nothing can be written, that is told and nothing else happens', async () => {
  writeFileSync(folder(), 'a file in the way');
  const key = await keptBy('engine');
  expect(troubles).toHaveLength(1);
  troubles.length = 0;
  const kept = openWith('engine');
  expect(kept.find(key)).toBeUndefined();
  expect(kept.has(key)).toBe(false);
});
