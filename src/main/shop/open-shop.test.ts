import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { MachineId } from '../../shared/base/ids.ts';
import type { Result } from '../../shared/base/result.ts';
import { defaultMachine, type Machine } from '../../shared/build/machine.ts';
import type { ShopContent, ShopError } from '../../shared/ipc/shop-contract.ts';
import { shopLossWords, shopWords } from '../../shared/ipc/shop-words.ts';
import { writeAtomically } from '../files/write-atomically.ts';
import { openShop } from './open-shop.ts';
import { writeShopText } from './shop-file.ts';

let folder = '';
beforeEach(() => {
  folder = path.join(mkdtempSync(path.join(tmpdir(), 'waywright-shop-')), 'data');
});
afterEach(() => rmSync(path.dirname(folder), { recursive: true, force: true }));
const inFolder = (name: string) => path.join(folder, name);
const textOf = (name: string) => readFileSync(inFolder(name), 'utf8');

const machine = (n: number, figures: Machine['figures'] = {}): Machine => ({
  ...defaultMachine(`machine:m${n}` as MachineId, `lathe ${n}`, 'lathe', n),
  figures,
});

function contentOf(answer: Result<ShopContent, ShopError>): ShopContent {
  if (!answer.ok) throw new Error(JSON.stringify(answer.error));
  return answer.value;
}
const namesIn = async (shop = openShop(folder)) => contentOf(await shop.load()).machines.map(({ name }) => name);

/** A folder with a shop file of this text. */
function given(text: string, name = 'shop.json'): void {
  mkdirSync(folder, { recursive: true });
  writeFileSync(inFolder(name), text);
}

describe('the shop', () => {
  test('is empty at first, and leaves nothing on disk for being looked at', async () => {
    expect(contentOf(await openShop(folder).load())).toEqual({ machines: [], lost: [] });
    expect(existsSync(folder)).toBe(false);
  });

  test('keeps what was put in, in order, after a restart too', async () => {
    const shop = openShop(folder);
    await shop.put(machine(1, { swingOverBed: '250' }), 'mm');
    await shop.put({ ...machine(2, { swingOverBed: '9' }), order: -7 }, 'in');
    const first = contentOf(
      await shop.put({ ...machine(1, { swingOverBed: '260 mm' }), order: 99, name: 'mine' }, 'mm'),
    );
    expect(first.machines.map(({ name, order, figures }) => [name, order, figures.swingOverBed])).toEqual([
      ['mine', 1, '260 mm'],
      ['lathe 2', 2, '9 in'],
    ]);
    expect(contentOf(await openShop(folder).load())).toEqual(first);
    expect(await namesIn(shop)).toEqual(['mine', 'lathe 2']);
    const left = contentOf(await shop.remove('machine:m1' as MachineId));
    expect(left.machines.map(({ name }) => name)).toEqual(['lathe 2']);
    expect(await namesIn()).toEqual(['lathe 2']);
    expect(readdirSync(folder).sort()).toEqual(['shop.json', 'shop.json.bak']);
  });

  test('tells of each change once, and not of what changes nothing', async () => {
    const told: number[] = [];
    const shop = openShop(folder, { onChange: ({ machines }) => told.push(machines.length) });
    await shop.put(machine(1), 'mm');
    await shop.put(machine(1), 'mm');
    await shop.remove('machine:none' as MachineId);
    await shop.put(machine(2), 'mm');
    expect(told).toEqual([1, 2]);
  });

  test('many changes at once all count', async () => {
    const shop = openShop(folder);
    await Promise.all(Array.from({ length: 12 }, (_, n) => shop.put(machine(n), 'mm')));
    expect(await namesIn()).toHaveLength(12);
  });

  test('refuses in words a machine that cannot be kept', async () => {
    const answer = await openShop(folder).put({ ...machine(1), name: '' }, 'mm');
    expect(answer).toMatchObject({ ok: false, error: { code: 'refused', refusal: { code: 'field-refused' } } });
    expect(answer.ok ? '' : shopWords(answer.error).sentence).toMatch(/name/);
  });

  test('sees what another program wrote meanwhile, and builds upon that', async () => {
    const told: ShopContent[] = [];
    const shop = openShop(folder, { onChange: (content) => told.push(content) });
    await shop.put(machine(1), 'mm');
    writeFileSync(inFolder('shop.json'), writeShopText([machine(1), machine(5)]));
    const after = contentOf(await shop.put(machine(2), 'mm'));
    expect(after.machines.map(({ id }) => id)).toEqual(['machine:m1', 'machine:m5', 'machine:m2']);
    expect(told.map(({ machines }) => machines.length)).toEqual([1, 2, 3]);
  });

  test('reads a length that a hand left bare as mm, and the byte order mark of an editor', async () => {
    given(`\uFEFF${writeShopText([machine(1, { swingOverBed: '250', power: '1' })])}`);
    expect(contentOf(await openShop(folder).load()).machines[0]?.figures).toEqual({
      swingOverBed: '250 mm',
      power: '1',
    });
  });
});

