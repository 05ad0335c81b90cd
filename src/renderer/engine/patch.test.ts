import fc from 'fast-check';
import { expect, test } from 'vitest';
import { applyPatch, makePatch } from './patch.ts';

const model = fc.letrec((tie) => ({
  node: fc.oneof(
    { depthSize: 'small' },
    fc.integer({ min: 0, max: 3 }),
    fc.constantFrom('a', 'b', undefined),
    fc.array(tie('node'), { maxLength: 5 }),
    fc.dictionary(fc.constantFrom('id', 'name', 'rows', 'at'), tie('node'), { noNullPrototype: true }),
  ),
})).node;

test('a patch turns the old model into the new one, through a structured clone', () => {
  fc.assert(
    fc.property(model, model, (before, after) => {
      const patch = makePatch(before, after);
      const got = patch === undefined ? before : applyPatch(before, structuredClone(patch));
      expect(got).toEqual(after);
    }),
    { numRuns: 2_000 },
  );
});

test('equal models need no patch', () => {
  fc.assert(
    fc.property(model, (value) => {
      expect(makePatch(value, structuredClone(value))).toBeUndefined();
    }),
  );
});

test('rows that did not change keep their identity', () => {
  const before = { rows: [{ id: 1 }, { id: 2 }, { id: 3 }], name: 'column' };
  const after = { rows: [before.rows[0], { id: 9 }, before.rows[1], before.rows[2]], name: 'column' };
  const patch = makePatch(before, after);
  expect(patch).toEqual({
    op: 'keys',
    gone: [],
    change: [['rows', { op: 'splice', start: 1, remove: 0, insert: [{ id: 9 }] }]],
  });
  const got = applyPatch(before, patch!) as typeof before;
  expect(got.rows[3]).toBe(before.rows[2]);
});

test('a list of which one went and another came is sent as what stays and what is new', () => {
  const lines = Array.from({ length: 1_500 }, (_, key) => ({ key }));
  const before = lines.toSpliced(900, 1);
  const after = lines.toSpliced(0, 1);
  expect(makePatch(before, after)).toEqual({
    op: 'weave',
    pieces: [[1, 899], { insert: [{ key: 900 }] }, [900, 599]],
  });
});

test('what stands where it stood among others that came and went is not sent anew', () => {
  const [a, b, c] = [{ key: 1 }, { key: 2 }, { key: 3 }];
  const before = [a, b, c];
  const got = applyPatch(before, structuredClone(makePatch(before, [a, { key: 8 }, c, { key: 9 }])!)) as typeof before;
  expect(got).toEqual([{ key: 1 }, { key: 8 }, { key: 3 }, { key: 9 }]);
  expect(got[2]).toBe(c);
});

test('whatever is taken from a list, put in and moved about, what stays keeps its identity', () => {
  const items = fc.uniqueArray(fc.integer({ min: 0, max: 40 })).map((keys) => keys.map((key) => ({ key })));
  const edits = fc.array(fc.tuple(fc.nat(50), fc.option(fc.nat(50))), { maxLength: 6 });
  fc.assert(
    fc.property(items, edits, (before, changes) => {
      let after = before;
      for (const [at, to] of changes) {
        if (to === null) after = after.toSpliced(at, 0, { key: 1_000 + at });
        else {
          const [taken] = after.slice(at, at + 1);
          after = after.toSpliced(at, 1);
          if (taken !== undefined && to % 2 === 0) after = after.toSpliced(to, 0, taken);
        }
      }
      const patch = makePatch(before, after);
      const got = (patch === undefined ? before : applyPatch(before, structuredClone(patch))) as typeof before;
      expect(got).toStrictEqual(after);
      const stays = new Set(before);
      for (const [i, item] of after.entries()) if (stays.has(item)) expect(got[i]).toBe(item);
    }),
  );
});
