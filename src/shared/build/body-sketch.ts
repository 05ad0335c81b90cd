import type { DimensionId, StationId } from '../base/ids.ts';
import type { Repeat, Shape } from './body.ts';

/** A place that has no station yet: one is made, with a dimension that places it. */
export interface NewPlace {
  /** Its name; without one it is called after the body and its place on it. A name given twice is one station. */
  readonly new?: string | undefined;
  /**
   * The written distance from `from`; empty leaves the station unplaced until the drawing says more. 0 without a name is
   * `from` itself.
   */
  readonly value: string;
  /** What it is measured from; otherwise the datum of its axis, which is made where there is none. */
  readonly from?: PlaceSketch | undefined;
}

export type PlaceSketch = StationId | NewPlace;

/** A size that is not there yet: a dimension is made. */
export interface NewSize {
  /** Its name; without one it is called after the body and what it is of it. A name given twice is one dimension. */
  readonly new?: string | undefined;
  readonly value: string;
}

export type SizeSketch = DimensionId | NewSize;

/** Both ends by their distance: from a place, otherwise the datum of the axis, to a new station so far along. */
export interface Stretch {
  readonly length: string;
  readonly from?: PlaceSketch | undefined;
}

/** The fields that hold the two ends of something along one axis. */
type EndsField = 'ends' | 'x' | 'y' | 'z';

/** The same, its stations and sizes being there or yet to be made. */
export type Sketched<T> = T extends StationId
  ? PlaceSketch
  : T extends DimensionId
    ? SizeSketch
    : T extends object
      ? { readonly [K in keyof T]: K extends EndsField ? Sketched<T[K]> | Stretch : Sketched<T[K]> }
      : T;

export type ShapeSketch = Sketched<Shape>;
export type RepeatSketch = Sketched<Repeat>;

export const isStretch = (value: unknown): value is Stretch =>
  typeof value === 'object' && value !== null && 'length' in value && !Array.isArray(value);

export const isNew = <T extends NewPlace | NewSize>(value: string | T): value is T => typeof value !== 'string';
