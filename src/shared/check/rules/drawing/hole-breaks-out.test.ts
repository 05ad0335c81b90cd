import { bodyId, notPlaced, placedBody, solidFact } from '../../../../../tests/support/body-facts.ts';
import { part } from '../../../../../tests/support/facts.ts';
import { testRule } from '../../../../../tests/support/rule-tester.ts';
import { STAY, shiftAlong } from '../../../solid/moves.ts';
import type { HoleEdge } from '../../../solid/solids.ts';
import rule from './hole-breaks-out.ts';

const edge = (body: string, over: Partial<HoleEdge> = {}): HoleEdge => ({
  body: bodyId(body),
  copy: 0,
  beside: bodyId('plate'),
  diameterMm: 8,
  centreMm: 3,
  metalMm: 0,
  at: [0, 30, 6],
  ...over,
});
const facts = {
  part: part('column'),
  bodies: [
    placedBody('plate'),
    placedBody('hole', { adds: false }),
    placedBody('row', { adds: false, moves: [STAY, shiftAlong('X', 20)] }),
  ],
};

testRule(rule, {
  passes: [
    { name: 'no solid yet', facts: { ...facts, solid: undefined } },
    {
      name: 'a part that lacks a body',
      facts: {
        ...facts,
        bodies: [...facts.bodies, placedBody('lug', { problem: notPlaced(['left']) })],
        solid: solidFact({ faces: { holes: [edge('hole')] } }),
      },
    },
    {
      name: 'metal left',
      facts: { ...facts, solid: solidFact({ faces: { holes: [edge('hole', { centreMm: 6, metalMm: 2 })] } }) },
    },
  ],
  finds: [
    {
      name: 'a hole, and a copy of one',
      facts: { ...facts, solid: solidFact({ faces: { holes: [edge('hole'), edge('row', { copy: 1 })] } }) },
      findings: [
        {
          message: 'breaks',
          at: [bodyId('hole'), bodyId('plate')],
          data: { body: 'hole', part: 'column', beside: 'plate', diameterMm: 8, centreMm: 3 },
        },
        {
          message: 'copy',
          at: [bodyId('row'), bodyId('plate')],
          data: { body: 'row', part: 'column', beside: 'plate', diameterMm: 8, centreMm: 3, copy: 2 },
        },
      ],
    },
  ],
});
