import { dimensionId } from '../../../../../tests/support/facts.ts';
import {
  drilled,
  operation,
  routeBody,
  routeBodyId,
  routeCasting,
  routeRuleFacts,
} from '../../../../../tests/support/route-part.ts';
import { testRule } from '../../../../../tests/support/rule-tester.ts';
import type { Process } from '../../../build/operation.ts';
import rule from './no-drill-near.ts';

const facts = (diameter: string, lower: number, upper: number, ...processes: readonly Process[]) => {
  const found = routeRuleFacts({
    ...routeCasting,
    sizes: { size: ['diameter', diameter] },
    bodies: [routeBody('hole', drilled('top', 'foot', 'size'), { adds: false, finish: 'machined' })],
    operations: processes.map((process) => operation(process, process, { makes: [routeBodyId('hole')] })),
  });
  const limits = { lower, upper, origin: 'written', row: 'as written' } as const;
  return {
    ...found,
    dimensions: found.dimensions.map((one) =>
      one.record.id === dimensionId('size') ? { ...one, resolved: { ...one.resolved, limits } } : one,
    ),
  };
};
const at = [routeBodyId('hole'), dimensionId('size')] as const;

testRule(rule, {
  passes: [
    { name: 'a drill of that size', facts: facts('10.3', 10.29, 10.31, 'drill') },
    { name: 'one within its limits', facts: facts('10.37', 10.2, 10.5, 'drill') },
    { name: 'reamed to size', facts: facts('10.37', 10.36, 10.38, 'drill', 'ream') },
    { name: 'not drilled at all', facts: facts('10.37', 10.36, 10.38, 'bore') },
  ],
  finds: [
    {
      name: 'between two drills',
      facts: facts('10.37', 10.36, 10.38, 'drill'),
      findings: [
        {
          message: 'off',
          at,
          data: {
            hole: 'hole',
            part: 'column',
            diameterMm: 10.37,
            drill: '10.4 mm',
            sizeMm: 10.4,
            lowerMm: 10.36,
            upperMm: 10.38,
          },
        },
      ],
    },
    {
      name: 'wider than any drill',
      facts: facts('140', 139, 141, 'drill'),
      findings: [{ message: 'none', at, data: { hole: 'hole', part: 'column', diameterMm: 140 } }],
    },
  ],
});
