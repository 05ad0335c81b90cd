import { exact, plain, recordTable, yesNo } from './record-table.ts';

/** A member of more than one value: JSON in the record and JSON text in the row. */
const nested = (field: string) => exact(field, field);

/** What a body hangs on stands in its shape and repeats; triggers keep it in the table `body_use` too, as references. */
export const bodyTable = recordTable('body', [
  plain('id'),
  plain('part'),
  plain('name'),
  yesNo('adds'),
  plain('finish'),
  nested('shape'),
  nested('repeats'),
  plain('note'),
  exact('order', 'place'),
]);
