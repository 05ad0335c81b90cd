import { bodyId, notPlaced, placedBody } from '../../../../../tests/support/body-facts.ts';
import { dimensionId, fact, part, station, stationId } from '../../../../../tests/support/facts.ts';
import { testRule } from '../../../../../tests/support/rule-tester.ts';
import rule from './body-not-placed.ts';

const facts = {
  part: part('column'),
  stations: [station('left'), station('top')],
  dimensions: [fact('bore', undefined)],
};

testRule(rule, {
  passes: [
    { name: 'no body', facts: { ...facts, bodies: [] } },
    { name: 'a body that is placed', facts: { ...facts, bodies: [placedBody('boss')] } },
    {
      name: 'a body with another problem',
      facts: { ...facts, bodies: [placedBody('boss', { problem: { why: 'no-size', at: [stationId('left')] } })] },
    },
  ],
  finds: [
    {
      name: 'stations, sizes, both, and a mesh that is gone',
      facts: {
        ...facts,
        bodies: [
          placedBody('boss', { problem: notPlaced(['left', 'top']) }),
          placedBody('hole', { problem: notPlaced([], ['bore']) }),
          placedBody('rib', { problem: notPlaced(['left'], ['bore']) }),
          placedBody('lug', { problem: notPlaced([]) }),
        ],
      },
      findings: [
        {
          message: 'stations',
          at: [bodyId('boss'), stationId('left'), stationId('top')],
          data: { body: 'boss', part: 'column', stations: 'left and top' },
        },
        {
          message: 'sizes',
          at: [bodyId('hole'), dimensionId('bore')],
          data: { body: 'hole', part: 'column', dimensions: 'bore' },
        },
        {
          message: 'both',
          at: [bodyId('rib'), stationId('left'), dimensionId('bore')],
          data: { body: 'rib', part: 'column', stations: 'left', dimensions: 'bore' },
        },
        { message: 'mesh', at: [bodyId('lug')], data: { body: 'lug', part: 'column' } },
      ],
    },
  ],
});
