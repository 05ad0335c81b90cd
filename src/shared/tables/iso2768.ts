import { type RowStatus, rangeOf, ranges, rowInWords, type SizeRange, type TableTolerance } from './row.ts';

/** Fine, medium, coarse, very coarse. */
export type GeneralClass = 'f' | 'm' | 'c' | 'v';

/** `linear`: distances and diameters; `edge`: external radii and chamfer heights; `angle`: by its shorter leg. */
export type GeneralForm = 'linear' | 'edge' | 'angle';

interface GeneralTable {
  readonly source: string;
  readonly status: RowStatus;
  readonly ranges: readonly SizeRange[];
  /** ± per range; undefined where the standard leaves the cell empty. */
  readonly cells: Readonly<Record<GeneralClass, readonly (number | undefined)[]>>;
}

const NONE = undefined;
const ENDLESS = Number.POSITIVE_INFINITY;

// ISO 2768-1:1989, tables 1 and 2: read in two copies that agree, but for class c below 6 mm, where one of them has
// 0.15 and 0.2; 0.2 and 0.3 are kept.
const linear: GeneralTable = {
  source: 'ISO 2768-1:1989 table 1',
  status: 'read',
  ranges: ranges(0.5, 3, 6, 30, 120, 400, 1000, 2000, 4000),
  cells: {
    f: [0.05, 0.05, 0.1, 0.15, 0.2, 0.3, 0.5, NONE],
    m: [0.1, 0.1, 0.2, 0.3, 0.5, 0.8, 1.2, 2],
    c: [0.2, 0.3, 0.5, 0.8, 1.2, 2, 3, 4],
    v: [NONE, 0.5, 1, 1.5, 2.5, 4, 6, 8],
  },
};

const edge: GeneralTable = {
  source: 'ISO 2768-1:1989 table 2',
  status: 'read',
  ranges: ranges(0.5, 3, 6, ENDLESS),
  cells: {
    f: [0.2, 0.5, 1],
    m: [0.2, 0.5, 1],
    c: [0.4, 1, 2],
    v: [0.4, 1, 2],
  },
};

// Table 3, in degrees (from minutes), by the length of the shorter leg. From memory.
const minutes = (...values: readonly number[]): readonly number[] => values.map((value) => value / 60);

const angle: GeneralTable = {
  source: 'ISO 2768-1:1989 table 3',
  status: 'from memory',
  ranges: ranges(0, 10, 50, 120, 400, ENDLESS),
  cells: {
    f: minutes(60, 30, 20, 10, 5),
    m: minutes(60, 30, 20, 10, 5),
    c: minutes(90, 60, 30, 15, 10),
    v: minutes(180, 120, 60, 30, 20),
  },
};

const tables: Readonly<Record<GeneralForm, GeneralTable>> = { linear, edge, angle };

// The words of a row are made once, not for each of the thousands of dimensions that fall in it.
const rowsOf = (table: GeneralTable, klass: GeneralClass): readonly (TableTolerance | undefined)[] =>
  table.cells[klass].map((plusMinus, i) =>
    plusMinus === undefined
      ? undefined
      : {
          plusMinus,
          row: rowInWords(table.source, `class ${klass}`, table.ranges[i]!, table.status),
          status: table.status,
        },
  );

const rowsByClass = (table: GeneralTable): Readonly<Record<GeneralClass, readonly (TableTolerance | undefined)[]>> => ({
  f: rowsOf(table, 'f'),
  m: rowsOf(table, 'm'),
  c: rowsOf(table, 'c'),
  v: rowsOf(table, 'v'),
});

const rows = { linear: rowsByClass(linear), edge: rowsByClass(edge), angle: rowsByClass(angle) };

/**
 * General tolerance of ISO 2768-1:1989.
 *
 * @param sizeMm nominal size in mm; for `angle` the length of the shorter leg in mm. The smallest size of tables 1 and 2,
 * 0.5 mm, belongs to their first range.
 * @returns ± in mm (degrees for `angle`); undefined where the table has no cell and limits must be written.
 */
export function generalTolerance(klass: GeneralClass, form: GeneralForm, sizeMm: number): TableTolerance | undefined {
  const table = tables[form];
  const index = sizeMm === table.ranges[0]!.over && sizeMm > 0 ? 0 : rangeOf(table.ranges, sizeMm);
  return rows[form][klass][index];
}
