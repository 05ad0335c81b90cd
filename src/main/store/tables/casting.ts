import { nested, optional, plain, recordTable } from './record-table.ts';

/** What a casting names within its JSON stands, by triggers, in the table `casting_use` too, as references. */
export const castingTable = recordTable('casting', [
  plain('id'),
  plain('part'),
  plain('moulding'),
  nested('contraction'),
  plain('stockGrade'),
  nested('stock'),
  nested('sizeStock', 'size_stock'),
  plain('copeExtra'),
  optional(plain('up')),
  optional(nested('parting')),
  plain('draft'),
  plain('closeUnder'),
  plain('coating'),
  plain('glueJoint'),
  nested('prints'),
  nested('lugs'),
  nested('boards'),
  plain('foamDensity'),
  optional(plain('sectionAxis')),
  optional(plain('bow')),
  optional(plain('flask')),
  plain('note'),
]);
