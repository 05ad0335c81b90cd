import { exact, plain, recordTable } from './record-table.ts';

/** The figures are one JSON text: any of them may be absent. */
export const alloyTable = recordTable('alloy', [
  plain('id'),
  plain('name'),
  plain('family'),
  exact('figures', 'figures'),
  plain('source'),
]);
