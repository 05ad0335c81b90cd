import { bodyId, notPlaced, placedBody } from '../../../../../tests/support/body-facts.ts';
import { dimensionId, fact, part, station, stationId } from '../../../../../tests/support/facts.ts';
import { testRule } from '../../../../../tests/support/rule-tester.ts';
import rule from './body-without-size.ts';

const facts = {
  part: part('column'),
  stations: [station('left'), station('right')],
  dimensions: [fact('bore', 0)],
};

testRule(rule, {
  passes: [
    { name: 'a body with a size', facts: { ...facts, bodies: [placedBody('boss')] } },
    {
      name: 'one that is not placed',
      facts: { ...facts, bodies: [placedBody('boss', { problem: notPlaced(['left']) })] },
    },
  ],
  finds: [
    {
      name: 'places that coincide, a size of zero, an outline that encloses nothing',
      facts: {
        ...facts,
        bodies: [
          placedBody('boss', { problem: { why: 'no-size', at: [stationId('left'), stationId('right')] } }),
          placedBody('hole', { problem: { why: 'no-size', at: [dimensionId('bore')] } }),
          placedBody('hub', {
            problem: { why: 'no-size', at: [stationId('left'), dimensionId('bore'), stationId('left')] },
          }),
        ],
      },
      findings: [
        {
          message: 'places',
          at: [bodyId('boss'), stationId('left'), stationId('right')],
          data: { body: 'boss', part: 'column', names: 'left and right' },
        },
        {
          message: 'size',
          at: [bodyId('hole'), dimensionId('bore')],
          data: { body: 'hole', part: 'column', names: 'bore' },
        },
        {
          message: 'outline',
          at: [bodyId('hub'), stationId('left'), dimensionId('bore')],
          data: { body: 'hub', part: 'column', names: 'left and bore' },
        },
      ],
    },
  ],
});
