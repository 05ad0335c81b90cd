import { describe, expect, test, vi } from 'vitest';
import { sketchBodies } from '../../../tests/support/sketch-bodies.ts';
import type { DimensionId, StationId } from '../../shared/base/ids.ts';
import type { BuildRecord } from '../../shared/build/records.ts';
import type { Kernel } from '../../shared/solid/manifold/kernel.ts';
import { loadKernel } from '../../shared/solid/manifold/load-kernel.ts';
import type { BodyPreview } from './asks/body-preview.ts';
import { createHost } from './host.ts';
import { applyPatch } from './patch.ts';
import type { FromWorker } from './protocol.ts';
import type { Picture } from './solid/picture.ts';
import type { BodyRow } from './views/bodies.ts';
import type { FindingLine } from './views/findings.ts';
import type { SheetModel } from './views/sheet.ts';
import type { SolidModel } from './views/solid.ts';

/** A plate of 60 × 40 × 20 with a hole of 12 through it, of steel. */
function plate(): { readonly records: readonly BuildRecord[]; readonly part: string; readonly height: BuildRecord } {
  const s = sketchBodies('p');
  const { at, size } = s;
  s.body({ type: 'block', x: [at('X', 0), at('X', 60)], y: [at('Y', 0), at('Y', 40)], z: [at('Z', 0), at('Z', 20)] });
  s.body(
    {
      type: 'hole',
      axis: 'Z',
      from: at('Z', 20),
      to: at('Z', 0),
      centre: [at('X', 30), at('Y', 20)],
      diameter: size('diameter', 12),
    },
    { finish: 'machined' },
  );
  const records = s.records().map((record) => (record.kind === 'part' ? { ...record, material: 'steel' } : record));
  return { records, part: s.part.id, height: records.find(({ id }) => (id as string) === 'dimension:p-Z20')! };
}

/** The engine with its pauses in the test's own hand: `rest` lets everything that can wait be done. */
function start(records: readonly BuildRecord[], load: (() => Promise<Kernel>) | undefined) {
  const posted: FromWorker[] = [];
  const models = new Map<string, unknown>();
  const transfers: (readonly ArrayBuffer[])[] = [];
  let waiting: (() => void) | undefined;
  let calls = 0;
  let ids = 0;
  const host = createHost(
    (message, transfer = []) => {
      posted.push(message);
      transfers.push(transfer);
      if (message.type === 'broken') throw new Error(message.message);
      if (message.type !== 'views') return;
      for (const { key, patch } of message.changes)
        models.set(key, applyPatch(models.get(key), structuredClone(patch)));
    },
    {
      newId: (kind) => `${kind}:${String(++ids).padStart(10, '0')}` as never,
      now: () => '2026-01-01T00:00:00.000Z',
      later: (run) => {
        waiting = run;
        return () => {
          if (waiting === run) waiting = undefined;
        };
      },
      ...(load === undefined ? {} : { loadKernel: load }),
    },
  );
  const answerOf = (call: number) =>
    posted.flatMap((message) => (message.type === 'answer' && message.call === call ? [message.value] : []))[0];
  const once = () => {
    const run = waiting;
    waiting = undefined;
    run?.();
    return run !== undefined;
  };
  host({ type: 'load', call: ++calls, records: JSON.stringify(records) });
  return {
    posted,
    transfers,
    once,
    rest: async () => {
      for (let i = 0; i < 100; i++) {
        while (once());
        await new Promise((go) => setTimeout(go, 0));
      }
    },
    watch: (name: string, params: unknown) => {
      const key = `${name} ${JSON.stringify(params)}`;
      host({ type: 'watch', key, name, params });
      return <M>() => models.get(key) as M;
    },
    run: (command: string, params: unknown) => {
      host({ type: 'run', call: ++calls, command, params });
      return answerOf(calls);
    },
    ask: async <A>(name: string, params: unknown) => {
      const call = ++calls;
      host({ type: 'ask', call, name, params });
      while (!posted.some((message) => message.type === 'answer' && message.call === call))
        await new Promise((go) => setTimeout(go, 0));
      return answerOf(call) as A;
    },
  };
}

const kernel = await loadKernel();
const figure = (model: SolidModel, name: string) => model.figures.finished.find((one) => one.name === name)?.value;

