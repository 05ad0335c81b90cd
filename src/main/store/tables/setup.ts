import { exact, nested, optional, plain, recordTable } from './record-table.ts';

/** What a set-up names within its JSON stands, by triggers, in the table `setup_use` too, as references. */
export const setupTable = recordTable('setup', [
  plain('id'),
  plain('part'),
  plain('name'),
  optional(plain('machine')),
  nested('state'),
  plain('allowance'),
  nested('fellows'),
  nested('fixtures'),
  nested('line'),
  plain('headEnd'),
  nested('holding'),
  plain('minutes'),
  plain('note'),
  exact('order', 'place'),
]);
