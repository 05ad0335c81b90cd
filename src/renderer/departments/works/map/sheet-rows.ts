import type { OpenedDimension, OpenedGroup, OpenedPart, OpenedStation } from '../../../engine/views/opened.ts';

/** A row of an opened part: the heading of an axis, or a dimension beside the station that it places. */
export type SheetRow =
  | { readonly kind: 'head'; readonly title: string; readonly counts: string }
  | {
      readonly kind: 'pair';
      readonly dimension: OpenedDimension | undefined;
      readonly station: OpenedStation | undefined;
    };

export const CLOSED = { width: 212, height: 79 } as const;
export const SHEET = {
  width: 516,
  row: 22,
  /** Left margin, in which dimensions that feed one another are joined. */
  margin: 36,
  dimensions: 232,
  gutter: 40,
} as const;

const counted = (count: number, one: string): string => `${count} ${one}${count === 1 ? '' : 's'}`;

/** Stations by their place along the axis, each with the dimension that places it beside it; the rest after. */
export function sheetRows({ groups }: OpenedPart): readonly SheetRow[] {
  return groups.flatMap((group) => [headOf(group), ...pairsOf(group)]);
}

function headOf({ axis, dimensions, stations }: OpenedGroup): SheetRow {
  const counts =
    axis === undefined
      ? `${dimensions.length}`
      : `${counted(stations.length, 'station')}, ${counted(dimensions.length, 'dimension')}`;
  return { kind: 'head', title: axis === undefined ? 'Sizes' : `Axis ${axis}`, counts };
}

function pairsOf({ dimensions, stations }: OpenedGroup): readonly SheetRow[] {
  const placing = new Map(
    dimensions.flatMap((each) => (each.places === undefined ? [] : [[each.places as string, each]])),
  );
  const pairs = stations.map((station): SheetRow => ({ kind: 'pair', station, dimension: placing.get(station.id) }));
  const shown = new Set(stations.map(({ id }) => placing.get(id)));
  const rest = dimensions.filter((each) => !shown.has(each));
  return [...pairs, ...rest.map((dimension): SheetRow => ({ kind: 'pair', station: undefined, dimension }))];
}

/** Every station and dimension of a sheet in reading order. */
export const sheetOrder = (rows: readonly SheetRow[]) =>
  rows.flatMap((row) =>
    row.kind === 'head' ? [] : [row.dimension?.id, row.station?.id].filter((id) => id !== undefined),
  );

export const sheetSize = (rows: readonly SheetRow[]) => ({
  width: SHEET.width,
  height: CLOSED.height + rows.length * SHEET.row + 8,
});

/** Middle of each dimension's row, in px from the top of the sheet. */
export function rowMiddles(rows: readonly SheetRow[]): ReadonlyMap<string, number> {
  const middles = new Map<string, number>();
  for (const [i, row] of rows.entries()) {
    if (row.kind === 'pair' && row.dimension !== undefined)
      middles.set(row.dimension.id, CLOSED.height + (i + 0.5) * SHEET.row);
  }
  return middles;
}
