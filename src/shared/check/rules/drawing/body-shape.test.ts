import { bodyId, placedBody } from '../../../../../tests/support/body-facts.ts';
import { dimensionId, fact, part } from '../../../../../tests/support/facts.ts';
import { testRule } from '../../../../../tests/support/rule-tester.ts';
import { shapeProblemCodes } from '../../../solid/placed.ts';
import rule from './body-shape.ts';

const facts = { part: part('column'), stations: [], dimensions: [fact('bore', 30)] };

testRule(rule, {
  passes: [{ name: 'a body with a shape', facts: { ...facts, bodies: [placedBody('boss')] } }],
  finds: [
    {
      name: 'every code',
      facts: {
        ...facts,
        bodies: shapeProblemCodes.map((code) =>
          placedBody(code, { problem: { why: 'shape', code, at: [dimensionId('bore'), dimensionId('bore')] } }),
        ),
      },
      findings: shapeProblemCodes.map((code) => ({
        message: code,
        at: [bodyId(code), dimensionId('bore')],
        data: { body: code, part: 'column', names: 'bore' },
      })),
    },
    {
      name: 'one that names no place',
      facts: { ...facts, bodies: [placedBody('lug', { problem: { why: 'shape', code: 'mesh-inside-out', at: [] } })] },
      findings: [
        { message: 'mesh-inside-out', at: [bodyId('lug')], data: { body: 'lug', part: 'column', names: 'lug' } },
      ],
    },
  ],
});
