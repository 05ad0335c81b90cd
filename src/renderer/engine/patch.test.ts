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
      expect(got).toStrictEqual(after);
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
