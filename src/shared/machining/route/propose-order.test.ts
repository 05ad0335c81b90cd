import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { operationId, setupId } from '../../../../tests/support/route-part.ts';
import type { OrderConstraint } from './order-constraints.ts';
import { findRing, holdingsOf, type Ordered, proposeOrder } from './propose-order.ts';

const list = (text: string): readonly Ordered[] =>
  text.split(' ').map((word) => {
    const [name, setup] = word.split('@');
    return { id: operationId(name!), setup: setup ? setupId(setup) : undefined };
  });

const need = (text: string, soft = false): readonly OrderConstraint[] =>
  text === ''
    ? []
    : text.split(' ').map((pair) => {
        const [first, next] = pair.split('<').map((name) => operationId(name!));
        return { first: first!, next: next!, soft, why: { is: 'after' } };
      });

const proposed = (operations: string, ...constraints: readonly OrderConstraint[]) => {
  const proposal = proposeOrder(list(operations), constraints);
  if (proposal.is === 'ring') throw new Error('a ring');
  return {
    ...proposal,
    order: proposal.order.map((id) => id.replace('operation:', '')).join(' '),
  };
};

test('holdings are counted as often as the work goes into a machine', () => {
  expect(holdingsOf([])).toBe(0);
  expect(holdingsOf(list('a@u b@u c@v d@u'))).toBe(3);
  expect(holdingsOf(list('a b'))).toBe(0);
  expect(holdingsOf(list('a@u b c@u'))).toBe(2);
});

describe('an order', () => {
  test('a list that is right stays as it is', () => {
    expect(proposed('a@u b@u c@v', ...need('a<c'))).toMatchObject({ order: 'a b c', holdings: 2, fewest: true });
    expect(proposed('a b c').order).toBe('a b c');
  });

  test('what can be done in one holding is done in it', () => {
    expect(proposed('a@u b@v c@u d@v', ...need('a<d'))).toMatchObject({ order: 'a c b d', holdings: 2 });
  });

  test('what comes first in need comes first in time', () => {
    expect(proposed('a@u b@u', ...need('b<a')).order).toBe('b a');
    expect(proposed('a@u b@v c@w', ...need('c<b b<a'))).toMatchObject({ order: 'c b a', holdings: 3 });
  });

  test('bench work between two cuts of a holding makes it two', () => {
    expect(proposed('a@u b c@u', ...need('a<b b<c'))).toMatchObject({ order: 'a b c', holdings: 2 });
    expect(proposed('a@u b c@u', ...need('a<b'))).toMatchObject({ order: 'a c b', holdings: 1 });
  });

  test('greed does not pay: the first holding that offers itself is not always the best', () => {
    // By v first all of u can be done in one holding.
    expect(proposed('a@u b@v c@u', ...need('b<c'))).toMatchObject({ order: 'b a c', holdings: 2 });
  });

  test('a wish that goes with the rest is kept, one that does not is dropped by name', () => {
    expect(proposed('a@u b@v', ...need('b<a', true))).toMatchObject({ order: 'b a', dropped: [] });
    const wish = need('b<a', true);
    expect(proposed('a@u b@v', ...need('a<b'), ...wish)).toMatchObject({ order: 'a b', dropped: wish });
  });

  test('empty', () => {
    expect(proposeOrder([], [])).toEqual({ is: 'order', order: [], holdings: 0, fewest: true, dropped: [] });
  });
});

describe('a ring', () => {
  test('is named, the shortest, from the first of the list', () => {
    const constraints = need('a<b b<c c<d d<b c<a');
    const ring = proposeOrder(list('a b c d'), constraints);
    expect(ring).toEqual({ is: 'ring', ring: [constraints[0], constraints[1], constraints[4]] });
  });

  test('of wishes is none', () => {
    expect(proposeOrder(list('a b'), need('a<b b<a', true)).is).toBe('order');
  });

  test('a long one is found', () => {
    const names = Array.from({ length: 60 }, (_, i) => `o${i}`);
    const ring = names.map((name, i) => `${name}<${names[(i + 1) % 60]}`).join(' ');
    expect(findRing(names.map(operationId), need(ring))).toHaveLength(60);
    expect(findRing(names.map(operationId), need(ring).slice(1))).toBeUndefined();
  });
});

