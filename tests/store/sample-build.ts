import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, expect } from 'vitest';
import { createStore } from '../../src/main/store/create-store.ts';
import { type OpenOptions, openStore } from '../../src/main/store/open-store.ts';
import type { Store } from '../../src/main/store/store.ts';
import type { DimensionId, PartId, StationId } from '../../src/shared/base/ids.ts';
import type { Result } from '../../src/shared/base/result.ts';
import type { BuildDiff } from '../../src/shared/build/diff.ts';
import { type Dimension, defaultDimension } from '../../src/shared/build/dimension.ts';
import { defaultPart, type Part } from '../../src/shared/build/part.ts';
import type { BuildRecord } from '../../src/shared/build/records.ts';
import { defaultSettings } from '../../src/shared/build/settings.ts';
import { defaultStation, type Station } from '../../src/shared/build/station.ts';

export const partOf = (n: number): Part => defaultPart(`part:p${n}` as PartId, `bracket ${n}`, n);

export const stationOf = (part: Part, n: number): Station => ({
  ...defaultStation(`station:${part.id.slice(5)}s${n}` as StationId, part.id, 'X', `face ${n}`, n),
  datum: n === 0,
});

export const sizeOf = (part: Part, n: number): Dimension => ({
  ...defaultDimension(
    `dimension:${part.id.slice(5)}d${n}` as DimensionId,
    part.id,
    `bore ${n}`,
    { type: 'size', form: 'diameter' },
    n,
  ),
  value: `${n} + 1/8"`,
});

export const betweenOf = (from: Station, to: Station, n: number): Dimension => ({
  ...defaultDimension(
    `dimension:${from.part.slice(5)}b${n}` as DimensionId,
    from.part,
    `length ${n}`,
    { type: 'between', from: from.id, to: to.id },
    n,
  ),
  value: `${n} mm`,
});

/** A build of plain parts, each with a chain of stations and as many sizes as dimensions between them. */
export function sampleBuild(parts = 3, stations = 4, dimensions = 8): readonly BuildRecord[] {
  const records: BuildRecord[] = [defaultSettings('Sawing frame')];
  for (let p = 0; p < parts; p++) {
    const part = partOf(p);
    const row = Array.from({ length: stations }, (_, n) => stationOf(part, n));
    records.push(part, ...row);
    for (let n = 0; n < dimensions; n++) {
      const at = n % (stations - 1);
      records.push(n % 2 === 0 ? sizeOf(part, n) : betweenOf(row[at]!, row[at + 1]!, n));
    }
  }
  return records;
}

export const adding = (...added: readonly BuildRecord[]): BuildDiff => ({ added, updated: [], removed: [] });
export const removing = (...removed: readonly BuildRecord[]): BuildDiff => ({ added: [], updated: [], removed });
export const updating = <R extends BuildRecord>(from: R, to: R): BuildDiff => ({
  added: [],
  updated: [[from, to]],
  removed: [],
});

export function okOf<T, E>(result: Result<T, E>): T {
  expect(result).toMatchObject({ ok: true });
  return (result as { readonly value: T }).value;
}

export function refusalOf<T, E>(result: Result<T, E>): E {
  expect(result).toMatchObject({ ok: false });
  return (result as { readonly error: E }).error;
}

export async function recordsOf(store: Store): Promise<readonly BuildRecord[]> {
  return JSON.parse(okOf(await store.load()).records) as BuildRecord[];
}

export const byId = (records: readonly BuildRecord[]): readonly BuildRecord[] =>
  [...records].sort((a, b) => (a.id < b.id ? -1 : 1));

/** A folder, and stores in it, that are gone after each test. To be called once at the top of a test file. */
export function workbench() {
  const folders: string[] = [];
  const open: Store[] = [];
  afterEach(async () => {
    for (const store of open.splice(0)) await store.close().catch(() => undefined);
    for (const folder of folders.splice(0)) await rm(folder, { recursive: true, force: true });
  });
  const bench = {
    async folder(): Promise<string> {
      const folder = await mkdtemp(path.join(tmpdir(), 'waywright-test-'));
      folders.push(folder);
      return folder;
    },
    /** A new build file, closed. */
    async file(records: readonly BuildRecord[] = sampleBuild()): Promise<string> {
      const file = path.join(await bench.folder(), 'frame.wayw');
      okOf(await createStore(file, records));
      return file;
    },
    async open(file: string, options?: OpenOptions): Promise<Store> {
      const store = okOf(await openStore(file, options));
      open.push(store);
      return store;
    },
  };
  return bench;
}
