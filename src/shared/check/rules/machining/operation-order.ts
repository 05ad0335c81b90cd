import { partNames } from '../../part-names.ts';
import { definePartRule, type Said } from '../../rule.ts';

type Message = 'from' | 'held' | 'after' | 'state' | 'hole' | 'stock';

export default definePartRule({
  id: 'operation-order',
  title: 'Operation that comes too early',
  department: 'machining',
  severity: 'stop',
  shuts: ['machine'],
  acceptable: false,
  needs: ['part', 'stations', 'dimensions', 'bodies', 'operations', 'route'],
  messages: {
    from: '{next} of {part} is located by {what}, which {first} makes only later.',
    held: '{next} of {part} is held in {setup} by {what}, which {first} makes only later.',
    after: '{next} of {part} is to come after {first}, and stands before it.',
    state: '{next} of {part} is done in {setup}, which begins after {first}, and stands before that.',
    hole: '{next} of {part} works on {what} before {first} does.',
    stock: '{next} of {part} takes {what} to less than {first}, which stands after it, is to leave.',
  },
  remedies: {
    from: 'Move {first} up before {next}, or locate {next} by something that is there; the route can propose an order.',
    held: 'Move {first} up before {next}, or hold it by something that is there; the route can propose an order.',
    after: 'Move {first} up before {next}, or take it out of what has to come before.',
    state: 'Move {first} up before {next}, or give {setup} the state that the part is really in.',
    hole: 'Move {first} up before {next}: a hole is drilled, then bored, reamed or sunk, and tapped last.',
    stock: 'Move {first} up before {next}, or correct what each is to leave.',
  },

  check({ part, stations, dimensions, bodies, operations, route }) {
    const nameOf = partNames({ stations, dimensions, bodies, operations });
    return route.faults.flatMap((fault): readonly Said<Message>[] => {
      if (fault.is !== 'order') return [];
      const { first, next, why } = fault.constraint;
      const data = { part: part.name, first: nameOf(first), next: nameOf(next) };
      switch (why.is) {
        case 'from':
          return [{ message: 'from', at: [next, first, why.surface], data: { ...data, what: nameOf(why.surface) } }];
        case 'held':
          return [
            {
              message: 'held',
              at: [next, first, why.surface, why.setup],
              data: { ...data, what: nameOf(why.surface), setup: nameOf(why.setup) },
            },
          ];
        case 'after':
          return [{ message: 'after', at: [next, first], data }];
        case 'state':
          return [{ message: 'state', at: [next, first, why.setup], data: { ...data, setup: nameOf(why.setup) } }];
        case 'hole':
          return [{ message: 'hole', at: [next, first, why.body], data: { ...data, what: nameOf(why.body) } }];
        case 'stock':
          return [{ message: 'stock', at: [next, first, why.thing], data: { ...data, what: nameOf(why.thing) } }];
        default:
          // What good practice asks, and what is cut away too early, are findings of their own.
          return [];
      }
    });
  },
});
