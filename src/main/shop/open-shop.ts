import { copyFile, mkdir, readFile, rename, stat } from 'node:fs/promises';
import path from 'node:path';
import { isDeepStrictEqual } from 'node:util';
import type { MachineId } from '../../shared/base/ids.ts';
import { err, ok, type Result } from '../../shared/base/result.ts';
import type { Machine } from '../../shared/build/machine.ts';
import { machineAsKept } from '../../shared/build/machine-as-kept.ts';
import type { ShopContent, ShopError, ShopLoss } from '../../shared/ipc/shop-contract.ts';
import type { LengthUnit } from '../../shared/quantity/kind.ts';
import { troubleInWords, writeTrouble } from '../files/disk-trouble.ts';
import { freeName } from '../files/free-name.ts';
import { writeAtomically } from '../files/write-atomically.ts';
import { readShopText, SHOP_VERSION, writeShopText } from './shop-file.ts';

/** The machines of the user, entered once and shared by all builds. Every answer is the shop as it then is on disk. */
export interface Shop {
  load(): Promise<Result<ShopContent, ShopError>>;
  /**
   * Keeps a machine: in the place of the one of its id, else at the end of the list.
   * @param lengthUnit the unit of its lengths that are written without one
   */
  put(machine: Machine, lengthUnit: LengthUnit): Promise<Result<ShopContent, ShopError>>;
  /** Takes a machine out; builds that have it keep theirs. */
  remove(machine: MachineId): Promise<Result<ShopContent, ShopError>>;
}

export interface ShopOptions {
  /** Told of the shop after each change, and when the file was found changed by someone else. */
  readonly onChange?: (content: ShopContent) => void;
  /** How a file is written; replaced where writes are made to fail. */
  readonly write?: typeof writeAtomically;
}

/** Many times what the largest works would enter. */
const LARGEST_BYTES = 32 * 1024 * 1024;

interface Known {
  readonly machines: readonly Machine[];
  /** What the file was when it was read or written: another one was put there by someone else. */
  readonly mark: string;
  /** The sound text on disk; undefined where the file is not there, or holds machines that could not be read. */
  readonly text: string | undefined;
}

/** Opens the shop of the user, kept as `shop.json` in the program's data folder with its last good copy beside it. */
export function openShop(dataFolder: string, { onChange, write = writeAtomically }: ShopOptions = {}): Shop {
  const file = path.join(dataFolder, 'shop.json');
  const copy = `${file}.bak`;
  const lost: ShopLoss[] = [];
  let known: Known | undefined;
  let last: Promise<unknown> = Promise.resolve();

  /** One after the other: a change is made upon what the one before left. */
  function inTurn<T>(work: () => Promise<T>): Promise<T> {
    const done = last.then(work);
    last = done.catch(() => undefined);
    return done;
  }

  const contentOf = ({ machines }: Known): ShopContent => ({ machines, lost: [...lost] });
  const unreadable = (error: unknown) =>
    err({ code: 'unreadable' as const, path: file, detail: troubleInWords(error) });

  /** Replaces the file; the sound text that stood there before becomes the last good copy. */
  async function save(machines: readonly Machine[], before: string | undefined): Promise<Known> {
    const text = writeShopText(machines);
    await mkdir(dataFolder, { recursive: true });
    if (before !== undefined) await write(copy, before);
    await write(file, text);
    return { machines, mark: await markOf(file), text };
  }

  /** The shop out of its last good copy, the damaged file being out of the way. */
  async function fromCopy(aside: string, detail: string): Promise<Known> {
    const machines = await machinesOfCopy();
    lost.push({ is: 'file', path: aside, detail, hadCopy: machines !== undefined });
    return restored(machines ?? []);
  }

  async function machinesOfCopy(): Promise<readonly Machine[] | undefined> {
    const text = await readIfThere(copy).catch(() => undefined);
    const read = text === undefined ? undefined : readShopText(text);
    return read?.ok ? read.value.machines : undefined;
  }

  /** There is no file: there never was one, or it was lost. */
  async function missing(): Promise<Known> {
    const machines = await machinesOfCopy();
    if (machines === undefined || machines.length === 0) return { machines: [], mark: NOT_THERE, text: undefined };
    lost.push({ is: 'gone', path: copy });
    return restored(machines);
  }

  /** What was saved from a damaged file; where it cannot be written now, it will be with the next change. */
  async function restored(machines: readonly Machine[]): Promise<Known> {
    try {
      return await save(machines, undefined);
    } catch {
      return { machines, mark: await markOf(file), text: undefined };
    }
  }

  async function read(mark: string): Promise<Result<Known, ShopError>> {
    let text: string | undefined;
    try {
      if (mark !== NOT_THERE && (await stat(file)).size > LARGEST_BYTES) {
        const aside = await setAside(file, rename);
        return ok(await fromCopy(aside, 'it is far too large'));
      }
      text = await readIfThere(file);
      if (text === undefined) return ok(await missing());
      const shop = readShopText(text);
      if (!shop.ok) {
        const { error } = shop;
        if (error.code === 'newer-version')
          return err({ code: error.code, path: file, version: error.version, newest: SHOP_VERSION });
        return ok(await fromCopy(await setAside(file, rename), error.detail));
      }
      const { machines, bad } = shop.value;
      if (bad.length === 0) return ok({ machines, mark, text });
      const aside = await setAside(file, copyFile);
      for (const { name, detail } of bad) lost.push({ is: 'machine', name, path: aside, detail });
      return ok(await restored(machines));
    } catch (error) {
      return unreadable(error);
    }
  }

  /** The shop as it is on disk, read anew when the file is another one than before. */
  async function current(): Promise<Result<Known, ShopError>> {
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
    if (before && !isDeepStrictEqual(before.machines, known.machines)) onChange?.(contentOf(known));
    return now;
  }

  async function change(
    edit: (machines: readonly Machine[]) => Result<readonly Machine[], ShopError>,
  ): Promise<Result<ShopContent, ShopError>> {
    const now = await current();
    if (!now.ok) return now;
    const next = edit(now.value.machines);
    if (!next.ok) return next;
    if (isDeepStrictEqual(next.value, now.value.machines)) return ok(contentOf(now.value));
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
  }

  return {
    load: () =>
      inTurn(async () => {
        const now = await current();
        return now.ok ? ok(contentOf(now.value)) : now;
      }),
    put: (given, lengthUnit) =>
      inTurn(() =>
        change((machines) => {
          const there = machines.find(({ id }) => id === given.id);
          const order = there?.order ?? Math.floor(machines.at(-1)?.order ?? 0) + 1;
          const machine = machineAsKept({ ...given, order }, lengthUnit);
          if (!machine.ok) return err({ code: 'refused', refusal: machine.error });
          return ok(there ? machines.map((m) => (m === there ? machine.value : m)) : [...machines, machine.value]);
        }),
      ),
    remove: (id) => inTurn(() => change((machines) => ok(machines.filter((machine) => machine.id !== id)))),
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

/** Moves or copies a damaged file to a name of its own beside it. @returns where it lies. */
async function setAside(file: string, to: (from: string, to: string) => Promise<void>): Promise<string> {
  const aside = freeName(path.dirname(file), 'shop damaged', '.json');
  await to(file, aside);
  return aside;
}
