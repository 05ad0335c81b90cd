import { bodyId, placedBody } from '../../../../../tests/support/body-facts.ts';
import { part } from '../../../../../tests/support/facts.ts';
import { block, corner, prism } from '../../../../../tests/support/placed-bodies.ts';
import { testRule } from '../../../../../tests/support/rule-tester.ts';
import rule from './bodies-coincide.ts';

const facts = { part: part('column') };
const boss = placedBody('boss', { exact: block([0, 10], [0, 10], [0, 10]) });

testRule(rule, {
  passes: [
    { name: 'bodies of different places', facts: { ...facts, bodies: [placedBody('plate'), boss] } },
    {
      name: 'bodies without a shape',
      facts: {
        ...facts,
        bodies: ['a', 'b'].map((name) => placedBody(name, { problem: { why: 'no-size', at: [] } })),
      },
    },
  ],
  finds: [
    {
      name: 'one twice, its outline begun elsewhere, and taken away again',
      facts: {
        ...facts,
        bodies: [
          boss,
          placedBody('plate'),
          placedBody('again', {
            exact: prism('Z', [0, 10], [corner(10, 10), corner(0, 10), corner(0, 0), corner(10, 0)]),
          }),
          placedBody('pocket', { adds: false, exact: block([0, 10], [0, 10], [0, 10]) }),
        ],
      },
      findings: [
        {
          message: 'twice',
          at: [bodyId('again'), bodyId('boss')],
          data: { part: 'column', body: 'boss', other: 'again' },
        },
        {
          message: 'undone',
          at: [bodyId('pocket'), bodyId('boss')],
          data: { part: 'column', body: 'boss', other: 'pocket' },
        },
      ],
    },
  ],
});
