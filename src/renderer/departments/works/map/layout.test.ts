import { describe, expect, test } from 'vitest';
import { layoutMap } from './layout.ts';
import type { Box, LayoutRequest } from './places.ts';

const node = (id: string, width = 200, height = 80) => ({ id, width, height });
const line = (from: string, to: string, labelWidth = 60) => ({ id: `${from}>${to}`, from, to, labelWidth });
const overlap = (a: Box, b: Box): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;

/** Boxes never overlap, nor leave the sheet. */
function expectApart({ boxes, width, height }: ReturnType<typeof layoutMap>): void {
  const all = Object.values(boxes);
  for (const [i, a] of all.entries()) {
    expect(a.x >= -0.01 && a.y >= -0.01 && a.x + a.width <= width + 0.01 && a.y + a.height <= height + 0.01).toBe(true);
    for (const b of all.slice(i + 1)) expect(overlap(a, b)).toBe(false);
  }
}

// A plain counter instead of chance: the same build every time.
function bigBuild(parts: number): LayoutRequest {
  let seed = 7;
  const next = (below: number): number => {
    seed = (seed * 1103515245 + 12345) % 2147483648;
    return seed % below;
  };
  const nodes = Array.from({ length: parts }, (_, i) => node(`p${i}`));
  const seen = new Set<string>();
  const lines: LayoutRequest['lines'][number][] = [];
  for (let i = 1; i < parts; i++) {
    for (let k = 0; k < 2; k++) {
      const one = line(`p${Math.max(0, i - 1 - next(30))}`, `p${i}`);
      if (i % 12 === 0 || one.from === one.to || seen.has(one.id)) continue;
      seen.add(one.id);
      lines.push(one);
    }
  }
  return { nodes, lines };
}

describe('the layout of the map', () => {
  test('an empty build is an empty sheet', () => {
    expect(layoutMap({ nodes: [], lines: [] })).toEqual({ boxes: {}, lines: {}, width: 0, height: 0 });
  });

  test('what is named stands above what names it, and the line runs between them', () => {
    const laid = layoutMap({ nodes: [node('a'), node('b'), node('c')], lines: [line('a', 'b'), line('b', 'c')] });
    const { a, b, c } = laid.boxes as Record<'a' | 'b' | 'c', Box>;
    expect(a.y + a.height).toBeLessThan(b.y);
    expect(b.y + b.height).toBeLessThan(c.y);
    const { points, label } = laid.lines['a>b']!;
    expect(points[0]?.y).toBeCloseTo(a.y + a.height, 6);
    expect(points.at(-1)?.y).toBeCloseTo(b.y, 6);
    expect(label?.y).toBeGreaterThan(a.y + a.height);
    expectApart(laid);
  });

  test('parts that feed one another in a ring are laid out all the same', () => {
    const laid = layoutMap({
      nodes: [node('a'), node('b'), node('c')],
      lines: [line('a', 'b'), line('b', 'a'), line('b', 'c'), line('c', 'a')],
    });
    expect(Object.keys(laid.lines)).toHaveLength(4);
    for (const { points } of Object.values(laid.lines)) expect(points.length).toBeGreaterThan(1);
    expectApart(laid);
  });

  test('blocks and lone parts stand apart; a line to a part that is gone is left out', () => {
    const nodes = ['a', 'b', 'c', 'd', 'e', 'f', 'g'].map((id) => node(id));
    const laid = layoutMap({ nodes, lines: [line('a', 'b'), line('c', 'd'), line('d', 'gone')] });
    expect(Object.keys(laid.boxes)).toHaveLength(7);
    expect(Object.keys(laid.lines)).toEqual(['a>b', 'c>d']);
    expectApart(laid);
  });

  test('opening a part moves others aside and keeps their order', () => {
    const request = bigBuild(40);
    const before = layoutMap(request);
    const after = layoutMap({
      ...request,
      nodes: request.nodes.map((each) => (each.id === 'p7' ? node('p7', 540, 400) : each)),
    });
    expectApart(after);
    const ids = Object.keys(before.boxes);
    const ranks = new Map<number, string[]>();
    for (const id of ids) {
      const middle = Math.round(before.boxes[id]!.y + before.boxes[id]!.height / 2);
      ranks.set(middle, [...(ranks.get(middle) ?? []), id]);
    }
    for (const rank of ranks.values()) {
      const order = (boxes: typeof before.boxes) => [...rank].sort((a, b) => boxes[a]!.x - boxes[b]!.x);
      expect(order(after.boxes)).toEqual(order(before.boxes));
    }
  });

  test('is the same each time', () => expect(layoutMap(bigBuild(60))).toEqual(layoutMap(bigBuild(60))));

  test('five hundred parts stand apart, in a shape that fits a window', () => {
    const laid = layoutMap(bigBuild(500));
    expectApart(laid);
    expect(laid.width / laid.height).toBeGreaterThan(0.7);
    expect(laid.width / laid.height).toBeLessThan(2.8);
  });

  test('a chain of four hundred parts is folded, each part after the one that it hangs on', () => {
    const nodes = Array.from({ length: 400 }, (_, i) => node(`p${i}`));
    const lines = nodes.slice(1).map(({ id }, i) => line(`p${i}`, id));
    const laid = layoutMap({ nodes, lines: [...lines, line('p399', 'p0')] });
    expectApart(laid);
    expect(laid.width / laid.height).toBeGreaterThan(0.7);
    expect(laid.width / laid.height).toBeLessThan(2.8);
    for (let i = 1; i < 400; i++) {
      const [before, after] = [laid.boxes[`p${i - 1}`]!, laid.boxes[`p${i}`]!];
      expect(after.y > before.y || after.x > before.x).toBe(true);
    }
  });
});
