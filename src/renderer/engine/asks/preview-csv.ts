import { idSource } from '../../../shared/base/ids.ts';
import type { CsvRow } from '../../../shared/build/csv.ts';
import { type ImportOptions, planImport, type RowReport } from '../../../shared/build/import-rows.ts';
import type { Ask } from '../view.ts';

export interface ImportPreview {
  /** Refused rows first, then in the order of the file. */
  readonly rows: readonly RowReport[];
  readonly counts: Readonly<Record<RowReport['outcome'], number>>;
}

/** What would become of every row. The plan's own ids are thrown away: the import draws its own. */
export const previewCsvAsk: Ask<
  { readonly rows: readonly CsvRow[]; readonly options: ImportOptions },
  ImportPreview
> = (scene, { rows, options }) => {
  const newId = idSource(() => crypto.getRandomValues(new Uint32Array(1))[0] ?? 0);
  const plan = planImport(scene.works.build, rows, options, { newId, now: '' });
  const counts = { added: 0, changed: 0, unchanged: 0, refused: 0 };
  for (const row of plan.rows) counts[row.outcome]++;
  const refusedFirst = plan.rows.toSorted(
    (a, b) => Number(b.outcome === 'refused') - Number(a.outcome === 'refused') || a.line - b.line,
  );
  return { rows: refusedFirst, counts };
};