describe('solids in the worker', () => {
  test('are worked out in the pauses, with figures and a picture that is handed over', async () => {
    const { records, part } = plate();
    const at = start(records, async () => kernel);
    const solid = at.watch('solid', { part });
    expect(solid<SolidModel>()).toMatchObject({ is: 'working', picture: 0, missing: 0 });
    await at.rest();
    const model = solid<SolidModel>();
    // A coarse picture came first.
    expect(model).toMatchObject({ is: 'made', picture: 2, fresh: true, hasMachined: true });
    // 60 · 40 · 20 − π · 6² · 20 mm³.
    const exact = (48_000 - Math.PI * 36 * 20) / 1000;
    expect(Number.parseFloat(figure(model, 'Volume')!)).toBeCloseTo(exact, 3);
    expect(figure(model, 'Box')).toBe('60 × 40 × 20 mm');
    expect(model.figures['as cast'].find(({ name }) => name === 'Volume')?.value).toBe('48 cm³');
    const picture = await at.ask<Picture>('picture', { part, state: 'finished' });
    expect(picture.triangles.length).toBeGreaterThan(36);
    expect(at.transfers.at(-1)).toContain(picture.positions.buffer);
    expect(at.transfers.at(-1)).toHaveLength(5);
  });

  test('an edit is answered before its solid is worked out; live figures come first, then what is measured, then the sheet', async () => {
    const { records, part, height } = plate();
    const at = start(records, async () => kernel);
    const solid = at.watch('solid', { part });
    const sheet = at.watch('sheet', { part, state: 'finished', projection: 'first' });
    await at.rest();
    const before = sheet<SheetModel>();
    expect(before).toMatchObject({ isFresh: true });
    expect(before.sheet!.views).toHaveLength(3);
    const answer = at.run('dimension-set', { changes: [{ dimension: height.id, set: { value: '25' } }] });
    expect(answer).toMatchObject({ ok: true });
    expect(solid<SolidModel>()).toMatchObject({ is: 'working', picture: 2, fresh: false });
    expect(figure(solid<SolidModel>(), 'Box')).toBe('60 × 40 × 20 mm');
    at.once();
    expect(solid<SolidModel>()).toMatchObject({ is: 'made', picture: 3, fresh: true });
    expect(figure(solid<SolidModel>(), 'Box')).toBe('60 × 40 × 25 mm');
    const coarse = await at.ask<Picture>('picture', { part, state: 'finished' });
    at.once();
    // The last one stays, and is told to be old.
    expect(sheet<SheetModel>().sheet).toBe(before.sheet);
    expect(sheet<SheetModel>().isFresh).toBe(false);
    await at.rest();
    expect(solid<SolidModel>()).toMatchObject({ is: 'made', picture: 4, fresh: true });
    expect(figure(solid<SolidModel>(), 'Box')).toBe('60 × 40 × 25 mm');
    const fine = await at.ask<Picture>('picture', { part, state: 'finished' });
    expect(fine.triangles.length).toBeGreaterThan(2 * coarse.triangles.length);
    expect(sheet<SheetModel>().isFresh).toBe(true);
    expect(sheet<SheetModel>().sheet).not.toEqual(before.sheet);
  });

  test('several edits in a row make one solid and one sheet', async () => {
    const { records, part, height } = plate();
    const at = start(records, async () => kernel);
    const solid = at.watch('solid', { part });
    at.watch('sheet', { part, state: 'finished', projection: 'first' });
    await at.rest();
    at.posted.length = 0;
    for (const value of ['21', '22', '23'])
      at.run('dimension-set', { changes: [{ dimension: height.id, set: { value } }] });
    await at.rest();
    const sheets = at.posted.filter(
      (message) =>
        message.type === 'views' &&
        message.changes.some(({ key, patch }) => key.startsWith('sheet') && JSON.stringify(patch).includes('"marks"')),
    );
    expect(sheets).toHaveLength(1);
    // Coarse and fine.
    expect(solid<SolidModel>().picture).toBe(4);
  });

  test('without a kernel there is no solid, and the sheet is drawn all the same', async () => {
    vi.spyOn(console, 'error').mockImplementationOnce(() => {});
    const { records, part } = plate();
    const at = start(records, () => Promise.reject(new Error('not to be had (as the test wants it)')));
    const solid = at.watch('solid', { part });
    const sheet = at.watch('sheet', { part, state: 'finished', projection: 'third' });
    await at.rest();
    expect(solid<SolidModel>()).toMatchObject({ is: 'no kernel', picture: 0 });
    expect(sheet<SheetModel>().sheet).toMatchObject({ projection: 'third' });
    expect(await at.ask('picture', { part, state: 'finished' })).toBeUndefined();
  });

  test('what was said of the surfaces stays after an edit, and is told to be measured anew', async () => {
    const s = sketchBodies('p');
    const { at: place, size } = s;
    const [x, y, z] = [place('X', 60), place('Y', 40), place('Z', 20)] as const;
    s.body({ type: 'block', x: [place('X', 0), x], y: [place('Y', 0), y], z: [place('Z', 0), z] });
    const centre: [StationId, StationId] = [place('X', 8), place('Y', 20)];
    const diameter = size('diameter', 12);
    s.body({ type: 'hole', axis: 'Z', from: z, to: place('Z', 0), centre, diameter }, { finish: 'machined' });
    const part = s.part.id as string;
    const at = start(s.records(), async () => kernel);
    at.watch('solid', { part });
    const findings = at.watch('findings', { part });
    const measuring = () =>
      findings<FindingLine[]>().flatMap(({ rule, isBeingMeasured }) =>
        rule === 'hole-edge-distance' ? [isBeingMeasured] : [],
      );
    await at.rest();
    expect(measuring()).toEqual([false]);
    at.run('dimension-set', { changes: [{ dimension: 'dimension:p-Z20', set: { value: '25' } }] });
    expect(measuring()).toEqual([true]);
    at.once();
    expect(measuring()).toEqual([true]);
    await at.rest();
    expect(measuring()).toEqual([false]);
  });

  test('a build without bodies never asks for the kernel', async () => {
    let asked = 0;
    const { records, part } = plate();
    const at = start(
      records.filter(({ kind }) => kind !== 'body'),
      async () => {
        asked++;
        return kernel;
      },
    );
    const solid = at.watch('solid', { part });
    await at.rest();
    expect(asked).toBe(0);
    expect(solid<SolidModel>()).toMatchObject({ is: 'no bodies' });
  });

  test('a body that lacks something is named with what it lacks', async () => {
    const { records, part, height } = plate();
    const at = start(records, async () => kernel);
    const rows = at.watch('bodies', { part });
    await at.rest();
    expect(rows<BodyRow[]>().map(({ problem, extent }) => [problem, extent])).toEqual([
      [undefined, '60 × 40 × 20 mm'],
      [undefined, '12 × 12 × 20 mm'],
    ]);
    at.run('dimension-set', { changes: [{ dimension: height.id, set: { value: '' } }] });
    await at.rest();
    expect(rows<BodyRow[]>()[0]!.problem).toBe('No dimension places "Z20".');
  });
});

