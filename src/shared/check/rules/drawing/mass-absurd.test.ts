import { notPlaced, placedBody, solidFact } from '../../../../../tests/support/body-facts.ts';
import { part, partId } from '../../../../../tests/support/facts.ts';
import { testRule } from '../../../../../tests/support/rule-tester.ts';
import rule from './mass-absurd.ts';

const material = { name: 'aluminium', densityKgM3: 2700, source: 'a test' };
const facts = { part: part('column'), material, bodies: [placedBody('boss')] };
const box = { xMm: 100, yMm: 60, zMm: 12 };

testRule(rule, {
  passes: [
    { name: 'a plate of 0.19 kg', facts: { ...facts, solid: solidFact() } },
    {
      name: 'a part that lacks a body',
      facts: {
        ...facts,
        bodies: [placedBody('lug', { problem: notPlaced(['left']) })],
        solid: solidFact({ asCast: { volumeMm3: 1e9 } }),
      },
    },
    { name: 'no solid yet', facts: { ...facts, solid: undefined } },
    { name: 'no density', facts: { ...facts, material: { ...material, densityKgM3: undefined }, solid: solidFact() } },
    { name: 'no material', facts: { ...facts, material: undefined, solid: solidFact({ asCast: { volumeMm3: 1e9 } }) } },
    {
      name: 'a bought part',
      facts: { ...facts, part: part('column', { make: 'bought' }), solid: solidFact({ asCast: { volumeMm3: 1e9 } }) },
    },
    {
      name: 'a large piece of stock',
      facts: { ...facts, part: part('column', { make: 'stock' }), solid: solidFact({ finished: { volumeMm3: 5e7 } }) },
    },
  ],
  finds: [
    {
      name: 'a casting nobody can pour',
      facts: { ...facts, solid: solidFact({ asCast: { volumeMm3: 5e7 } }) },
      findings: [
        {
          message: 'heavy',
          at: [partId('column')],
          data: {
            part: 'column',
            material: 'aluminium',
            massKg: 135,
            ...box,
            most: 'two people pour from one hand-held crucible',
            limitKg: 60,
          },
        },
      ],
    },
    {
      name: 'a crumb of stock',
      facts: { ...facts, part: part('column', { make: 'stock' }), solid: solidFact({ finished: { volumeMm3: 20 } }) },
      findings: [
        {
          message: 'light',
          at: [partId('column')],
          data: { part: 'column', material: 'aluminium', massKg: 0.000054, ...box, limitKg: 0.0001 },
        },
      ],
    },
  ],
});
