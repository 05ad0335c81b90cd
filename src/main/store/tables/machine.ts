import { exact, plain, recordTable, yesNo } from './record-table.ts';

export const machineTable = recordTable('machine', [
  plain('id'),
  plain('name'),
  plain('type'),
  exact('figures', 'figures'),
  exact('bed', 'bed'),
  yesNo('generic'),
  plain('note'),
  exact('order', 'place'),
]);
