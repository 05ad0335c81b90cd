import Papa from 'papaparse';
import { err, ok, type Result } from '../base/result.ts';
import type { Dimension } from './dimension.ts';
import { limitsToColumns } from './limits-columns.ts';
import { dimensionsOf, partsOf, recordOf } from './look-up.ts';
import type { Build } from './records.ts';

/**
 * The columns of a table of dimensions. A distance has stations under `from` and `to` and its axis (X, Y, Z) under `axis`;
 * a size leaves `from` and `to` empty and has its form (diameter, radius, length, angle, thread, count, mass, temperature)
 * under `axis`.
 */
export const csvColumns = ['part', 'name', 'from', 'to', 'axis', 'value', 'plus', 'minus', 'source', 'sheet'] as const;
export type CsvColumn = (typeof csvColumns)[number];

/** One line of a table, as read: a column that the table lacks is empty. */
export type CsvRow = Readonly<Record<CsvColumn, string>> & {
  /** Line of the file on which the row begins, counted from 1. */
  readonly line: number;
};

export interface CsvTable {
  readonly rows: readonly CsvRow[];
  /** Columns of the file that mean nothing here. */
  readonly ignored: readonly string[];
}

/** Why a whole file cannot be read as a table; single rows are judged later. */
export interface CsvProblem {
  readonly code: 'empty' | 'column-missing' | 'column-twice' | 'unclosed-quote' | 'too-many-rows';
  readonly line: number;
  readonly sentence: string;
  readonly remedy: string;
}

const delimiters = [',', ';', '\t'] as const;

/** More rows than any build has dimensions; a file beyond it is another kind of file. */
const MOST_ROWS = 200_000;

/**
 * Reads a table of dimensions: comma, semicolon or tab between the cells, names of columns in any order and in upper or
 * lower case. In a file with semicolons `12,5` is twelve and a half.
 */
export function readCsv(text: string): Result<CsvTable, CsvProblem> {
  const clean = text.startsWith('\uFEFF') ? text.slice(1) : text;
  const delimiter = delimiterOf(clean);
  const parsed = splitRows(clean, delimiter);
  if (!parsed.ok) return parsed;
  const [head, ...body] = parsed.value.filter(({ cells }) => cells.some((cell) => cell.trim() !== ''));
  if (!head) {
    return err({
      code: 'empty',
      line: 1,
      sentence: 'The file is empty.',
      remedy: `Give it a line of column names (${csvColumns.join(', ')}) and a line for each dimension.`,
    });
  }
  if (body.length > MOST_ROWS) {
    return err({
      code: 'too-many-rows',
      line: head.line,
      sentence: `The file has more than ${MOST_ROWS} rows.`,
      remedy: 'Import it in several pieces.',
    });
  }
  const columns = columnsOf(head.cells, head.line);
  if (!columns.ok) return columns;
  const { places, ignored } = columns.value;
  const decimalComma = delimiter === ';';
  const rows = body.map(({ cells, line }) => {
    const row = { line } as Record<CsvColumn, string> & { line: number };
    for (const column of csvColumns) {
      const cell = (cells[places.get(column) ?? -1] ?? '').trim();
      const isNumber = column === 'value' || column === 'plus' || column === 'minus';
      row[column] = decimalComma && isNumber ? withPoint(cell) : cell;
    }
    return row;
  });
  return ok({ rows, ignored });
}

/** The delimiter under which the first line holds the most names of columns. */
function delimiterOf(text: string): string {
  const firstLine = /[^\r\n]*\S[^\r\n]*/.exec(text)?.[0] ?? '';
  const known = (delimiter: string): number =>
    firstLine.split(delimiter).filter((cell) => csvColumns.some((column) => column === columnKey(cell))).length;
  return [...delimiters].sort((a, b) => known(b) - known(a))[0] ?? ',';
}

const columnKey = (cell: string): string =>
  cell
    .trim()
    .replace(/^"(.*)"$/, '$1')
    .trim()
    .toLowerCase();

interface RawRow {
  readonly line: number;
  readonly cells: readonly string[];
}

function splitRows(text: string, delimiter: string): Result<readonly RawRow[], CsvProblem> {
  const rows: RawRow[] = [];
  let line = 1;
  let cursor = 0;
  let unclosed: number | undefined;
  Papa.parse<string[]>(text, {
    delimiter,
    skipEmptyLines: false,
    step: ({ data, errors, meta }) => {
      if (errors.some(({ code }) => code === 'MissingQuotes')) unclosed ??= line;
      rows.push({ line, cells: data });
      // A cell in quotation marks may hold line ends, so rows and lines are not the same count.
      line += text.slice(cursor, meta.cursor).match(/\r\n|\r|\n/g)?.length ?? 0;
      cursor = meta.cursor;
    },
  });
  if (unclosed !== undefined) {
    return err({
      code: 'unclosed-quote',
      line: unclosed,
      sentence: 'A cell begins with a quotation mark and does not end with one.',
      remedy: 'Close it, and write a quotation mark inside a cell (an inch mark) twice.',
    });
  }
  return ok(rows);
}

function columnsOf(
  cells: readonly string[],
  line: number,
): Result<{ places: ReadonlyMap<CsvColumn, number>; ignored: readonly string[] }, CsvProblem> {
  const places = new Map<CsvColumn, number>();
  const ignored: string[] = [];
  for (const [i, cell] of cells.entries()) {
    const column = csvColumns.find((known) => known === columnKey(cell));
    if (!column) {
      if (cell.trim() !== '') ignored.push(cell.trim());
    } else if (places.has(column)) {
      return err({
        code: 'column-twice',
        line,
        sentence: `Two columns are called "${column}".`,
        remedy: 'Keep one of them.',
      });
    } else places.set(column, i);
  }
  for (const column of ['part', 'name'] as const) {
    if (places.has(column)) continue;
    return err({
      code: 'column-missing',
      line,
      sentence: `The first line names no column "${column}".`,
      remedy: `Name the columns in the first line: ${csvColumns.join(', ')}.`,
    });
  }
  return ok({ places, ignored });
}

/** `12,5` to `12.5`; a text with more than one comma, or with a comma between other things, stays as it is. */
const withPoint = (cell: string): string => {
  const match = /^([^,]*\d),(\d+[^,\d]*)$/.exec(cell);
  return match && !/[a-z(]/i.test(match[1] ?? '') ? `${match[1]}.${match[2]}` : cell;
};

/** Writes the dimensions of a build, part by part in list order, in the columns that `readCsv` reads. */
export function writeCsv(build: Build): string {
  const rows = partsOf(build).flatMap((part) =>
    dimensionsOf(build, part.id).map((dimension) => [part.name, dimension.name, ...cellsOf(build, dimension)]),
  );
  return `${Papa.unparse([[...csvColumns], ...rows], { newline: '\r\n' })}\r\n`;
}

function cellsOf(build: Build, dimension: Dimension): readonly string[] {
  const { measure } = dimension;
  const { plus, minus } = limitsToColumns(dimension.limits);
  const rest = [dimension.value, plus, minus, dimension.source, dimension.sheet];
  if (measure.type === 'size') return ['', '', measure.form, ...rest];
  const from = recordOf(build, 'station', measure.from);
  const to = recordOf(build, 'station', measure.to);
  return [from?.name ?? '', to?.name ?? '', from?.axis ?? '', ...rest];
}
