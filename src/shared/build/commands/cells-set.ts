import type { DimensionId, PartId } from '../../base/ids.ts';
import { err, ok, type Result } from '../../base/result.ts';
import { refuseUnfitMeasure } from '../body-guards.ts';
import { defineCommand } from '../command.ts';
import { type Dimension, defaultDimension, finishes, type Measure, sources } from '../dimension.ts';
import { draftOf } from '../draft.ts';
import { expectedIn, shorten, whyNotKept } from '../keepable.ts';
import { dimensionsOf, recordOf, stationsOf } from '../look-up.ts';
import { nameOfMeasure } from '../measuring.ts';
import { counted, freeName } from '../names.ts';
import { placeInList } from '../place-in-list.ts';
import { readEnds } from '../read-ends.ts';
import type { Build } from '../records.ts';
import type { Refusal } from '../refusals.ts';
import { renameInFormulas } from '../rename-in-formulas.ts';
import type { Axis } from '../station.ts';

export const cellFields = ['name', 'value', 'limits', 'source', 'finish', 'sheet', 'note', 'from', 'to'] as const;
export type CellField = (typeof cellFields)[number];

export interface CellsSet {
  readonly part: PartId;
  /** In the order of the pasted lines. A row without a dimension becomes a new one at the end of the list. */
  readonly rows: readonly {
    readonly dimension: DimensionId | undefined;
    /** Texts as pasted; spaces at their ends do not count. `from` alone may hold a size form. */
    readonly cells: Readonly<Partial<Record<CellField, string>>>;
  }[];
}

/** Puts a block of cells from a spreadsheet over the rows of a part, wholly or not at all. */
export default defineCommand<CellsSet>({
  id: 'cells-set',
  run(build, { part: partId, rows }, { newId }) {
    const part = recordOf(build, 'part', partId);
    if (!part) return err({ code: 'part-not-found' });
    if (rows.length === 0) return err({ code: 'nothing-given' });
    const list = dimensionsOf(build, partId);
    const names = list.map((dimension) => dimension.name);
    const newRows = rows.filter((row) => row.dimension === undefined).length;
    const { orders } = placeInList(list, undefined, newRows);
    const draft = draftOf(build);
    const renaming = new Map<DimensionId, string>();
    let added = 0;
    for (const [index, { dimension: id, cells }] of rows.entries()) {
      const row = index + 1;
      const from = id === undefined ? undefined : recordOf(build, 'dimension', id);
      if (id !== undefined && from?.part !== partId) return err({ code: 'dimension-not-found' });
      const measure = measureOf(build, partId, from, cells, row);
      if (!measure.ok) return measure;
      const name = cells.name?.trim() || from?.name || freeName(nameOfMeasure(build, measure.value), names);
      const base = from ?? defaultDimension(newId('dimension'), partId, name, measure.value, orders[added++]!);
      const to = withTexts({ ...base, name, measure: measure.value }, cells, row);
      if (!to.ok) return to;
      const refused = whyNotKept(to.value);
      if (refused) return err({ code: 'cell-refused', data: { row, ...refused.data } });
      const fits = refuseUnfitMeasure(build, to.value);
      if (!fits.ok) return fits;
      draft.put(to.value);
      names.push(name);
      if (from && name !== from.name) renaming.set(from.id, name);
    }
    renameInFormulas(build, draft, renaming);
    return ok({ diff: draft.diff(), label: `paste ${counted(rows.length, 'row')} into ${part.name}` });
  },
});

type Cells = CellsSet['rows'][number]['cells'];

function withTexts(dimension: Dimension, cells: Cells, row: number): Result<Dimension, Refusal> {
  const sourceText = cells.source?.trim().toLowerCase();
  const finishText = cells.finish?.trim().toLowerCase();
  const source = sourceText ? sources.find((known) => known === sourceText) : dimension.source;
  const finish = finishText ? finishes.find((known) => known === finishText) : dimension.finish;
  const refuse = (field: CellField) =>
    err({
      code: 'cell-refused' as const,
      data: { row, field, given: shorten(cells[field] ?? ''), expected: expectedIn(field) },
    });
  if (!source) return refuse('source');
  if (!finish) return refuse('finish');
  return ok({
    ...dimension,
    source,
    finish,
    value: cells.value?.trim() ?? dimension.value,
    limits: cells.limits?.trim() ?? dimension.limits,
    sheet: cells.sheet?.trim() ?? dimension.sheet,
    note: cells.note?.trim() ?? dimension.note,
  });
}

/** The ends as pasted; an end that is not among the cells stays as it is. */
function measureOf(
  build: Build,
  part: PartId,
  from: Dimension | undefined,
  cells: Cells,
  row: number,
): Result<Measure, Refusal> {
  if (cells.from === undefined && cells.to === undefined) return ok(from?.measure ?? { type: 'size', form: 'length' });
  if (!from && !cells.from?.trim() && !cells.to?.trim()) return ok({ type: 'size', form: 'length' });
  const now = from ? endsAsWritten(build, from.measure) : { from: '', to: '', axis: undefined };
  const fromText = cells.from?.trim() ?? now.from;
  const toText = cells.to?.trim() ?? now.to;
  const ends = readEnds(stationsOf(build, part), fromText, toText, now.axis);
  if (ends.ok) return ends;
  const problem = ends.error;
  switch (problem.code) {
    case 'one-end':
      return err({ code: 'cell-one-end', data: { row } });
    case 'unknown':
      return err({ code: 'cell-station-unknown', data: { row, field: problem.end, given: shorten(problem.given) } });
    case 'ambiguous':
      return err({ code: 'cell-station-ambiguous', data: { row, field: problem.end, given: shorten(problem.given) } });
    case 'same-station':
      return err({ code: 'cell-same-station', data: { row, given: shorten(fromText) } });
    case 'different-axes':
      return err({ code: 'cell-different-axes', data: { row, from: shorten(fromText), to: shorten(toText) } });
  }
}

function endsAsWritten(build: Build, measure: Measure): { from: string; to: string; axis: Axis | undefined } {
  if (measure.type === 'size') return { from: measure.form, to: '', axis: undefined };
  const from = recordOf(build, 'station', measure.from);
  const to = recordOf(build, 'station', measure.to);
  return { from: from?.name ?? '', to: to?.name ?? '', axis: from?.axis };
}
