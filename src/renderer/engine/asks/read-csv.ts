import type { Result } from '../../../shared/base/result.ts';
import { type CsvProblem, type CsvTable, readCsv } from '../../../shared/build/csv.ts';
import type { Ask } from '../view.ts';

/** Reads a table of dimensions off the screen's thread. */
export const readCsvAsk: Ask<{ readonly text: string }, Result<CsvTable, CsvProblem>> = (_scene, { text }) =>
  readCsv(text);
