import type { Connection } from '../connection.ts';

export interface ReadRows {
  /** What could be read, in the order of the rows, each as `json` of its row. */
  readonly rows: readonly unknown[];
  /** How many places for rows could not be read; at least one is meant when not `whole`. */
  readonly failed: number;
  /** Whether the table was read to its end without a failure. */
  readonly whole: boolean;
}

/** The most reads spent on one damaged table: some seconds. */
const MAX_READS = 20_000;

/** Where the end of a table cannot be found out, its rows are looked for up to here. */
const FARTHEST_ROW = 1 << 17;

/**
 * Reads a table of which pages may be damaged: the range of rows is halved wherever reading fails, until what cannot be
 * read stands alone.
 * @param json SQL that builds the JSON of one row
 */
export async function readRows(connection: Connection, table: string, json: string): Promise<ReadRows> {
  const last = await readLastRow(connection, table);
  if (last === 'missing') return { rows: [], failed: 0, whole: false };
  const select = `select rowid as row, ${json} as json from "${table}" not indexed where rowid between ? and ? order by rowid`;
  if (last === undefined && (await isOutOfReach(connection, select))) return { rows: [], failed: 1, whole: false };
  const found: { readonly row: number; readonly record: unknown }[] = [];
  let failed = 0;
  let reads = 0;
  // Breadth first: when there is too much damage to see to the end, the large pieces have been tried.
  let ranges: (readonly [low: number, high: number])[] = [[1, last ?? FARTHEST_ROW]];
  while (ranges.length > 0 && reads < MAX_READS) {
    const next: (readonly [number, number])[] = [];
    for (const [low, high] of ranges) {
      if (reads++ >= MAX_READS) break;
      try {
        for (const row of await connection.all(select, [low, high])) {
          found.push({ row: Number(row.row), record: JSON.parse(String(row.json)) });
        }
      } catch {
        if (low >= high) failed += 1;
        else {
          const middle = Math.floor((low + high) / 2);
          next.push([low, middle], [middle + 1, high]);
        }
      }
    }
    ranges = next;
  }
  found.sort((a, b) => a.row - b.row);
  // Damaged trees may lead to the same row twice.
  const rows = found.filter(({ row }, i) => row !== found[i - 1]?.row).map(({ record }) => record);
  return { rows, failed, whole: failed === 0 && ranges.length === 0 && last !== undefined };
}

/** @returns the number of the last row; undefined when it cannot be told, `missing` when there is no such table. */
async function readLastRow(connection: Connection, table: string): Promise<number | undefined | 'missing'> {
  try {
    const [answer] = await connection.all(`select max(rowid) as last from "${table}" not indexed`);
    return Number(answer?.last ?? 0);
  } catch (error) {
    return error instanceof Error && error.message.includes('no such table') ? 'missing' : undefined;
  }
}

/** So close together that hardly a page of rows fits between two soundings where small tables have their rows … */
const NEAR = { upTo: 2_048, step: 8 } as const;
/** … and in this many steps per doubling beyond. */
const STEPS_PER_DOUBLING = 16;

/**
 * A table whose first page is destroyed fails wherever it is read: found out by a few hundred soundings instead of all
 * {@link MAX_READS}, which would keep the user waiting for nothing.
 */
async function isOutOfReach(connection: Connection, select: string): Promise<boolean> {
  for (const row of soundings()) {
    const isSound = await connection.all(select, [row, row]).then(
      () => true,
      () => false,
    );
    if (isSound) return false;
  }
  return true;
}

function* soundings(): Generator<number> {
  for (let row = 1; row < NEAR.upTo; row += NEAR.step) yield row;
  for (let low: number = NEAR.upTo; low < FARTHEST_ROW; low *= 2) {
    for (let step = 0; step < STEPS_PER_DOUBLING; step++) yield low + (low / STEPS_PER_DOUBLING) * step;
  }
  yield FARTHEST_ROW;
}
