import { exact, nested, plain, recordTable, yesNo } from './record-table.ts';

export const patternTable = recordTable('pattern', [
  plain('id'),
  plain('part'),
  plain('name'),
  nested('measured'),
  nested('cast', 'on_casting'),
  nested('trials'),
  plain('bare'),
  plain('scaleStep'),
  nested('rule'),
  yesNo('plaster'),
  nested('weighings'),
  plain('takenOn'),
  plain('note'),
  exact('order', 'place'),
]);
