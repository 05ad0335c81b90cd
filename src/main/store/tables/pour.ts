import { exact, nested, optional, plain, recordTable } from './record-table.ts';

/** What a pour names within its JSON stands, by triggers, in the table `pour_use` too, as references. */
export const pourTable = recordTable('pour', [
  plain('id'),
  plain('name'),
  nested('castings'),
  plain('alloy'),
  optional(plain('furnace')),
  optional(plain('crucible')),
  optional(plain('flask')),
  plain('temperature'),
  plain('ambient'),
  nested('gating'),
  nested('risers'),
  nested('inserts'),
  plain('overflow'),
  plain('loss'),
  plain('heel'),
  plain('copeWeight'),
  plain('coverAbove'),
  plain('coverAround'),
  plain('sandDensity'),
  optional(plain('after', 'earlier')),
  optional(nested('journal')),
  plain('note'),
  exact('order', 'place'),
]);
