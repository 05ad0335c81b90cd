import { copyFile, mkdir, readFile, rename, stat } from 'node:fs/promises';
import path from 'node:path';
import { isDeepStrictEqual } from 'node:util';
import { err, ok, type Result } from '../../shared/base/result.ts';
import type { KeptError, KeptLoss } from '../../shared/ipc/kept-contract.ts';
import { troubleInWords, writeTrouble } from '../files/disk-trouble.ts';
import { freeName } from '../files/free-name.ts';
import { writeAtomically } from '../files/write-atomically.ts';

/** One of a list that could not be read. */
export interface BadItem {
  readonly name: string;
  readonly detail: string;
}

export type KeptTextFault =
  | { readonly code: 'newer-version'; readonly version: number }
  | { readonly code: 'damaged'; readonly detail: string };

export interface KeptText<T> {
  readonly items: readonly T[];
  readonly bad: readonly BadItem[];
}

/** A list of the user's, kept in a file of the program's data folder. Every answer is the list as it then is on disk. */
export interface KeptList<T> {
  load(): Promise<Result<KeptContent<T>, KeptError>>;
  /** Changes the list as it is by then; what `edit` refuses is handed back, and nothing is written. */
  change<E>(edit: (items: readonly T[]) => Result<readonly T[], E>): Promise<Result<KeptContent<T>, KeptError | E>>;
}

export interface KeptContent<T> {
  readonly items: readonly T[];
  /** What was set aside since the program was started. */
  readonly lost: readonly KeptLoss[];
}

export interface KeptListNeeds<T> {
  readonly folder: string;
  /** Without its ending: `shop` is kept as `shop.json`, with its last good copy beside it. */
  readonly name: string;
  /** The newest form that is read. */
  readonly version: number;
  readonly readText: (text: string) => Result<KeptText<T>, KeptTextFault>;
  readonly writeText: (items: readonly T[]) => string;
  /** Told of the list after each change, and when the file was found changed by someone else. */
  readonly onChange?: ((content: KeptContent<T>) => void) | undefined;
  /** How a file is written; replaced where writes are made to fail. */
  readonly write?: typeof writeAtomically | undefined;
}

/** Many times what the largest works would enter. */
const LARGEST_BYTES = 32 * 1024 * 1024;

interface Known<T> {
  readonly items: readonly T[];
  /** What the file was when it was read or written: another one was put there by someone else. */
  readonly mark: string;
  /** The sound text on disk; undefined where the file is not there, or holds items that could not be read. */
  readonly text: string | undefined;
}

