import { plain, recordTable } from './record-table.ts';

export const acceptanceTable = recordTable('acceptance', [
  plain('id'),
  plain('rule'),
  plain('finding'),
  plain('figures'),
  plain('reason'),
  plain('acceptedAt'),
]);
