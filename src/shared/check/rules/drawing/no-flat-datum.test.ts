import { notPlaced, placedBody, solidFact } from '../../../../../tests/support/body-facts.ts';
import { axis, part, partId, station, stationId } from '../../../../../tests/support/facts.ts';
import { testRule } from '../../../../../tests/support/rule-tester.ts';
import rule from './no-flat-datum.ts';

const facts = {
  part: part('column'),
  bodies: [placedBody('boss')],
  stations: [station('foot'), station('middle', { axis: 'X' })],
  axes: [axis({ axis: 'X', datum: stationId('middle') }), axis({ axis: 'Y' }), axis({ datum: stationId('foot') })],
};
const flat = (on: 'X' | 'Y' | 'Z', atMm: number, areaMm2 = 6000) =>
  solidFact({ faces: { flats: [{ axis: on, looks: 1, atMm, areaMm2 }] } });

testRule(rule, {
  passes: [
    { name: 'no solid yet', facts: { ...facts, solid: undefined } },
    { name: 'a face at a datum', facts: { ...facts, solid: flat('Z', 0) } },
    { name: 'no datum, which is another finding', facts: { ...facts, axes: [axis()], solid: solidFact() } },
    { name: 'a part from stock', facts: { ...facts, part: part('column', { make: 'stock' }), solid: solidFact() } },
    {
      name: 'a part that lacks a body',
      facts: { ...facts, bodies: [placedBody('lug', { problem: notPlaced(['left']) })], solid: solidFact() },
    },
  ],
  finds: [
    ...(
      [
        ['none at all', solidFact()],
        ['one elsewhere', flat('Z', 12)],
        ['one across an axis without a datum', flat('Y', 0)],
        ['one too small to stand on', flat('Z', 0, 100)],
      ] as const
    ).map(([name, solid]) => ({
      name,
      facts: { ...facts, solid },
      findings: [
        {
          message: 'none' as const,
          at: [partId('column'), stationId('middle'), stationId('foot')] as const,
          data: { part: 'column', stations: 'middle and foot' },
        },
      ],
    })),
  ],
});
