import { expect, test } from 'vitest';
import { minimumWall } from './minimum-wall.ts';

// Lower ends of ranges for small sand castings: aluminium 3 to 8 mm in a gravity foundry's design guide; the others are
// common practice, no source (from memory): grey iron 3 to 6, bronze and brass 2.5 to 5, zinc alloys 2.5 to 3 mm.
test.each([
  ['aluminium', 3],
  ['Aluminium casting alloy', 3],
  ['EN AC-42100 AlSi7Mg0.3', 3],
  ['LM25', 3],
  ['A356', 3],
  ['319.0', 3],
  ['Grey cast iron', 3],
  ['EN-GJL-250', 3],
  ['GGG40', 3],
  ['aluminium bronze', 2.5],
  ['gunmetal', 2.5],
  ['C36000 brass', 2.5],
  ['CuSn12', 2.5],
  ['ZA-12', 2.5],
])('%s: %d mm', (name, least) => {
  expect(minimumWall(name)?.leastMm).toBe(least);
});

test.each(['', 'steel', 'Stainless steel', '304', 'oak'])('of %j nothing is known', (name) => {
  expect(minimumWall(name)).toBeUndefined();
});

test('each row says where it comes from', () => {
  for (const name of ['aluminium', 'iron', 'brass', 'zinc']) {
    const row = minimumWall(name)!;
    expect(row.source.length).toBeGreaterThan(10);
    expect(row.source.includes('from memory')).toBe(row.status === 'from memory');
  }
});