describe('what a form would make', () => {
  test('is told before it is made, and nothing stays of it', async () => {
    const { records, part } = plate();
    const at = start(records, async () => kernel);
    const rows = at.watch('bodies', { part });
    const sheet = at.watch('part', { part });
    await at.rest();
    const before = [rows(), sheet()];
    const params = {
      part,
      shape: {
        type: 'cylinder',
        axis: 'Z',
        ends: { length: '15', from: 'station:p-Z20' },
        centre: [{ value: '30' }, { value: '20' }],
        diameter: { value: '24' },
      },
    };
    const preview = await at.ask<BodyPreview>('body-preview', { command: 'body-sketch', params });
    expect(preview).toMatchObject({ refusal: undefined, problem: undefined, extent: '24 × 24 × 15 mm' });
    expect(preview.made.map(({ kind, name, words }) => `${kind} ${name}: ${words}`)).toEqual(
      expect.arrayContaining(['station cylinder top: along Z, at 35 mm', 'dimension cylinder diameter: 24 mm']),
    );
    expect(preview.ghost?.positions.length).toBeGreaterThan(0);
    await at.rest();
    expect([rows(), sheet()]).toEqual(before);
    expect(at.run('body-sketch', params)).toMatchObject({ ok: true });
    expect(rows<BodyRow[]>()).toHaveLength(3);
  });

  test('a value that cannot be read is told as such; a name of no station too', async () => {
    const { records, part } = plate();
    const at = start(records, undefined);
    const shape = { type: 'block', x: { length: '60 furlongs' }, y: { length: '1' }, z: { length: 'heigth + 1' } };
    const { made } = await at.ask<BodyPreview>('body-preview', { command: 'body-sketch', params: { part, shape } });
    const unreadable = made.filter((line) => line.unreadable).map(({ name }) => name);
    expect(unreadable).toEqual(['block length', 'block height']);
  });

  test('a refusal comes in words, with a remedy', async () => {
    const { records, part } = plate();
    const at = start(records, undefined);
    const diameter = 'dimension:p-Z20' as DimensionId;
    const shape = {
      type: 'cylinder',
      axis: 'Z',
      ends: { length: '5' },
      centre: [{ value: '0' }, { value: '0' }],
      diameter,
    };
    const { refusal, made } = await at.ask<BodyPreview>('body-preview', {
      command: 'body-sketch',
      params: { part, shape },
    });
    expect(refusal).toMatch(/Z20/);
    expect(made).toEqual([]);
  });
});
