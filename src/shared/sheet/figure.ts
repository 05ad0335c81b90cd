import type { DimensionId, StationId } from '../base/ids.ts';
import type { Dimension } from '../build/dimension.ts';
import type { Axis } from '../build/station.ts';
import type { FigureText } from './figure-words.ts';
import type { Pick, Point, SheetSubject, ViewName } from './sheet.ts';
import type { ViewPicture, Way } from './view-picture.ts';

/** A distance or diameter shown by a dimension line in a row beside a view; places in mm of the part along the way. */
export interface RowFigure {
  readonly dimension: DimensionId;
  readonly view: ViewName;
  readonly way: Way;
  /** from ≤ to. */
  readonly from: number;
  readonly to: number;
  readonly text: FigureText;
  readonly stands: readonly Pick[];
  /** The stations at `from` and at `to`. */
  readonly ends: readonly [StationId | undefined, StationId | undefined];
}

/** A place where a leader's arrow may touch, and the way out from there (a unit vector), mm of the part. */
export interface Tip {
  readonly at: Point;
  readonly out: Point;
}

export interface CalloutLine {
  readonly text: FigureText;
  readonly stands: readonly DimensionId[];
}

/** Lines of words at the end of a leader. */
export interface Callout {
  readonly view: ViewName;
  readonly tips: readonly Tip[];
  readonly lines: readonly CalloutLine[];
  readonly stands: readonly Pick[];
}

/** What is looked up while figures are gathered. */
export interface FigureContext {
  readonly subject: SheetSubject;
  readonly views: readonly ViewPicture[];
  readonly dimensions: ReadonlyMap<DimensionId, Dimension>;
  /** Places of stations that a datum is tied to, mm. */
  readonly stationAt: ReadonlyMap<StationId, number>;
  readonly stationAxis: ReadonlyMap<StationId, Axis>;
  text(id: DimensionId, sign?: string): FigureText;
  /** mm or degrees, in the role that a body uses it in. */
  value(id: DimensionId, role: 'diameter' | 'radius' | 'length' | 'width'): number;
  /** Dimensions that stand on the sheet already. */
  readonly shown: Set<DimensionId>;
}

const formOf = ({ measure }: Dimension) => (measure.type === 'size' ? measure.form : 'between');

export const isRadius = ({ dimensions }: FigureContext, id: DimensionId): boolean =>
  formOf(dimensions.get(id)!) === 'radius';

/** The sign before a size: ISO 129-1:2018 has ⌀ and R; threads carry their own letter. */
export function signOf({ dimensions }: FigureContext, id: DimensionId): string {
  const form = formOf(dimensions.get(id)!);
  return form === 'diameter' ? '⌀' : form === 'radius' ? 'R' : '';
}
