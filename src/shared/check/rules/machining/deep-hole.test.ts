import { dimensionId } from '../../../../../tests/support/facts.ts';
import {
  drilled,
  operation,
  operationId,
  routeBody,
  routeBodyId,
  routeCasting,
  routeRuleFacts,
} from '../../../../../tests/support/route-part.ts';
import { testRule } from '../../../../../tests/support/rule-tester.ts';
import type { Process } from '../../../build/operation.ts';
import rule from './deep-hole.ts';

const facts = (process: Process, size: 'bore' | 'tapped' | 'narrow') =>
  routeRuleFacts({
    ...routeCasting,
    bodies: [routeBody('hole', drilled('top', 'foot', size), { adds: false, finish: 'machined' })],
    operations: [operation('work', process, { makes: [dimensionId(size)] })],
  });
const said = { operation: 'work', part: 'column', hole: 'hole' };
const at = [operationId('work'), routeBodyId('hole')] as const;
const source = 'common practice, no source';

testRule(rule, {
  passes: [{ name: 'a short one', facts: facts('drill', 'bore') }],
  finds: [
    {
      name: 'deep',
      facts: facts('drill', 'tapped'),
      findings: [{ message: 'deep', at, data: { ...said, ratio: '5.9' } }],
    },
    {
      name: 'deeper than a drill is long',
      facts: facts('drill', 'narrow'),
      findings: [{ message: 'beyond', at, data: { ...said, ratio: '13', limit: 10, source } }],
    },
    {
      name: 'a thread longer than it needs to be',
      facts: facts('tap', 'tapped'),
      findings: [{ message: 'thread', at, data: { ...said, ratio: '5', limit: 2, source } }],
    },
  ],
});
