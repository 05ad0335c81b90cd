import { exact, plain, type RecordTable, recordTable } from './record-table.ts';

const before = recordTable('dimension', [plain('id'), plain('part'), plain('name')]);
const after = recordTable('dimension', [
  plain('value'),
  plain('limits'),
  plain('source'),
  plain('finish'),
  plain('sheet'),
  plain('note'),
  exact('order', 'place'),
]);

/** What a dimension measures is one field of the record and three columns of the row, so that stations are real references. */
export const dimensionTable: RecordTable = {
  kind: 'dimension',
  columns: [
    ...before.columns,
    ['from_station', `r.value ->> '$.measure.from'`],
    ['to_station', `r.value ->> '$.measure.to'`],
    ['size_form', `r.value ->> '$.measure.form'`],
    ...after.columns,
  ],
  fields: [
    ...before.fields,
    [
      'measure',
      `json(iif(size_form is null,
        json_object('type', 'between', 'from', from_station, 'to', to_station),
        json_object('type', 'size', 'form', size_form)))`,
    ],
    ...after.fields,
  ],
};
