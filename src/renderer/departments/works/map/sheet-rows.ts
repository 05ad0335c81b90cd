import type { OpenedDimension, OpenedGroup, OpenedPart, OpenedStation } from '../../../engine/views/opened.ts';

/** A row of an opened part: the heading of an axis, or a dimension beside the station that it places. */
export type SheetRow =
  | { readonly kind: 'head'; readonly title: string; readonly dimensions: string; readonly stations: string }
  | {
      readonly kind: 'pair';
      readonly dimension: OpenedDimension | undefined;
      readonly station: OpenedStation | undefined;
    };

export const CLOSED = { width: 204, height: 79 } as const;
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
  return {
    kind: 'head',
    title: axis === undefined ? 'Sizes' : `Axis ${axis}`,
    dimensions: counted(dimensions.length, 'dimension'),
    stations: axis === undefined ? '' : counted(stations.length, 'station'),
  };
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

/** Where a dimension's row lies on its sheet. */
export interface RowPlace {
  /** In px from the top of the sheet. */
  readonly middle: number;
  /** No station stands beside it. */
  readonly isFree: boolean;
}

export function rowPlaces(rows: readonly SheetRow[]): ReadonlyMap<string, RowPlace> {
  const places = new Map<string, RowPlace>();
  for (const [i, row] of rows.entries()) {
    if (row.kind === 'head' || row.dimension === undefined) continue;
    places.set(row.dimension.id, { middle: CLOSED.height + (i + 0.5) * SHEET.row, isFree: row.station === undefined });
  }
  return places;
}

/** Middle of the row of a station or dimension, in px from the top of the sheet. */
export function rowMiddle(rows: readonly SheetRow[], id: string): number | undefined {
  const at = rows.findIndex((row) => row.kind === 'pair' && (row.dimension?.id === id || row.station?.id === id));
  return at < 0 ? undefined : CLOSED.height + (at + 0.5) * SHEET.row;
}