describe('a damaged file', () => {
  const sound = writeShopText([machine(1), machine(2)]);

  test.each([
    ['empty', ''],
    ['cut short', sound.slice(0, sound.length / 2)],
    ['of something else', '{"format": "waywright-build", "version": 1, "records": []}'],
    ['a list', '[]'],
  ])('that is %s is set aside whole, and the last good copy holds', async (_, text) => {
    given(text);
    given(sound, 'shop.json.bak');
    const shop = openShop(folder);
    const { machines, lost } = contentOf(await shop.load());
    expect(machines.map(({ name }) => name)).toEqual(['lathe 1', 'lathe 2']);
    expect(lost).toEqual([
      { is: 'file', path: inFolder('shop damaged.json'), detail: expect.any(String), hadCopy: true },
    ]);
    expect(textOf('shop damaged.json')).toBe(text);
    const { sentence, remedy } = shopLossWords(lost[0]!);
    expect(`${sentence} ${remedy}`).toMatch(/last good copy.*shop damaged\.json\.$/);
    // It stands again: the next start has nothing to tell.
    expect(contentOf(await openShop(folder).load())).toEqual({ machines, lost: [] });
    await shop.put(machine(3), 'mm');
    expect(await namesIn()).toEqual(['lathe 1', 'lathe 2', 'lathe 3']);
  });

  test('without a copy begins anew, and a second one does not replace the first', async () => {
    given('{');
    expect(contentOf(await openShop(folder).load())).toMatchObject({ machines: [], lost: [{ hadCopy: false }] });
    given('{{');
    await openShop(folder).load();
    expect([textOf('shop damaged.json'), textOf('shop damaged 2.json')]).toEqual(['{', '{{']);
  });

  test('of which one machine is none keeps the others, and a whole copy of itself', async () => {
    const text = sound.replace('"lathe 1","type":"lathe"', '"lathe 1","type":"anvil"');
    expect(text).not.toBe(sound);
    given(text);
    const { machines, lost } = contentOf(await openShop(folder).load());
    expect(machines.map(({ name }) => name)).toEqual(['lathe 2']);
    expect(lost).toEqual([
      { is: 'machine', name: 'lathe 1', path: inFolder('shop damaged.json'), detail: expect.stringContaining('type') },
    ]);
    expect(shopLossWords(lost[0]!).sentence).toMatch(/“lathe 1”/);
    expect(textOf('shop damaged.json')).toBe(text);
    expect(contentOf(await openShop(folder).load()).lost).toEqual([]);
  });

  test('one id twice: the first holds', async () => {
    given(writeShopText([machine(1), { ...machine(1), name: 'second' }]));
    expect(contentOf(await openShop(folder).load())).toMatchObject({
      machines: [{ name: 'lathe 1' }],
      lost: [{ name: 'second', detail: expect.stringContaining('twice') }],
    });
  });

  test('that is gone is made again from its last good copy', async () => {
    given(sound, 'shop.json.bak');
    const { machines, lost } = contentOf(await openShop(folder).load());
    expect(machines).toHaveLength(2);
    expect(lost).toEqual([{ is: 'gone', path: inFolder('shop.json.bak') }]);
    expect(shopLossWords(lost[0]!).sentence).toMatch(/last good copy/);
    expect(textOf('shop.json')).toBe(sound);
  });

  test('of a newer program is refused and not touched', async () => {
    const text = sound.replace('"version": 1', '"version": 7');
    given(text);
    const shop = openShop(folder);
    const refused = { ok: false, error: { code: 'newer-version', version: 7, newest: 1 } };
    expect(await shop.load()).toMatchObject(refused);
    expect(await shop.put(machine(1), 'mm')).toMatchObject(refused);
    expect(await shop.remove('machine:m1' as MachineId)).toMatchObject(refused);
    expect(readdirSync(folder)).toEqual(['shop.json']);
    expect(textOf('shop.json')).toBe(text);
  });

  test('that cannot be read at all stops every change', async () => {
    mkdirSync(inFolder('shop.json'), { recursive: true });
    const shop = openShop(folder);
    const answer = await shop.put(machine(1), 'mm');
    expect(answer).toMatchObject({ ok: false, error: { code: 'unreadable', path: inFolder('shop.json') } });
    expect(answer.ok ? '' : shopWords(answer.error).sentence).toMatch(/a folder of that name/);
    expect(readdirSync(folder)).toEqual(['shop.json']);
  });
});

