import { expect, test } from 'vitest';
import { createSlotTable } from './slot-table.ts';

/** A linear congruential generator (Numerical Recipes): the same ids every time. */
function idsOf(count: number): string[] {
  let state = 7;
  const next = () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return (state >>> 8).toString(32).padStart(5, '0');
  };
  return [...new Set(Array.from({ length: count }, () => `dimension:${next()}${next()}`))];
}

test('finds every id that was added, and no other, however many there are', () => {
  const all = idsOf(20_000);
  const ids: string[] = [];
  const table = createSlotTable(ids, 0);
  all.forEach((id, slot) => {
    expect(table.get(id)).toBeUndefined();
    ids.push(id);
    table.add(id, slot);
  });
  all.forEach((id, slot) => {
    // A copy: ids are told by what they say.
    expect(table.get(`${id.slice(0, 3)}${id.slice(3)}`)).toBe(slot);
  });
  expect(table.get('dimension:none')).toBeUndefined();
});

test('ids of one ending are kept apart', () => {
  const ids = ['station:0123456789', 'dimension:0123456789', 'x0123456789', '0123456789', ''];
  const table = createSlotTable(ids, 4);
  ids.forEach((id, slot) => {
    table.add(id, slot);
  });
  ids.forEach((id, slot) => {
    expect(table.get(id)).toBe(slot);
  });
});
