import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { openPreferences } from '../preferences/preferences.ts';
import { MOST_RECENT, openRecentFiles } from './recent-files.ts';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'waywright-recent-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

test('newest first, without doubles, missing ones marked, and there after a restart', async () => {
  const a = path.join(folder, 'a.wayw');
  const b = path.join(folder, 'b.wayw');
  writeFileSync(a, '');
  let changes = 0;
  const recent = openRecentFiles(folder, () => changes++);
  recent.add(a);
  recent.add(b);
  recent.add(a);
  const expected = [
    { path: a, missing: false },
    { path: b, missing: true },
  ];
  expect(recent.list()).toEqual(expected);
  expect(recent.has(b)).toBe(true);
  expect(changes).toBe(3);
  await recent.settled();
  expect(openRecentFiles(folder).list()).toEqual(expected);
  recent.remove(b);
  expect(recent.has(b)).toBe(false);
  recent.clear();
  expect(recent.list()).toEqual([]);
  await recent.settled();
});

test('the list keeps to its length', async () => {
  const recent = openRecentFiles(folder);
  for (let i = 0; i < MOST_RECENT + 5; i++) recent.add(`/b/${i}.wayw`);
  expect(recent.list()).toHaveLength(MOST_RECENT);
  expect(recent.list()[0]?.path).toBe(`/b/${MOST_RECENT + 4}.wayw`);
  await recent.settled();
});

test('an unreadable preference falls back by itself', async () => {
  const ignore = () => {};
  expect(openPreferences(folder, ignore).get()).toEqual({ theme: 'system' });
  writeFileSync(path.join(folder, 'preferences.json'), '{"theme": 5, "later": {"x": 1}}');
  expect(openPreferences(folder, ignore).get()).toEqual({ theme: 'system' });
  const preferences = openPreferences(folder, ignore);
  preferences.set({ theme: 'dark' });
  await preferences.settled();
  expect(openPreferences(folder, ignore).get()).toEqual({ theme: 'dark' });
});
