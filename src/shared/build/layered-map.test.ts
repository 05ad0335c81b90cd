import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { changesOver } from './layered-map.ts';

/** All that can be read of a map, in order. */
function readings(map: ReadonlyMap<number, string>) {
  const each: [number, string][] = [];
  map.forEach((value, key, whole) => {
    expect(whole).toBe(map);
    each.push([key, value]);
  });
  expect([...map]).toEqual(each);
  expect([...map.entries()]).toEqual(each);
  expect([...map.keys()]).toEqual(each.map(([key]) => key));
  expect([...map.values()]).toEqual(each.map(([, value]) => value));
  expect(map.size).toBe(each.length);
  for (let key = 0; key < 40; key++) expect(map.has(key)).toBe(map.get(key) !== undefined);
  return each;
}

describe('changes over a map', () => {
  const step = fc.record({
    key: fc.nat(39),
    is: fc.constantFrom('put' as const, 'put' as const, 'delete' as const),
    closes: fc.boolean(),
  });

  test('a layered map reads like a plain one to which the same was done, and maps made before stay as they are', () => {
    fc.assert(
      fc.property(fc.nat(30), fc.array(step, { maxLength: 60 }), (count, steps) => {
        const plain = new Map(Array.from({ length: count }, (_, i) => [i, `old ${i}`]));
        const made: { map: ReadonlyMap<number, string>; reads: [number, string][] }[] = [];
        let map: ReadonlyMap<number, string> = new Map(plain);
        let changes = changesOver(map, 0);
        for (const [i, { key, is, closes }] of steps.entries()) {
          expect(changes.has(key)).toBe(plain.has(key));
          if (is === 'put') {
            plain.set(key, `new ${i}`);
            changes.put(key, `new ${i}`);
          } else if (plain.delete(key)) changes.delete(key);
          if (!closes) continue;
          map = changes.done();
          expect(readings(map)).toEqual([...plain]);
          made.push({ map, reads: [...plain] });
          changes = changesOver(map, 0);
        }
        for (const { map: earlier, reads } of made) expect(readings(earlier)).toEqual(reads);
      }),
      { numRuns: 100 },
    );
  });

  test('few changes share the large map; many are melted into a new plain one', () => {
    const large = new Map(Array.from({ length: 1000 }, (_, i) => [i, i]));
    const one = changesOver(large, 500);
    one.put(3, -3);
    const layered = one.done();
    expect(layered).not.toBeInstanceOf(Map);
    expect(layered.get(3)).toBe(-3);
    expect(large.get(3)).toBe(3);
    const many = changesOver(layered, 500);
    for (let i = 0; i < 100; i++) many.put(i, -i);
    expect(many.done()).toBeInstanceOf(Map);
  });

  test('a small map is copied outright', () => {
    const changes = changesOver(new Map([[1, 'a']]), 2);
    changes.put(2, 'b');
    expect(changes.done()).toEqual(
      new Map([
        [1, 'a'],
        [2, 'b'],
      ]),
    );
  });
});
