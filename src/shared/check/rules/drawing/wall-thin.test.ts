import { bodyId, notPlaced, placedBody, solidFact } from '../../../../../tests/support/body-facts.ts';
import { part } from '../../../../../tests/support/facts.ts';
import { testRule } from '../../../../../tests/support/rule-tester.ts';
import type { ThinWall } from '../../../solid/solids.ts';
import rule from './wall-thin.ts';

const wall = (thicknessMm: number, one = 'box', other = one): ThinWall => ({
  bodies: [bodyId(one), bodyId(other)],
  thicknessMm,
  at: [1, 2, 3],
});
const facts = { part: part('column'), bodies: [placedBody('box'), placedBody('cavity', { adds: false })] };
const walls = (...list: readonly ThinWall[]) => ({ ...facts, solid: solidFact({ faces: { walls: list } }) });
const source = 'a gravity casting foundry’s design guide: walls of 3 to 8 mm';

testRule(rule, {
  passes: [
    { name: 'no solid yet', facts: { ...facts, solid: undefined } },
    {
      name: 'a part that lacks a body',
      facts: { ...walls(wall(1)), bodies: [placedBody('box'), placedBody('lug', { problem: notPlaced(['left']) })] },
    },
    { name: 'walls that run', facts: walls(wall(3), wall(2.95), wall(5)) },
    { name: 'a part from stock', facts: { ...walls(wall(1)), part: part('column', { make: 'stock' }) } },
    { name: 'a metal nothing is known of', facts: { ...walls(wall(1)), part: part('column', { material: 'steel' }) } },
    { name: 'a metal that runs thinner', facts: { ...walls(wall(2.6)), part: part('column', { material: 'ZA-12' }) } },
  ],
  finds: [
    {
      name: 'a thin wall, and a sharp edge',
      facts: walls(wall(0), wall(2.4, 'box', 'cavity'), wall(4)),
      findings: [
        {
          message: 'sharp',
          at: [bodyId('box')],
          data: { part: 'column', bodies: 'box', metal: 'aluminium', source, leastMm: 3, xMm: 1, yMm: 2, zMm: 3 },
        },
        {
          message: 'thin',
          at: [bodyId('box'), bodyId('cavity')],
          data: {
            part: 'column',
            bodies: 'box and cavity',
            metal: 'aluminium',
            source,
            leastMm: 3,
            wallMm: 2.4,
            xMm: 1,
            yMm: 2,
            zMm: 3,
          },
        },
      ],
    },
  ],
});
