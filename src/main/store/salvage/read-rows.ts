import type { Connection } from '../connection.ts';

export interface ReadRows {
  /** What could be read, in the order of the rows, each as `json` of its row. */
  readonly rows: readonly unknown[];
  /** How many places for rows could not be read; at least one is meant when not `whole`. */
  readonly failed: number;
  /** Whether the table was read to its end without a failure. */
  readonly whole: boolean;
}

interface Found {
  readonly row: number;
  readonly record: unknown;
}

type Range = readonly [low: number, high: number];

/** The most reads spent on one stretch of a damaged table: about a second. */
const MAX_READS = 5_000;

/** When so many reads have found nothing at all, the way into the table is destroyed, not some of its rows. */
const MAX_READS_IN_VAIN = 60;

/** Rows looked for at first, and then in twice as many each time, where the end of the table cannot be found out. */
const FIRST_STRETCH = 64;

/**
 * Reads a table of which pages may be damaged: the range of rows is halved wherever reading fails, until what cannot be
 * read stands alone.
 * @param json SQL that builds the JSON of one row
 */
export async function readRows(connection: Connection, table: string, json: string): Promise<ReadRows> {
  const last = await readLastRow(connection, table);
  if (last === 'missing') return { rows: [], failed: 0, whole: false };
  const select = `select rowid as row, ${json} as json from "${table}" not indexed where rowid between ? and ? order by rowid`;
  const read = async ([low, high]: Range): Promise<readonly Found[]> =>
    (await connection.all(select, [low, high])).map(({ row, json: text }) => ({
      row: Number(row),
      record: JSON.parse(String(text)),
    }));
  if (last !== undefined) {
    const { found, failed, complete } = await readStretch(read, [1, last]);
    return { rows: inOrder(found), failed, whole: failed === 0 && complete };
  }
  const found: Found[] = [];
  for (let low = 1, length = FIRST_STRETCH; ; low += length, length *= 2) {
    const stretch = await readStretch(read, [low, low + length - 1]);
    found.push(...stretch.found);
    if (stretch.found.length === 0) break;
  }
  // How many were beyond is not known.
  return { rows: inOrder(found), failed: 0, whole: false };
}

async function readStretch(
  read: (range: Range) => Promise<readonly Found[]>,
  stretch: Range,
): Promise<{ readonly found: readonly Found[]; readonly failed: number; readonly complete: boolean }> {
  const found: Found[] = [];
  let failed = 0;
  let reads = 0;
  const isHopeless = () => reads >= MAX_READS || (reads >= MAX_READS_IN_VAIN && found.length === 0);
  // Breadth first: when there is too much damage to see to the end, the large pieces have been tried.
  let ranges: readonly Range[] = [stretch];
  while (ranges.length > 0) {
    const next: Range[] = [];
    for (const range of ranges) {
      if (isHopeless()) return { found, failed, complete: false };
      reads += 1;
      const [low, high] = range;
      try {
        found.push(...(await read(range)));
      } catch {
        const middle = Math.floor((low + high) / 2);
        if (low >= high) failed += 1;
        else next.push([low, middle], [middle + 1, high]);
      }
    }
    ranges = next;
  }
  return { found, failed, complete: true };
}

/** In the order of rows; damaged trees may lead to the same row twice. */
function inOrder(found: readonly Found[]): readonly unknown[] {
  const sorted = [...found].sort((a, b) => a.row - b.row);
  return sorted.filter(({ row }, i) => row !== sorted[i - 1]?.row).map(({ record }) => record);
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
