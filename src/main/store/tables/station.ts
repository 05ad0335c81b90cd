import { exact, plain, recordTable, yesNo } from './record-table.ts';

export const stationTable = recordTable('station', [
  plain('id'),
  plain('part'),
  plain('axis'),
  plain('name'),
  plain('form'),
  yesNo('datum'),
  plain('note'),
  exact('order', 'place'),
]);
