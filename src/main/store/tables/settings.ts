import { plain, recordTable } from './record-table.ts';

export const settingsTable = recordTable('settings', [
  plain('id'),
  plain('name'),
  plain('note'),
  plain('lengthUnit'),
  plain('machinedTolerance'),
  plain('castingGrade'),
]);
