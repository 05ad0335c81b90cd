import { exact, plain, recordTable } from './record-table.ts';

/** What is known of a material is one JSON text: any of its values may be absent. */
export const materialTable = recordTable('material', [
  plain('id'),
  plain('name'),
  exact('values', 'known'),
  plain('source'),
]);
