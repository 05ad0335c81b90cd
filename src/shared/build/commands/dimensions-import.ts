import { err, ok } from '../../base/result.ts';
import { defineCommand } from '../command.ts';
import type { CsvRow } from '../csv.ts';
import { type ImportOptions, planImport } from '../import-rows.ts';
import { counted } from '../names.ts';

export interface DimensionsImport {
  readonly rows: readonly CsvRow[];
  readonly options: ImportOptions;
}

/** Takes the good rows of a table in one step; `planImport` tells beforehand which they are, and why the others are not. */
export default defineCommand<DimensionsImport>({
  id: 'dimensions-import',
  run(build, { rows, options }, context) {
    const plan = planImport(build, rows, options, context);
    const taken = plan.rows.filter(({ outcome }) => outcome === 'added' || outcome === 'changed').length;
    const refused = plan.rows.filter(({ outcome }) => outcome === 'refused').length;
    if (taken === 0 && refused > 0) return err({ code: 'no-row-taken', data: { rows: rows.length } });
    return ok({ diff: plan.diff, label: `import ${counted(taken, 'dimension')}` });
  },
});
