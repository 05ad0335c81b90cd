import { solidFact } from '../../../../../tests/support/body-facts.ts';
import {
  blockOf,
  operation,
  operationId,
  routeBody,
  routeBodyId,
  routeCasting,
  routeRuleFacts,
} from '../../../../../tests/support/route-part.ts';
import { testRule } from '../../../../../tests/support/rule-tester.ts';
import rule from './hole-after-thin-wall.ts';

const slot = routeBody('slot', blockOf(['left', 'right'], ['front', 'back'], ['floor', 'top']), {
  adds: false,
  finish: 'machined',
});
const drill = operation('drill', 'drill', { makes: [routeBodyId('threaded')] });
const mill = operation('mill', 'mill', { makes: [routeBodyId('slot')] });
const facts = (metalMm: number, operations = [mill, drill]) =>
  routeRuleFacts({
    ...routeCasting,
    bodies: [...routeCasting.bodies, slot],
    operations,
    solid: solidFact({
      faces: {
        holes: [
          {
            body: routeBodyId('threaded'),
            copy: 0,
            beside: routeBodyId('slot'),
            diameterMm: 8,
            centreMm: 4 + metalMm,
            metalMm,
            at: [0, 0, 0],
          },
        ],
      },
    }),
  });
const at = [operationId('drill'), operationId('mill'), routeBodyId('threaded'), routeBodyId('slot')] as const;
const data = { part: 'column', drill: 'drill', cut: 'mill', hole: 'threaded', beside: 'slot' };

testRule(rule, {
  passes: [
    { name: 'a wall that stands', facts: facts(2) },
    { name: 'drilled while it is thick', facts: facts(0.5, [drill, mill]) },
  ],
  finds: [
    { name: 'a thin wall', facts: facts(0.5), findings: [{ message: 'thin', at, data: { ...data, metalMm: 0.5 } }] },
    { name: 'no wall', facts: facts(0), findings: [{ message: 'open', at, data }] },
  ],
});
