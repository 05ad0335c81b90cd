import { plain, recordTable } from './record-table.ts';

export const solidTable = recordTable('solid', [
  plain('id'),
  plain('name'),
  plain('fileName'),
  plain('unit'),
  plain('vertices'),
  plain('triangles'),
  plain('note'),
]);
