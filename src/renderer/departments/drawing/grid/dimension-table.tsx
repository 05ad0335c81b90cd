import { useCallback, useMemo, useState } from 'react';
import type { DimensionId } from '../../../../shared/base/ids.ts';
import { type CellField, cellFields } from '../../../../shared/build/commands/cells-set.ts';
import { type Measure, sizeForms } from '../../../../shared/build/dimension.ts';
import { nameKey } from '../../../../shared/formula/name-key.ts';
import { nearestName } from '../../../../shared/formula/nearest-name.ts';
import { askName } from '../../../app/naming.ts';
import { notify, notifyOutcome } from '../../../app/notices.ts';
import { goTo, usePlace } from '../../../app/place.ts';
import { useEngine, useIsEditable } from '../../../engine/use-engine.ts';
import type { DimensionRow, PartSheet } from '../../../engine/views/part.ts';
import { SeverityMark } from '../../../kit/marks.tsx';
import { dimensionColumns, type Halves } from './dimension-columns.tsx';
import { Grid } from './grid.tsx';

const keyOf = (row: DimensionRow): string => row.record.id;
const markOf = (row: DimensionRow) => row.mark !== undefined && <SeverityMark severity={row.mark} />;
const lookOf = (row: DimensionRow): string => (row.record.source === 'assumed' ? 'assumed' : '');
const isField = (id: string): id is CellField => (cellFields as readonly string[]).includes(id);

/** Every dimension of a part, written in place. */
export function DimensionTable({ sheet }: { readonly sheet: PartSheet }) {
  const engine = useEngine();
  const editable = useIsEditable();
  const { subject, also } = usePlace();
  const [halves, setHalves] = useState<Halves>(new Map());
  const part = sheet.part.id;
  const { stations, unit } = sheet;
  const columns = useMemo(
    () => dimensionColumns({ part, unit, stations, halves, engine }),
    [part, unit, stations, halves, engine],
  );
  const setHalf = (key: string, from: string | undefined) =>
    setHalves((now) => {
      const next = new Map(now);
      if (from === undefined) next.delete(key);
      else next.set(key, from);
      return next;
    });
  const onSelect = useCallback((key: string | undefined) => goTo({ subject: key as DimensionId | undefined }), []);

  /** What "from" and "to" mean, once both are known. @returns a sentence when they mean nothing. */
  const measureOf = (from: string, to: string): Measure | string | 'half' => {
    const form = sizeForms.find((each) => each === nameKey(from));
    if (form !== undefined && to === '') return { type: 'size', form };
    const stationNames = sheet.stations.map(({ record }) => record.name);
    const named = (name: string) => sheet.stations.filter(({ record }) => nameKey(record.name) === nameKey(name));
    const starts = named(from);
    if (starts.length === 0) {
      const near = nearestName(from, [...stationNames, ...sizeForms]);
      return near === undefined
        ? `There is no station "${from}" in this part. Add it under Stations, or write a size such as "diameter".`
        : `There is no station "${from}" in this part. Did you mean "${near}"? Otherwise add it under Stations.`;
    }
    if (to === '') return 'half';
    const ends = named(to);
    if (ends.length === 0) {
      const near = nearestName(to, stationNames);
      const remedy = near === undefined ? 'Add it under Stations first.' : `Did you mean "${near}"?`;
      return `There is no station "${to}" in this part. ${remedy}`;
    }
    for (const start of starts)
      for (const end of ends)
        if (start.record.axis === end.record.axis && start !== end)
          return { type: 'between', from: start.record.id, to: end.record.id };
    return `"${from}" and "${to}" do not lie along the same axis. Choose two stations of one axis.`;
  };
  const commitEnds = async (
    row: DimensionRow | undefined,
    column: 'from' | 'to',
    text: string,
  ): Promise<string | undefined> => {
    const key = row?.record.id ?? 'new';
    const from = column === 'from' ? text : (halves.get(key) ?? row?.from ?? '');
    const wasBetween = row?.record.measure.type === 'between';
    const to = column === 'to' ? text : wasBetween && !sizeForms.some((form) => form === nameKey(text)) ? row.to : '';
    if (from === '')
      return text === '' ? undefined : 'Write first, under "From / size", the station that it runs from.';
    if (column === 'to' && text === '')
      return wasBetween ? 'Write a size such as "length" under "From / size" to make it one.' : undefined;
    const measure = measureOf(from, to);
    if (measure === 'half') {
      setHalf(key, from);
      return undefined;
    }
    if (typeof measure === 'string') return measure;
    const outcome =
      row === undefined
        ? await engine.run('dimension-add', { part, measure })
        : await engine.run('dimension-set', { changes: [{ dimension: row.record.id, set: { measure } }] });
    if (!outcome.ok) return outcome.sentence;
    setHalf(key, undefined);
    return undefined;
  };
  const onCommit = async (row: DimensionRow | undefined, column: string, text: string): Promise<string | undefined> => {
    if (column === 'from' || column === 'to') return commitEnds(row, column, text);
    if (!isField(column) || (row === undefined && text === '')) return undefined;
    const set = { [column]: text };
    const outcome =
      row === undefined
        ? await engine.run('dimension-add', { part, measure: { type: 'size', form: 'length' }, set })
        : await engine.run('dimension-set', { changes: [{ dimension: row.record.id, set }] });
    return outcome.ok ? undefined : outcome.sentence;
  };
  const onClear = (rows: readonly DimensionRow[], ids: readonly string[]) => {
    const fields = ids.filter((id) => ['value', 'limits', 'sheet', 'note'].includes(id));
    if (fields.length === 0 || rows.length === 0)
      return notify({ sentence: 'This cannot be left empty. Ctrl+Delete removes the whole row.', isRefusal: true });
    const set = Object.fromEntries(fields.map((field) => [field, '']));
    void engine
      .run('dimension-set', { changes: rows.map((row) => ({ dimension: row.record.id, set })) })
      .then(notifyOutcome);
  };
  const onPaste = (at: number, column: number, block: readonly (readonly string[])[]) => {
    const rows = block.map((line, i) => {
      const cells: Partial<Record<CellField, string>> = {};
      line.forEach((text, c) => {
        const id = columns[column + c]?.id;
        if (id !== undefined && isField(id)) cells[id] = text;
      });
      return { dimension: sheet.dimensions[at + i]?.record.id, cells };
    });
    void engine.run('cells-set', { part, rows }).then(notifyOutcome);
  };
  return (
    <Grid
      label={`Dimensions of ${sheet.part.name}`}
      columns={columns}
      rows={sheet.dimensions}
      keyOf={keyOf}
      markOf={markOf}
      lookOf={lookOf}
      selected={subject}
      also={also}
      onSelect={onSelect}
      editable={editable}
      onCommit={onCommit}
      onClear={onClear}
      onPaste={onPaste}
      onInsert={(before) =>
        void engine
          .run('dimension-add', {
            part,
            measure: { type: 'size', form: 'length' },
            ...(before === undefined ? {} : { before: before.record.id }),
          })
          .then((outcome) => {
            notifyOutcome(outcome);
            if (!outcome.ok) return;
            goTo({ subject: outcome.added[0] });
            askName(outcome.added[0]);
          })
      }
      onRemove={(rows) =>
        rows.length > 0 &&
        void engine.run('dimension-remove', { dimensions: rows.map((row) => row.record.id) }).then(notifyOutcome)
      }
      hint="new dimension"
      newText={(column) => (column === 'from' ? halves.get('new') : undefined)}
    />
  );
}
