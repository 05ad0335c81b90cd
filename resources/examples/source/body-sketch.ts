import type { DimensionId, SolidId, StationId } from '../../../src/shared/base/ids.ts';
import type { Body, Repeat, Shape } from '../../../src/shared/build/body.ts';
import type { Axis } from '../../../src/shared/build/station.ts';

/** The same, with the names of its stations and dimensions in place of their ids. */
type Named<T> = T extends SolidId
  ? T
  : T extends StationId | DimensionId
    ? string
    : T extends object
      ? { readonly [K in keyof T]: Named<T[K]> }
      : T;

export type NamedShape = Named<Shape>;
export type NamedRepeat = Named<Repeat>;

/** A body as it is set down by hand: its shape on the names of stations and dimensions that the part has. */
export interface BodyEntry {
  readonly name: string;
  readonly shape: NamedShape;
  readonly adds: boolean;
  readonly finish: Body['finish'];
  readonly repeats: readonly NamedRepeat[];
  readonly note: string;
}

type Shaped<T extends Shape['type']> = Extract<NamedShape, { readonly type: T }>;
/** Names of two stations: both ends along an axis, or one on each of the two axes across it, in alphabetical order. */
type Two = readonly [string, string];

const entry =
  (how: Pick<BodyEntry, 'adds' | 'finish'>) =>
  (name: string, shape: NamedShape, ...repeats: readonly NamedRepeat[]): BodyEntry => ({
    name,
    shape,
    ...how,
    repeats,
    note: '',
  });

/** Metal that is poured or, of stock, bought. */
export const add = entry({ adds: true, finish: 'as cast' });
/** An opening that the pattern itself leaves. */
export const leave = entry({ adds: false, finish: 'as cast' });
export const core = entry({ adds: false, finish: 'cored' });
export const cut = entry({ adds: false, finish: 'machined' });

export const block = (x: Two, y: Two, z: Two): NamedShape => ({ type: 'block', x: [...x], y: [...y], z: [...z] });

export const cylinder = (axis: Axis, ends: Two, centre: Two, diameter: string, bore?: string): NamedShape => ({
  type: 'cylinder',
  axis,
  ends: [...ends],
  centre: [...centre],
  diameter,
  ...(bore === undefined ? {} : { bore }),
});

/** Each corner: a station on each of the two axes across, and the radius that rounds it. */
export const prism = (
  axis: Axis,
  ends: Two,
  ...corners: readonly (readonly [string, string, radius?: string])[]
): NamedShape => ({
  type: 'prism',
  axis,
  ends: [...ends],
  corners: corners.map(([u, v, radius]) => (radius === undefined ? { at: [u, v] } : { at: [u, v], radius })),
});

/** Each point: a station along the axis and a diameter there; none on the axis. */
export const revolved = (
  axis: Axis,
  centre: Two,
  ...outline: readonly (readonly [at: string, diameter?: string])[]
): NamedShape => ({
  type: 'revolved',
  axis,
  centre: [...centre],
  outline: outline.map(([at, diameter]) => (diameter === undefined ? { at } : { at, diameter })),
});

export const hole = (
  axis: Axis,
  [from, to]: Two,
  centre: Two,
  diameter: string,
  more: Pick<Shaped<'hole'>, 'counterbore' | 'countersink' | 'point'> = {},
): NamedShape => ({ type: 'hole', axis, from, to, centre: [...centre], diameter, ...more });

export const slot = (axis: Axis, ends: Two, centres: readonly [Two, Two], width: string): NamedShape => ({
  type: 'slot',
  axis,
  ends: [...ends],
  centres: [[...centres[0]], [...centres[1]]],
  width,
});

/** A block with the four corners along its axis rounded. */
export const pocket = (axis: Axis, ends: Two, from: Two, to: Two, radius: string): NamedShape => ({
  type: 'pocket',
  axis,
  ends: [...ends],
  from: [...from],
  to: [...to],
  radius,
});

export const rib = (axis: Axis, at: string, thickness: string, ...corners: readonly Two[]): NamedShape => ({
  type: 'rib',
  axis,
  at,
  thickness,
  corners: corners.map(([u, v]) => [u, v]),
});

/** Fills an inside corner along an axis; the quadrant says to which sides of the corner the arc lies. */
export const fillet = (
  axis: Axis,
  ends: Two,
  corner: Two,
  radius: string,
  quadrant: Shaped<'fillet'>['quadrant'],
): NamedShape => ({ type: 'fillet', axis, ends: [...ends], corner: [...corner], radius, quadrant });

export const mirror = (axis: Axis, about: string): NamedRepeat => ({ type: 'mirror', axis, about });

export const row = (axis: Axis, count: string, pitch: string): NamedRepeat => ({ type: 'row', axis, count, pitch });

export const circle = (axis: Axis, centre: Two, count: string, diameter: string): NamedRepeat => ({
  type: 'circle',
  axis,
  centre: [...centre],
  count,
  circle: diameter,
});
