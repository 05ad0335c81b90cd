import { mkdtempSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { CommitError, OpenError } from '../../shared/ipc/contract.ts';
import { writeTrouble } from './disk-trouble.ts';
import { freeName } from './free-name.ts';
import { commitWords, openWords } from './open-words.ts';
import { decodeText, LARGEST_TEXT_BYTES, readTextFile } from './text-files.ts';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'waywright-files-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

describe('words', () => {
  const at = '/b/engine.wayw';
  const openErrors: readonly OpenError[] = [
    { code: 'not-found', path: at },
    { code: 'not-a-build', path: at },
    { code: 'newer-version', path: at, version: 9, newest: 1 },
    { code: 'damaged', path: at, detail: 'page 7 is torn' },
    { code: 'unreadable', path: at, detail: 'you have no right to do that there' },
  ];
  const commitErrors: readonly CommitError[] = [
    { code: 'disk-full' },
    { code: 'unwritable', detail: 'the disk reports a fault' },
    { code: 'read-only' },
    { code: 'stale-revision', current: 4 },
    { code: 'nothing-to-step' },
  ];
  const said = [
    ...openErrors.map((error) => [error.code, openWords(error)] as const),
    ...commitErrors.map((error) => [error.code, commitWords(error, at)] as const),
  ];

  test.each(said)('%s is told in whole sentences, calmly', (_, { message, detail }) => {
    expect(message).toMatch(/^[“A-Z].*\.$/);
    expect(detail).toMatch(/^[/A-Z].*\.$/);
    expect(`${message}${detail}`).not.toMatch(/invalid|!|undefined/i);
  });

  test('every refusal to open names the file, and carries its figures', () => {
    for (const error of openErrors) expect(openWords(error).message).toContain('engine.wayw');
    expect(openWords(openErrors[2] as OpenError).detail).toMatch(/form 9.*up to 1/);
    expect(openWords(openErrors[3] as OpenError).detail).toContain('page 7 is torn');
  });
});

test('a free name is numbered past those taken', () => {
  expect(freeName(folder, 'engine', '.wayw')).toBe(path.join(folder, 'engine.wayw'));
  writeFileSync(path.join(folder, 'engine.wayw'), '');
  writeFileSync(path.join(folder, 'engine 2.wayw'), '');
  expect(freeName(folder, 'engine', '.wayw')).toBe(path.join(folder, 'engine 3.wayw'));
});

test.each([
  ['ENOSPC', { code: 'disk-full' }],
  ['EDQUOT', { code: 'disk-full' }],
  ['EROFS', { code: 'unwritable', detail: 'the disk can only be read' }],
])('a write refused with %s is sorted', (code, expected) => {
  expect(writeTrouble(Object.assign(new Error('x'), { code }))).toEqual(expected);
});

describe('texts of other programs', () => {
  test.each([
    ['UTF-8', Buffer.from('Ø 62,5')],
    ['UTF-8 with its mark', Buffer.from('\ufeffØ 62,5')],
    ['UTF-16 little-endian', Buffer.from('\ufeffØ 62,5', 'utf16le')],
    ['UTF-16 big-endian', Buffer.from('\ufeffØ 62,5', 'utf16le').swap16()],
    ['Windows-1252', Buffer.from('Ø 62,5', 'latin1')],
  ])('%s is recognised', (_, bytes) => {
    expect(decodeText(bytes)).toBe('Ø 62,5');
  });

  test('a text is read', async () => {
    const file = path.join(folder, 'a.csv');
    writeFileSync(file, 'part,name\n');
    expect(await readTextFile(file)).toEqual({ ok: true, value: 'part,name\n' });
  });

  test('one too large is refused before it is read', async () => {
    const file = path.join(folder, 'big.csv');
    writeFileSync(file, '');
    truncateSync(file, LARGEST_TEXT_BYTES + 1);
    expect(await readTextFile(file)).toMatchObject({ ok: false, error: { code: 'too-large' } });
  });

  test('an absent one and a folder are refused', async () => {
    expect(await readTextFile(path.join(folder, 'none.csv'))).toMatchObject({ error: { code: 'unreadable' } });
    expect(await readTextFile(folder)).toMatchObject({ error: { code: 'unreadable' } });
  });
});