describe('writes that fail', () => {
  const full = Object.assign(new Error('no space left on device'), { code: 'ENOSPC' });

  /** Writes as the program does, but for the n-th write, which fails before or after it reached the disk. */
  function failingAt(n: number, when: 'before' | 'after'): typeof writeAtomically {
    let count = 0;
    return async (file, content) => {
      const fails = count++ === n;
      if (fails && when === 'before') throw full;
      await writeAtomically(file, content);
      if (fails) throw full;
    };
  }

  test.each([0, 1, 2, 3, 4].flatMap((n) => [[n, 'before'] as const, [n, 'after'] as const]))(
    'the write number %i, failing %s it was done: the shop is as before or as after, and goes on',
    async (n, when) => {
      const shop = openShop(folder, { write: failingAt(n, when) });
      let sure: string[] = [];
      for (let i = 1; i <= 4; i++) {
        const answer = await shop.put(machine(i), 'mm');
        const onDisk = await namesIn();
        const hoped = [...sure, `lathe ${i}`];
        if (answer.ok) expect(onDisk).toEqual(hoped);
        else {
          expect(answer.error).toEqual({ code: 'disk-full', path: inFolder('shop.json') });
          expect(shopWords(answer.error).remedy).toMatch(/Make room/);
          expect([sure, hoped]).toContainEqual(onDisk);
        }
        expect(contentOf(await shop.load()).machines.map(({ name }) => name)).toEqual(onDisk);
        expect(contentOf(await shop.load()).lost).toEqual([]);
        sure = onDisk;
      }
      expect(sure.length).toBeGreaterThanOrEqual(3);
    },
  );

  test('a damaged file that cannot be mended yet is set aside all the same, and mended with the next change', async () => {
    given('{');
    given(writeShopText([machine(1)]), 'shop.json.bak');
    const shop = openShop(folder, { write: failingAt(0, 'before') });
    expect(contentOf(await shop.load()).machines).toHaveLength(1);
    expect(textOf('shop damaged.json')).toBe('{');
    expect(contentOf(await shop.put(machine(2), 'mm')).machines).toHaveLength(2);
    expect(await namesIn()).toEqual(['lathe 1', 'lathe 2']);
  });

  test('a folder in which nothing can be written is named', async () => {
    mkdirSync(path.dirname(folder), { recursive: true });
    writeFileSync(folder, 'a file in its place');
    const answer = await openShop(folder).put(machine(1), 'mm');
    expect(answer.ok).toBe(false);
    expect(answer.ok ? '' : shopWords(answer.error).sentence).toMatch(/not a folder/);
  });
});
