import { expect, test } from 'vitest';
import { placeInList } from './place-in-list.ts';

const list = [
  { id: 'a', order: 1 },
  { id: 'b', order: 2 },
  { id: 'c', order: 5 },
];

test('at the end, whole numbers follow the last', () => {
  expect(placeInList(list, undefined, 2)).toEqual({ orders: [6, 7], moved: [] });
  expect(placeInList([], undefined)).toEqual({ orders: [1], moved: [] });
  expect(placeInList(list, 'gone')).toEqual({ orders: [6], moved: [] });
});

test('between two, at the front, and several at once, leaving the others as they are', () => {
  expect(placeInList(list, 'b')).toEqual({ orders: [1.5], moved: [] });
  expect(placeInList(list, 'a')).toEqual({ orders: [0], moved: [] });
  expect(placeInList(list, 'c', 2)).toEqual({ orders: [3, 4], moved: [] });
});

test('where no number is left between two, the list is numbered anew and keeps its order', () => {
  const tight = [
    { id: 'a', order: 1 },
    { id: 'b', order: 1 + Number.EPSILON },
    { id: 'c', order: 1 + Number.EPSILON },
  ];
  const { orders, moved } = placeInList(tight, 'b', 2);
  expect(orders).toEqual([2, 3]);
  expect(moved.map(([, to]) => to)).toEqual([
    { id: 'b', order: 4 },
    { id: 'c', order: 5 },
  ]);
});

test('a thousand places before the same record stay in order', () => {
  let records = [...list];
  for (let i = 0; i < 1000; i++) {
    const { orders, moved } = placeInList(records, 'c');
    const renumbered = new Map(moved.map(([from, to]) => [from.id, to]));
    records = [...records.map((record) => renumbered.get(record.id) ?? record), { id: `n${i}`, order: orders[0]! }];
  }
  const sorted = [...records].sort((a, b) => a.order - b.order).map(({ id }) => id);
  expect(sorted).toEqual(['a', 'b', ...Array.from({ length: 1000 }, (_, i) => `n${i}`), 'c']);
});
