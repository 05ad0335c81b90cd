import { partNames } from '../../part-names.ts';
import { definePartRule, type Said } from '../../rule.ts';

export default definePartRule({
  id: 'setup-own-state',
  title: 'Set-up that begins after itself',
  department: 'machining',
  severity: 'stop',
  shuts: ['machine'],
  acceptable: false,
  needs: ['part', 'operations', 'route'],
  messages: { own: '{setup} of {part} takes the part up after {operation}, which is itself done in {setup}.' },
  remedies: { own: 'Give {setup} the state of the part as it is when it is put in, before {operation}.' },

  check({ part, operations, route }) {
    const nameOf = partNames({ operations });
    return route.faults.flatMap((fault): readonly Said<'own'>[] => {
      if (fault.is !== 'own-state') return [];
      const { setup, operation } = fault;
      const data = { part: part.name, setup: nameOf(setup), operation: nameOf(operation) };
      return [{ message: 'own', at: [setup, operation], data }];
    });
  },
});
