import { finishes, sizeForms, sources } from '../../../../shared/build/dimension.ts';
import { nameKey } from '../../../../shared/formula/name-key.ts';
import type { Engine } from '../../../engine/engine.ts';
import type { DimensionRow, PartSheet } from '../../../engine/views/part.ts';
import { nameAtCaret, takeName } from './caret-name.ts';
import type { Column, Offer } from './column.ts';

/** A row that says where it runs from but not yet where to: kept here until both are written. */
export type Halves = ReadonlyMap<string, string>;

interface ColumnInput {
  /** Only what the columns need of the part's sheet: while that stays, so do they, and rows are not drawn anew. */
  readonly part: PartSheet['part']['id'];
  readonly unit: PartSheet['unit'];
  readonly stations: PartSheet['stations'];
  readonly halves: Halves;
  readonly engine: Engine;
}

const matching = (offers: readonly Offer[], text: string): readonly Offer[] => {
  const key = nameKey(text);
  return offers.filter((offer) => nameKey(offer.text).includes(key) && nameKey(offer.text) !== key).slice(0, 8);
};

/** The columns of the table of dimensions. */
export function dimensionColumns({
  part,
  unit,
  stations,
  halves,
  engine,
}: ColumnInput): readonly Column<DimensionRow>[] {
  const isInch = unit === 'in';
  const stationOffers = stations.map(({ record }) => ({ text: record.name, beside: record.axis }));
  const sizeOffers = sizeForms.map((form) => ({ text: form, beside: 'size' }));
  const keyOf = (row: DimensionRow | undefined) => row?.record.id ?? 'new';
  const preview = (field: 'value' | 'limits') => async (row: DimensionRow | undefined, text: string) =>
    row === undefined ? undefined : engine.ask('preview', { dimension: row.record.id, field, text });
  return [
    {
      id: 'name',
      title: 'Dimension',
      about: 'Name by which formulas call it',
      width: 144,
      grows: true,
      text: (row) => row.record.name,
      edit: {},
    },
    {
      id: 'from',
      title: 'From / size',
      about: 'The station it runs from, or what size it is: diameter, radius, length, angle, thread, count…',
      width: 96,
      grows: true,
      text: (row) => halves.get(row.record.id) ?? row.from,
      show: (row) =>
        row.record.measure.type === 'size' && !halves.has(row.record.id) ? (
          <em className="soft">{row.from}</em>
        ) : (
          (halves.get(row.record.id) ?? row.from)
        ),
      edit: { offers: async (_row, text) => matching([...stationOffers, ...sizeOffers], text) },
    },
    {
      id: 'to',
      title: 'To',
      about: 'The station it runs to; empty for a size',
      width: 96,
      grows: true,
      text: (row) => (halves.has(row.record.id) ? '' : row.to),
      problem: (row) => (halves.has(row.record.id) ? 'Write the station that it runs to.' : undefined),
      edit: {
        offers: async (row, text) => {
          const from = halves.get(keyOf(row)) ?? row?.from;
          const axis = stations.find(({ record }) => record.name === from)?.record.axis;
          return matching(
            stationOffers.filter((offer) => (axis === undefined || offer.beside === axis) && offer.text !== from),
            text,
          );
        },
      },
    },
    {
      id: 'value',
      title: 'Written',
      about: 'The value exactly as the drawing writes it: 62, 1-3/8", or a formula such as bore of column + 0.2 mm',
      width: 122,
      grows: true,
      figure: 'left',
      text: (row) => row.record.value,
      problem: (row) => row.valueProblem,
      edit: {
        preview: preview('value'),
        take: takeName,
        offers: async (_row, text, caret) => {
          const name = nameAtCaret(text, caret);
          if (name === undefined) return [];
          const names = await engine.ask('names', { part, typed: name.typed });
          return (names ?? []).map(({ insert, value }) => ({ text: insert, beside: value }));
        },
      },
    },
    {
      id: 'limits',
      title: 'Limits',
      about: 'Limits as written: ±0.1, +0.2/-0. Empty: left to the build’s general tolerance',
      width: 86,
      figure: 'right',
      text: (row) => row.record.limits,
      problem: (row) => row.limitsProblem,
      edit: { preview: preview('limits') },
    },
    {
      id: 'resolved',
      title: 'Comes to',
      about: `The value as computed, in ${isInch ? 'inches' : 'mm'} (or the size’s own unit)`,
      width: 92,
      figure: 'right',
      text: (row) => row.value ?? '',
      show: (row) => row.value ?? <span className="soft">no value</span>,
    },
    {
      id: 'other',
      title: isInch ? 'mm' : 'Inch',
      about: isInch ? 'The same in mm' : 'The same in inches',
      width: 84,
      figure: 'right',
      text: (row) => row.other ?? '',
    },
    {
      id: 'lower',
      title: 'Least',
      about: 'The least it may be',
      width: 92,
      figure: 'right',
      text: (row) => row.lower ?? '',
      aside: (row) => row.limitsFrom,
      show: (row) => <span className={row.record.limits === '' ? 'soft' : undefined}>{row.lower}</span>,
    },
    {
      id: 'upper',
      title: 'Most',
      about: 'The most it may be',
      width: 92,
      figure: 'right',
      text: (row) => row.upper ?? '',
      aside: (row) => row.limitsFrom,
      show: (row) => <span className={row.record.limits === '' ? 'soft' : undefined}>{row.upper}</span>,
    },
    {
      id: 'source',
      title: 'Source',
      about: 'drawn, measured, assumed (sketched in, not confirmed) or derived',
      width: 86,
      text: (row) => row.record.source,
      edit: { choices: sources },
    },
    { id: 'finish', title: 'Finish', width: 86, text: (row) => row.record.finish, edit: { choices: finishes } },
    { id: 'sheet', title: 'Sheet', width: 64, text: (row) => row.record.sheet, edit: {} },
    { id: 'note', title: 'Note', width: 180, grows: true, text: (row) => row.record.note, edit: {} },
  ];
}
