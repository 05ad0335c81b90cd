import { exact, nested, optional, plain, recordTable } from './record-table.ts';

/** What an operation names within its JSON stands, by triggers, in the table `operation_use` too, as references. */
export const operationTable = recordTable('operation', [
  plain('id'),
  plain('part'),
  plain('name'),
  plain('process'),
  optional(plain('setup')),
  nested('makes'),
  nested('from', 'needs'),
  nested('after'),
  plain('leaves'),
  optional(nested('cut')),
  nested('tool'),
  nested('chosen'),
  plain('note'),
  exact('order', 'place'),
]);
