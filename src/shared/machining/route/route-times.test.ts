import { expect, test } from 'vitest';
import { operation, routeCasting, routePart, setup, setupId } from '../../../../tests/support/route-part.ts';
import type { Operation } from '../../build/operation.ts';
import { operationFacts } from './operation-facts.ts';
import { routeTimes } from './route-times.ts';

const chosen = (minutes: string): Operation['chosen'] => ({ speed: '', rpm: '', feed: '', depth: '', minutes });

test('times of the route: one setting up for each holding, operations for each part', () => {
  const setups = [
    setup('u', { holding: { as: 'vise', depth: { written: '' } } }),
    setup('v', { minutes: '1 h', holding: { as: 'between centres' } }),
  ];
  const timed = (name: string, set: string | undefined, minutes: string) =>
    operation(name, 'file', { chosen: chosen(minutes), ...(set && { setup: setupId(set) }) });
  const facts = operationFacts(
    routePart({
      ...routeCasting,
      setups,
      operations: [
        timed('a', 'u', '10'),
        timed('b', 'u', '5'),
        timed('c', 'v', '20'),
        timed('d', undefined, ''),
        timed('e', 'u', '1'),
      ],
    }),
  );
  const times = routeTimes(facts, 3);
  expect(times).toMatchObject({ setupMinutes: 80, minutes: 36, perPart: 116, perLot: 188 });
  expect(times.without).toEqual([facts[3]!.record.id]);
  expect(
    times.holdings.map(({ setup: set, minutes, setupMinutes, usual }) => [
      set?.name,
      minutes,
      setupMinutes,
      usual?.status,
    ]),
  ).toEqual([
    ['u', 15, 10, 'common practice'],
    ['v', 20, 60, undefined],
    [undefined, undefined, 0, undefined],
    ['u', 1, 10, 'common practice'],
  ]);
});
