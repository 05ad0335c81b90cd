import { useState } from 'react';
import type { CsvRow } from '../../shared/build/csv.ts';
import { type ImportOptions, usualImport } from '../../shared/build/import-rows.ts';
import type { ImportPreview } from '../engine/asks/preview-csv.ts';
import { useEngine } from '../engine/use-engine.ts';
import { Button } from '../kit/button.tsx';
import { Dialog } from '../kit/dialog.tsx';
import { notify } from './notices.ts';
import { pickText } from './picking.ts';

interface Picked {
  readonly name: string;
  readonly rows: readonly CsvRow[];
  readonly preview: ImportPreview;
}

const outcomes = { added: 'added', changed: 'changed', unchanged: 'as it is', refused: 'refused' } as const;
const ROWS_SHOWN = 300;

/** Takes dimensions from a table: first a report row by row, then, if the reader agrees, the good rows in one step. */
export function ImportCsvDialog({ onClose }: { readonly onClose: () => void }) {
  const engine = useEngine();
  const [picked, setPicked] = useState<Picked>();
  const [options, setOptions] = useState<ImportOptions>(usualImport);
  const [error, setError] = useState<string>();

  const choose = async () => {
    const file = await pickText('csv');
    if (file === undefined) return;
    setPicked(undefined);
    if (!file.ok) return setError(file.sentence);
    const read = await engine.ask('read-csv', { text: file.text });
    if (read === undefined) return;
    if (!read.ok) return setError(`${file.name}, line ${read.error.line}: ${read.error.sentence} ${read.error.remedy}`);
    setError(undefined);
    await look(file.name, read.value.rows, options);
  };
  const look = async (name: string, rows: readonly CsvRow[], how: ImportOptions) => {
    const preview = await engine.ask('preview-csv', { rows, options: how });
    if (preview !== undefined) setPicked({ name, rows, preview });
  };
  const change = (how: ImportOptions) => {
    setOptions(how);
    if (picked !== undefined) void look(picked.name, picked.rows, how);
  };
  const take = async () => {
    if (picked === undefined) return;
    const outcome = await engine.run('dimensions-import', { rows: picked.rows, options });
    if (!outcome.ok) return setError(outcome.sentence);
    const { refused } = picked.preview.counts;
    notify({
      sentence: `Done: ${outcome.label}.${refused > 0 ? ` ${refused} rows of ${picked.name} were refused and left out.` : ''}`,
      isRefusal: false,
    });
    onClose();
  };
  const counts = picked?.preview.counts;
  const good = (counts?.added ?? 0) + (counts?.changed ?? 0);
  return (
    <Dialog
      title="Import dimensions"
      wide
      onClose={onClose}
      actions={
        <>
          <Button onClick={onClose}>Cancel</Button>
          <Button look={picked === undefined ? 'main' : 'plain'} onClick={() => void choose()}>
            {picked === undefined ? 'Choose File…' : 'Choose Another File…'}
          </Button>
          {picked !== undefined && (
            <Button look="main" disabled={good === 0} onClick={() => void take()}>
              Take {good} {good === 1 ? 'Row' : 'Rows'}
            </Button>
          )}
        </>
      }
    >
      {error !== undefined && <p className="mark stop import-error">{error}</p>}
      {picked === undefined && (
        <p>
          A table with a line of column names:{' '}
          <span className="figure">part, name, from, to, axis, value, plus, minus, source, sheet</span>, in any order,
          with commas, semicolons or tabs between. A size has its form, such as diameter or thread, in the place of the
          axis. Nothing is taken before you have seen what becomes of every row.
        </p>
      )}
      <fieldset className="import-options">
        <legend className="lettering soft">What is not there yet</legend>
        <label>
          <input
            type="checkbox"
            checked={options.addParts}
            onChange={(event) => change({ ...options, addParts: event.target.checked })}
          />
          add parts that are named and not there
        </label>
        <label>
          <input
            type="checkbox"
            checked={options.addStations}
            onChange={(event) => change({ ...options, addStations: event.target.checked })}
          />
          add stations where the row gives the axis
        </label>
      </fieldset>
      {picked !== undefined && counts !== undefined && (
        <>
          <p>
            {picked.name}: {counts.added} new, {counts.changed} changed, {counts.unchanged} as they are,{' '}
            {counts.refused} refused. A refused row leaves nothing behind.
          </p>
          <div className="import-report">
            <table className="report">
              <thead>
                <tr>
                  <th>Line</th>
                  <th>Part</th>
                  <th>Dimension</th>
                  <th>Outcome</th>
                  <th>What, or why not</th>
                </tr>
              </thead>
              <tbody>
                {picked.preview.rows.slice(0, ROWS_SHOWN).map((row) => (
                  <tr key={row.line}>
                    <td className="figure">{row.line}</td>
                    <td>{row.part}</td>
                    <td>{row.name}</td>
                    <td className={row.outcome === 'refused' ? 'mark stop' : undefined}>{outcomes[row.outcome]}</td>
                    <td>{row.outcome === 'refused' ? `${row.reason} ${row.remedy}` : row.what.join(', ')}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </div>
          {picked.preview.rows.length > ROWS_SHOWN && (
            <p className="soft">
              The first {ROWS_SHOWN} rows are shown, refused ones first; {picked.preview.rows.length - ROWS_SHOWN} more
              follow.
            </p>
          )}
        </>
      )}
    </Dialog>
  );
}
