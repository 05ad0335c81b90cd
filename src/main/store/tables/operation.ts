import { exact, optional, plain, recordTable } from './record-table.ts';

/** A member of more than one value: JSON in the record and JSON text in the row. */
const nested = (field: string, column = field) => exact(field, column);

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
