import { bodyId, notPlaced, placedBody, solidFact } from '../../../../../tests/support/body-facts.ts';
import { part, partId } from '../../../../../tests/support/facts.ts';
import { testRule } from '../../../../../tests/support/rule-tester.ts';
import rule from './wall-minimum-unknown.ts';

const solid = solidFact({
  faces: { walls: [{ bodies: [bodyId('box'), bodyId('box')], thicknessMm: 4, at: [0, 0, 0] }] },
});

const bodies = [placedBody('box')];

testRule(rule, {
  passes: [
    {
      name: 'a part that lacks a body',
      facts: {
        part: part('column', { material: 'steel' }),
        bodies: [placedBody('lug', { problem: notPlaced(['left']) })],
        solid,
      },
    },
    { name: 'a metal with a known least wall', facts: { part: part('column'), bodies, solid } },
    { name: 'no thin wall', facts: { part: part('column', { material: 'steel' }), bodies, solid: solidFact() } },
    { name: 'no solid yet', facts: { part: part('column', { material: 'steel' }), bodies, solid: undefined } },
    { name: 'no metal said', facts: { part: part('column', { material: ' ' }), bodies, solid } },
    { name: 'a part from stock', facts: { part: part('column', { make: 'stock', material: 'steel' }), bodies, solid } },
  ],
  finds: [
    {
      name: 'a metal nothing is known of',
      facts: { part: part('column', { material: 'steel ' }), bodies, solid },
      findings: [
        { message: 'unknown', at: [partId('column')], data: { part: 'column', material: 'steel', wallMm: 4 } },
      ],
    },
  ],
});
