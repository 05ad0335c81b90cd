import { bodyId, notPlaced, placedBody, solidFact } from '../../../../../tests/support/body-facts.ts';
import { part } from '../../../../../tests/support/facts.ts';
import { testRule } from '../../../../../tests/support/rule-tester.ts';
import rule from './detached-piece.ts';

const facts = { part: part('column'), bodies: [placedBody('boss'), placedBody('lug'), placedBody('foot')] };
const loose = (poured: readonly (readonly string[])[], finished = poured) =>
  solidFact({
    faces: {
      loose: { 'as cast': poured.map((ids) => ids.map(bodyId)), finished: finished.map((ids) => ids.map(bodyId)) },
    },
  });

testRule(rule, {
  passes: [
    { name: 'no solid yet', facts: { ...facts, solid: undefined } },
    {
      name: 'a part that lacks a body',
      facts: {
        ...facts,
        bodies: [...facts.bodies, placedBody('lug', { problem: notPlaced(['left']) })],
        solid: loose([['foot']]),
      },
    },
    { name: 'one piece', facts: { ...facts, solid: solidFact() } },
  ],
  finds: [
    {
      name: 'pieces of the casting, those of one body together',
      facts: { ...facts, solid: loose([['boss', 'lug'], ['foot'], ['foot'], ['foot']]) },
      findings: [
        {
          message: 'apart',
          at: [bodyId('boss'), bodyId('lug')],
          data: { part: 'column', bodies: 'boss and lug' },
        },
        { message: 'several', at: [bodyId('foot')], data: { part: 'column', bodies: 'foot', count: 3 } },
      ],
    },
    {
      name: 'a part that comes apart when it is machined',
      facts: { ...facts, solid: loose([], [['lug'], ['foot'], ['foot']]) },
      findings: [
        { message: 'machined', at: [bodyId('lug')], data: { part: 'column', bodies: 'lug' } },
        { message: 'machined-several', at: [bodyId('foot')], data: { part: 'column', bodies: 'foot', count: 2 } },
      ],
    },
  ],
});