/** Opens a list that is kept as JSON, safe from failing writes and damaged files. */
export function openKeptList<T>(needs: KeptListNeeds<T>): KeptList<T> {
  const { folder, name, version, readText, writeText, onChange, write = writeAtomically } = needs;
  const file = path.join(folder, `${name}.json`);
  const copy = `${file}.bak`;
  const lost: KeptLoss[] = [];
  let known: Known<T> | undefined;
  let last: Promise<unknown> = Promise.resolve();

  /** One after the other: a change is made upon what the one before left. */
  function inTurn<R>(work: () => Promise<R>): Promise<R> {
    const done = last.then(work);
    last = done.catch(() => undefined);
    return done;
  }

  const contentOf = ({ items }: Known<T>): KeptContent<T> => ({ items, lost: [...lost] });
  const unreadable = (error: unknown) =>
    err({ code: 'unreadable' as const, path: file, detail: troubleInWords(error) });

  /** Replaces the file; the sound text that stood there before becomes the last good copy. */
  async function save(items: readonly T[], before: string | undefined): Promise<Known<T>> {
    const text = writeText(items);
    await mkdir(folder, { recursive: true });
    if (before !== undefined) await write(copy, before);
    await write(file, text);
    return { items, mark: await markOf(file), text };
  }

  /** The list out of its last good copy, the damaged file being out of the way. */
  async function fromCopy(aside: string, detail: string): Promise<Known<T>> {
    const items = await itemsOfCopy();
    lost.push({ is: 'file', path: aside, detail, hadCopy: items !== undefined });
    return restored(items ?? []);
  }

  async function itemsOfCopy(): Promise<readonly T[] | undefined> {
    const text = await readIfThere(copy).catch(() => undefined);
    const read = text === undefined ? undefined : readText(text);
    return read?.ok ? read.value.items : undefined;
  }

  /** There is no file: there never was one, or it was lost. */
  async function missing(): Promise<Known<T>> {
    const items = await itemsOfCopy();
    if (items === undefined || items.length === 0) return { items: [], mark: NOT_THERE, text: undefined };
    lost.push({ is: 'gone', path: copy });
    return restored(items);
  }

  /** What was saved from a damaged file; where it cannot be written now, it will be with the next change. */
  async function restored(items: readonly T[]): Promise<Known<T>> {
    try {
      return await save(items, undefined);
    } catch {
      return { items, mark: await markOf(file), text: undefined };
    }
  }

  /** Moves or copies the damaged file to a name of its own beside it. @returns where it lies. */
  async function setAside(to: (from: string, to: string) => Promise<void>): Promise<string> {
    const aside = freeName(path.dirname(file), `${name} damaged`, '.json');
    await to(file, aside);
    return aside;
  }

  async function read(mark: string): Promise<Result<Known<T>, KeptError>> {
    try {
      if (mark !== NOT_THERE && (await stat(file)).size > LARGEST_BYTES)
        return ok(await fromCopy(await setAside(rename), 'it is far too large'));
      const text = await readIfThere(file);
      if (text === undefined) return ok(await missing());
      const found = readText(text);
      if (!found.ok) {
        const { error } = found;
        if (error.code === 'newer-version')
          return err({ code: error.code, path: file, version: error.version, newest: version });
        return ok(await fromCopy(await setAside(rename), error.detail));
      }
      const { items, bad } = found.value;
      if (bad.length === 0) return ok({ items, mark, text });
      const aside = await setAside(copyFile);
      for (const { name: item, detail } of bad) lost.push({ is: 'item', name: item, path: aside, detail });
      return ok(await restored(items));
    } catch (error) {
      return unreadable(error);
    }
  }

  /** The list as it is on disk, read anew when the file is another one than before. */
  async function current(): Promise<Result<Known<T>, KeptError>> {
    let mark: string;
    try {
      mark = await markOf(file);
    } catch (error) {
      return unreadable(error);
    }
    if (known?.mark === mark) return ok(known);
    const before = known;
    const now = await read(mark);
    if (!now.ok) return now;
    known = now.value;
    if (before && !isDeepStrictEqual(before.items, known.items)) onChange?.(contentOf(known));
    return now;
  }

  return {
    load: () =>
      inTurn(async () => {
        const now = await current();
        return now.ok ? ok(contentOf(now.value)) : now;
      }),
    change: (edit) =>
      inTurn(async () => {
        const now = await current();
        if (!now.ok) return now;
        const next = edit(now.value.items);
        if (!next.ok) return next;
        if (isDeepStrictEqual(next.value, now.value.items)) return ok(contentOf(now.value));
        try {
          known = await save(next.value, now.value.text);
        } catch (error) {
          const trouble = writeTrouble(error);
          if (trouble.code === 'disk-full') return err({ code: 'disk-full', path: file });
          return err({ code: 'unwritable', path: file, detail: 'detail' in trouble ? trouble.detail : trouble.code });
        }
        const content = contentOf(known);
        onChange?.(content);
        return ok(content);
      }),
  };
}

const NOT_THERE = 'not there';

/** @throws the file system's error, but for a file that is not there. */
async function markOf(file: string): Promise<string> {
  try {
    const { ino, size, mtimeMs } = await stat(file);
    return `${ino} ${size} ${mtimeMs}`;
  } catch (error) {
    if (isMissing(error)) return NOT_THERE;
    throw error;
  }
}

async function readIfThere(file: string): Promise<string | undefined> {
  try {
    return await readFile(file, 'utf8');
  } catch (error) {
    if (isMissing(error)) return undefined;
    throw error;
  }
}

const isMissing = (error: unknown): boolean =>
  typeof error === 'object' && error !== null && 'code' in error && error.code === 'ENOENT';
