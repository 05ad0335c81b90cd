import { existsSync } from 'node:fs';
import { readdir, readFile, rm, utimes, writeFile } from 'node:fs/promises';
import { hostname, userInfo } from 'node:os';
import path from 'node:path';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { lockPath } from '../../src/main/store/lock/lock-file.ts';
import { startOf } from '../../src/main/store/lock/process-identity.ts';
import { openStore } from '../../src/main/store/open-store.ts';
import { adding, byId, okOf, partOf, recordsOf, refusalOf, sampleBuild, workbench } from '../store/sample-build.ts';
import { bundleChild, type Child, startChild } from './run-child.ts';

const bench = workbench();
const children: Child[] = [];
let bundle = '';
beforeAll(async () => {
  bundle = await bundleChild('opener');
});
afterAll(() => rm(path.dirname(bundle), { recursive: true, force: true }));
afterEach(async () => {
  for (const child of children.splice(0)) {
    child.process.kill('SIGKILL');
    await child.gone;
  }
});

interface Answer {
  readonly readOnly?: false | { readonly why: string; readonly by?: string; readonly since?: string };
  readonly error?: unknown;
}

const answerOf = async (child: Child): Promise<Answer> =>
  JSON.parse((await child.lines.next()).value as string) as Answer;

async function opener(): Promise<Child> {
  const child = startChild(bundle, []);
  children.push(child);
  await answerOf(child);
  return child;
}

async function ask(child: Child, line: string): Promise<Answer> {
  child.say(line);
  return answerOf(child);
}

/** No process has this number: Linux counts to 4 194 304 at most. */
const NO_PROCESS = 4_194_305;

const lockOf = (changes: object): string =>
  JSON.stringify({
    host: hostname(),
    pid: NO_PROCESS,
    user: 'someone',
    since: '2026-01-02T03:04:05.000Z',
    token: 'abc',
    ...changes,
  });

describe('a build that is open elsewhere', () => {
  test('opens for reading, and says who has it and since when', async () => {
    const file = await bench.file();
    const other = await opener();
    expect(await ask(other, file)).toEqual({ readOnly: false });
    const store = await bench.open(file);
    expect(store.readOnly).toEqual({
      why: 'held',
      by: `${userInfo().username} on ${hostname()}`,
      since: expect.stringMatching(/^20\d\d-/),
    });
    expect(byId(await recordsOf(store))).toEqual(byId(sampleBuild()));
    expect(refusalOf(await store.commit(0, 'add', adding(partOf(9))))).toEqual({ code: 'read-only' });
    expect(refusalOf(await store.step('undo', 0))).toEqual({ code: 'read-only' });
    expect(refusalOf(await store.makeIssue({ letter: 'A', title: '', note: '' }))).toEqual({ code: 'read-only' });
  });

  test('shows a second reader what the first has saved so far', async () => {
    const file = await bench.file();
    const store = await bench.open(file);
    okOf(await store.commit(0, 'add', adding(partOf(9))));
    const second = await bench.open(file);
    expect(second.readOnly).toMatchObject({ why: 'held' });
    expect(await recordsOf(second)).toContainEqual(partOf(9));
    okOf(await store.commit(1, 'add', adding(partOf(10))));
    await second.close();
    okOf(await store.commit(2, 'add', adding(partOf(11))));
  });

  test('is free again after closing, and after a kill', async () => {
    const file = await bench.file();
    const other = await opener();
    await ask(other, file);
    await ask(other, 'close');
    expect(await readdir(path.dirname(file))).toEqual(['frame.wayw']);
    await ask(other, file);
    expect(existsSync(lockPath(file))).toBe(true);
    other.process.kill('SIGKILL');
    await other.gone;
    const store = await bench.open(file);
    expect(store.readOnly).toBeUndefined();
    await store.close();
    expect(await readdir(path.dirname(file))).toEqual(['frame.wayw']);
  });

  test('a reader that opens and closes leaves the lock of the holder alone', async () => {
    const file = await bench.file();
    const other = await opener();
    await ask(other, file);
    const lock = await readFile(lockPath(file), 'utf8');
    await (await bench.open(file)).close();
    expect(await readFile(lockPath(file), 'utf8')).toBe(lock);
  });
});

describe('a lock that was left behind', () => {
  test.each([
    ['by a program that is gone', {}],
    ['by a program whose number another one has now', { pid: process.pid, started: 'long ago' }],
    ['by a program that said nothing but its number', { pid: NO_PROCESS, started: undefined }],
  ])('%s is taken over', async (_, changes) => {
    const file = await bench.file();
    await writeFile(lockPath(file), lockOf(changes));
    const store = await bench.open(file);
    expect(store.readOnly).toBeUndefined();
    okOf(await store.commit(0, 'add', adding(partOf(9))));
  });

  test.each([
    ['empty', ''],
    ['half written', '{"host":"x","pi'],
    ['of another shape', '{"owner":3}'],
  ])('%s is taken over', async (_, text) => {
    const file = await bench.file();
    await writeFile(lockPath(file), text);
    expect((await bench.open(file)).readOnly).toBeUndefined();
  });

  test('by a running program is respected', async () => {
    const file = await bench.file();
    await writeFile(lockPath(file), lockOf({ pid: process.pid, started: await startOf(process.pid) }));
    const store = await bench.open(file);
    expect(store.readOnly).toEqual({ why: 'held', by: `someone on ${hostname()}`, since: '2026-01-02T03:04:05.000Z' });
  });

  test('by another machine is respected as long as it gives signs of life', async () => {
    const file = await bench.file();
    await writeFile(lockPath(file), lockOf({ host: 'another-machine' }));
    const store = await bench.open(file);
    expect(store.readOnly).toMatchObject({ why: 'held', by: 'someone on another-machine' });
    const quiet = new Date(Date.now() - 11 * 60_000);
    await utimes(lockPath(file), quiet, quiet);
    expect((await bench.open(file)).readOnly).toBeUndefined();
  });
});

test('of several programs that find the same dead lock exactly one takes it over', { timeout: 120_000 }, async () => {
  const programs = await Promise.all([opener(), opener(), opener(), opener()]);
  for (let round = 0; round < 12; round++) {
    const file = await bench.file();
    await writeFile(lockPath(file), lockOf({}));
    const answers = await Promise.all(programs.map((program) => ask(program, file)));
    const editors = answers.filter(({ readOnly }) => readOnly === false);
    const readers = answers.filter(({ readOnly }) => readOnly && readOnly.why === 'held');
    expect([editors.length, readers.length], JSON.stringify(answers)).toEqual([1, 3]);
    await Promise.all(programs.map((program) => ask(program, 'close')));
  }
});

test('of several openings within one program exactly one edits', async () => {
  const file = await bench.file();
  const stores = await Promise.all([1, 2, 3].map(() => openStore(file)));
  const open = stores.map((result) => okOf(result));
  expect(open.filter(({ readOnly }) => readOnly === undefined)).toHaveLength(1);
  for (const store of open) await store.close();
});
