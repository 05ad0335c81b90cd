import { bodyId, solidFact } from '../../../../../tests/support/body-facts.ts';
import { part, partId } from '../../../../../tests/support/facts.ts';
import { testRule } from '../../../../../tests/support/rule-tester.ts';
import rule from './wall-minimum-unknown.ts';

const solid = solidFact({
  faces: { walls: [{ bodies: [bodyId('box'), bodyId('box')], thicknessMm: 4, at: [0, 0, 0] }] },
});

testRule(rule, {
  passes: [
    { name: 'a metal with a known least wall', facts: { part: part('column'), solid } },
    { name: 'no thin wall', facts: { part: part('column', { material: 'steel' }), solid: solidFact() } },
    { name: 'no solid yet', facts: { part: part('column', { material: 'steel' }), solid: undefined } },
    { name: 'no metal said', facts: { part: part('column', { material: ' ' }), solid } },
    { name: 'a part from stock', facts: { part: part('column', { make: 'stock', material: 'steel' }), solid } },
  ],
  finds: [
    {
      name: 'a metal nothing is known of',
      facts: { part: part('column', { material: 'steel ' }), solid },
      findings: [
        { message: 'unknown', at: [partId('column')], data: { part: 'column', material: 'steel', wallMm: 4 } },
      ],
    },
  ],
});
