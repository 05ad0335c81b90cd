import { useCallback, useMemo } from 'react';
import type { StationId } from '../../../../shared/base/ids.ts';
import { type Axis, axes, stationForms } from '../../../../shared/build/station.ts';
import { askName } from '../../../app/naming.ts';
import { notify, notifyOutcome } from '../../../app/notices.ts';
import { goTo, usePlace } from '../../../app/place.ts';
import { useEngine, useIsEditable } from '../../../engine/use-engine.ts';
import type { PartSheet, StationRow } from '../../../engine/views/part.ts';
import { SeverityMark } from '../../../kit/marks.tsx';
import type { Column } from './column.ts';
import { Grid } from './grid.tsx';

const keyOf = (row: StationRow): string => row.record.id;
const markOf = (row: StationRow) => row.mark !== undefined && <SeverityMark severity={row.mark} />;

const columns: readonly Column<StationRow>[] = [
  { id: 'name', title: 'Station', width: 190, grows: true, text: (row) => row.record.name, edit: {} },
  { id: 'axis', title: 'Axis', width: 60, text: (row) => row.record.axis, edit: { choices: axes } },
  { id: 'form', title: 'What it is', width: 110, text: (row) => row.record.form, edit: { choices: stationForms } },
  {
    id: 'datum',
    title: 'Datum',
    about: 'The station that the others of its axis are placed from',
    width: 74,
    text: (row) => (row.record.datum ? 'datum' : ''),
    edit: { choices: ['', 'datum'] },
  },
  {
    id: 'at',
    title: 'Stands at',
    about: 'Place from the datum, as the dimensions give it',
    width: 110,
    figure: 'right',
    text: (row) => row.at ?? '',
    show: (row) => row.at ?? <span className="soft">not placed</span>,
  },
  {
    id: 'band',
    title: 'May stray by',
    about: 'Worst case of the limits along the chain from the datum',
    width: 140,
    figure: 'right',
    text: (row) => row.band ?? '',
  },
  { id: 'note', title: 'Note', width: 180, grows: true, text: (row) => row.record.note, edit: {} },
];

/** Every station of a part, written in place. */
export function StationTable({ sheet }: { readonly sheet: PartSheet }) {
  const engine = useEngine();
  const editable = useIsEditable();
  const { subject, also } = usePlace();
  const part = sheet.part.id;
  const onSelect = useCallback((key: string | undefined) => goTo({ subject: key as StationId | undefined }), []);
  const lastAxis: Axis = useMemo(() => sheet.stations.at(-1)?.record.axis ?? 'X', [sheet]);

  const onCommit = async (row: StationRow | undefined, column: string, text: string): Promise<string | undefined> => {
    if (row === undefined) {
      if (text === '') return undefined;
      const axis = column === 'axis' ? (text as Axis) : lastAxis;
      const set = column === 'name' || column === 'note' ? { [column]: text } : {};
      const outcome = await engine.run('station-add', { part, axis, set });
      return outcome.ok ? undefined : outcome.sentence;
    }
    const station = row.record.id;
    const outcome =
      column === 'datum'
        ? await engine.run('datum-set', { station, datum: text === 'datum' })
        : await engine.run('station-set', { changes: [{ station, set: { [column]: text } }] });
    return outcome.ok ? undefined : outcome.sentence;
  };
  const onPaste = async (at: number, column: number, block: readonly (readonly string[])[]) => {
    for (const [i, line] of block.entries()) {
      const row = sheet.stations[at + i];
      const cells = Object.fromEntries(line.map((text, c) => [columns[column + c]?.id ?? '', text.trim()]));
      const set = pick(cells, ['name', 'form', 'note']);
      const axis = axes.find((each) => each === cells.axis?.toUpperCase());
      const outcome =
        row === undefined
          ? await engine.run('station-add', { part, axis: axis ?? lastAxis, set })
          : await engine.run('station-set', {
              changes: [{ station: row.record.id, set: axis === undefined ? set : { ...set, axis } }],
            });
      if (outcome.ok) continue;
      return notify({
        sentence: `Row ${i + 1} of the pasted block was not taken: ${outcome.sentence}`,
        isRefusal: true,
      });
    }
  };
  const onRemove = async (rows: readonly StationRow[]) => {
    if (rows.length === 0) return;
    const outcome = notifyOutcome(await engine.run('station-remove', { stations: rows.map((row) => row.record.id) }));
    if (outcome.ok) notify({ sentence: `Done: ${outcome.label}. Undo brings it back.`, isRefusal: false });
  };
  return (
    <Grid
      label={`Stations of ${sheet.part.name}`}
      columns={columns}
      rows={sheet.stations}
      keyOf={keyOf}
      markOf={markOf}
      selected={subject}
      also={also}
      onSelect={onSelect}
      editable={editable}
      onCommit={onCommit}
      onClear={(rows, ids) => {
        if (!ids.includes('note'))
          return notify({ sentence: 'This cannot be left empty. Ctrl+Delete removes the whole row.', isRefusal: true });
        void engine
          .run('station-set', { changes: rows.map((row) => ({ station: row.record.id, set: { note: '' } })) })
          .then(notifyOutcome);
      }}
      onPaste={(at, column, block) => void onPaste(at, column, block)}
      onInsert={(before) =>
        void engine
          .run('station-add', {
            part,
            axis: before?.record.axis ?? lastAxis,
            ...(before === undefined ? {} : { before: before.record.id }),
          })
          .then((outcome) => {
            notifyOutcome(outcome);
            if (!outcome.ok) return;
            goTo({ subject: outcome.added[0] });
            askName(outcome.added[0]);
          })
      }
      onRemove={(rows) => void onRemove(rows)}
      hint="new station"
    />
  );
}

const pick = (cells: Readonly<Record<string, string>>, fields: readonly string[]) =>
  Object.fromEntries(fields.flatMap((field) => (cells[field] ? [[field, cells[field]]] : [])));
