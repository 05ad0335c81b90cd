import { exact, plain, recordTable } from './record-table.ts';

export const partTable = recordTable('part', [
  plain('id'),
  plain('name'),
  plain('number'),
  plain('sheet'),
  plain('make'),
  plain('material'),
  plain('quantity'),
  plain('note'),
  exact('order', 'place'),
]);
