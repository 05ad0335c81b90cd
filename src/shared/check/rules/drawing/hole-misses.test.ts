import { bodyId, notPlaced, placedBody, solidFact } from '../../../../../tests/support/body-facts.ts';
import { part } from '../../../../../tests/support/facts.ts';
import { cylinder } from '../../../../../tests/support/placed-bodies.ts';
import { testRule } from '../../../../../tests/support/rule-tester.ts';
import { STAY, shiftAlong } from '../../../solid/moves.ts';
import rule from './hole-misses.ts';

const facts = { part: part('column'), solid: undefined };
const plate = placedBody('plate');
const hole = (x: number, more: Parameters<typeof placedBody>[1] = {}) =>
  placedBody('hole', { exact: cylinder('Z', [x, 30], [-1, 13], 4), adds: false, ...more });

testRule(rule, {
  passes: [
    {
      name: 'a part that lacks a body',
      facts: { ...facts, bodies: [plate, hole(120), placedBody('lug', { problem: notPlaced(['left']) })] },
    },
    { name: 'a hole in the plate', facts: { ...facts, bodies: [plate, hole(50)] } },
    {
      name: 'a boss without effect',
      facts: { ...facts, bodies: [plate, placedBody('boss')], solid: solidFact({ idle: ['boss'] }) },
    },
    {
      name: 'two holes in one place, which is another finding',
      facts: {
        ...facts,
        bodies: [plate, hole(50), placedBody('again', { exact: cylinder('Z', [50, 30], [-1, 13], 4), adds: false })],
        solid: solidFact({ idle: ['hole', 'again'] }),
      },
    },
  ],
  finds: [
    {
      name: 'a hole beside the plate',
      facts: { ...facts, bodies: [plate, hole(120)] },
      findings: [{ message: 'air', at: [bodyId('hole')], data: { body: 'hole', part: 'column' } }],
    },
    {
      name: 'a hole above the plate in the list',
      facts: { ...facts, bodies: [hole(50), plate] },
      findings: [{ message: 'air', at: [bodyId('hole')], data: { body: 'hole', part: 'column' } }],
    },
    {
      name: 'a row that runs out of the plate',
      facts: { ...facts, bodies: [plate, hole(80, { moves: [STAY, shiftAlong('X', 30), shiftAlong('X', 60)] })] },
      findings: [
        { message: 'copies', at: [bodyId('hole')], data: { body: 'hole', part: 'column', count: 2, copies: 3 } },
      ],
    },
    {
      name: 'a hole that the kernel finds idle',
      facts: { ...facts, bodies: [plate, hole(50)], solid: solidFact({ idle: ['hole'] }) },
      findings: [{ message: 'nothing', at: [bodyId('hole')], data: { body: 'hole', part: 'column' } }],
    },
  ],
});