/** Operations in up to four holdings or at the bench, with needs that always go from left to right in a hidden order. */
const routes = fc
  .record({
    setups: fc.array(fc.constantFrom('', 'u', 'v', 'w', 'x'), { minLength: 1, maxLength: 7 }),
    pairs: fc.array(fc.tuple(fc.nat(6), fc.nat(6), fc.boolean()), { maxLength: 10 }),
    shuffle: fc.array(fc.nat(100), { minLength: 7, maxLength: 7 }),
  })
  .map(({ setups, pairs, shuffle }) => {
    const all = setups.map(
      (setup, i): Ordered => ({ id: operationId(`o${i}`), setup: setup ? setupId(setup) : undefined }),
    );
    const constraints = pairs.flatMap(([i, j, soft]): readonly OrderConstraint[] => {
      const [low, high] = [Math.min(i, j), Math.max(i, j)];
      if (low === high || high >= all.length) return [];
      // A wish may run against the hidden order, a need may not.
      const [first, next] = soft && i > j ? [high, low] : [low, high];
      return [{ first: all[first]!.id, next: all[next]!.id, soft, why: { is: 'after' } }];
    });
    const listed = all
      .map((one, i) => ({ one, key: shuffle[i]! }))
      .sort((a, b) => a.key - b.key)
      .map(({ one }) => one);
    return { listed, constraints };
  });

const keeps = (order: readonly Ordered[], constraints: readonly OrderConstraint[]): boolean => {
  const place = new Map(order.map(({ id }, i) => [id, i]));
  return constraints.every(({ first, next }) => place.get(first)! < place.get(next)!);
};

function* permutations<T>(items: readonly T[]): Generator<readonly T[]> {
  if (items.length === 0) yield [];
  for (let i = 0; i < items.length; i++) {
    for (const rest of permutations([...items.slice(0, i), ...items.slice(i + 1)])) yield [items[i]!, ...rest];
  }
}

test('every order that is proposed has all that is needed, and no order needs fewer holdings', () => {
  fc.assert(
    fc.property(routes, ({ listed, constraints }) => {
      const proposal = proposeOrder(listed, constraints);
      if (proposal.is === 'ring') throw new Error('there is an order');
      const byId = new Map(listed.map((one) => [one.id, one]));
      const order = proposal.order.map((id) => byId.get(id)!);
      expect(new Set(proposal.order).size).toBe(listed.length);
      const kept = constraints.filter((one) => !proposal.dropped.includes(one));
      expect(kept.filter(({ soft }) => !soft)).toEqual(constraints.filter(({ soft }) => !soft));
      expect(keeps(order, kept)).toBe(true);
      expect(holdingsOf(order)).toBe(proposal.holdings);
      if (keeps(listed, constraints)) expect(proposal.holdings).toBeLessThanOrEqual(holdingsOf(listed));
      let best = Infinity;
      for (const other of permutations(listed)) if (keeps(other, kept)) best = Math.min(best, holdingsOf(other));
      expect(proposal.holdings).toBe(best);
      expect(proposeOrder(listed, constraints)).toEqual(proposal);
    }),
    { numRuns: 150 },
  );
});

test('with very many operations the order is still right, and never worse than the list', () => {
  const numbers = fc.integer({ min: 1, max: 2 ** 31 });
  fc.assert(
    fc.property(numbers, (seed) => {
      let state = seed;
      const random = (below: number) => {
        state = (Math.imul(state, 1103515245) + 12345) & 0x7fffffff;
        return state % below;
      };
      const many = Array.from(
        { length: 90 },
        (_, i): Ordered => ({
          id: operationId(`o${i}`),
          setup: setupId(`s${random(14)}`),
        }),
      );
      const constraints = Array.from({ length: 160 }, (): OrderConstraint => {
        const [i, j] = [random(90), random(90)];
        return {
          first: many[Math.min(i, j)]!.id,
          next: many[Math.max(i, j === i ? (i + 1) % 90 : j)]!.id,
          soft: false,
          why: { is: 'after' },
        };
      }).filter(({ first, next }) => Number(first.slice(11)) < Number(next.slice(11)));
      const proposal = proposeOrder(many, constraints);
      if (proposal.is === 'ring') throw new Error('there is an order');
      const byId = new Map(many.map((one) => [one.id, one]));
      const order = proposal.order.map((id) => byId.get(id)!);
      expect(keeps(order, constraints)).toBe(true);
      expect(holdingsOf(order)).toBeLessThanOrEqual(holdingsOf(many));
    }),
    { numRuns: 4 },
  );
});
