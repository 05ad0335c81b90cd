import { expect, test } from 'vitest';
import { addTo, clearRow, createRows, holds, rowOf, sortRow, takeFrom, widenRows } from './rows.ts';

test('keeps the members of every list apart, as plain lists do', () => {
  const rows = createRows(4, 0);
  let slots = 4;
  const plain: number[][] = [[], [], [], []];
  // A linear congruential generator (Numerical Recipes): the same trial every time.
  let state = 3;
  const next = (below: number): number => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return (state >>> 8) % below;
  };
  for (let step = 0; step < 20_000; step++) {
    const slot = next(slots);
    const list = plain[slot]!;
    const member = next(50);
    switch (next(step % 7 === 0 ? 12 : 9)) {
      case 0:
      case 1:
      case 2: {
        takeFrom(rows, slot, member);
        const at = list.lastIndexOf(member);
        if (at >= 0) list.splice(at, 1);
        break;
      }
      case 9:
        sortRow(rows, slot, (a, b) => a - b);
        list.sort((a, b) => a - b);
        break;
      case 10:
        if (next(20) === 0) {
          clearRow(rows, slot);
          list.length = 0;
        }
        break;
      case 11:
        if (slots >= 200) break;
        widenRows(rows, slots + 3);
        plain.push([], [], []);
        slots += 3;
        break;
      default:
        addTo(rows, slot, member);
        list.push(member);
    }
    expect(holds(rows, slot, member)).toBe(list.includes(member));
    if (step % 500 === 0) expect(plain.map((_, i) => [...rowOf(rows, i)])).toEqual(plain);
  }
  expect(plain.map((_, i) => [...rowOf(rows, i)])).toEqual(plain);
});

test('uses again what a list has outgrown', () => {
  const rows = createRows(100, 0);
  for (let slot = 0; slot < 100; slot++) for (let i = 0; i < 3; i++) addTo(rows, slot, i);
  // Rooms of four, and every room of two left behind taken by the next but one list.
  expect(rows.used).toBeLessThan(100 * 4 + 8);
});
