import { unreachable } from '../base/assert.ts';
import type { DimensionId, SolidId, StationId } from '../base/ids.ts';
import type { Body, Repeat, Shape } from './body.ts';
import type { Dimension, Measure, SizeForm } from './dimension.ts';
import { type Axis, axes } from './station.ts';

/** A station that a body needs, the axis it must lie along, and where in the record it stands. */
export interface StationUse {
  readonly station: StationId;
  readonly axis: Axis;
  /** Parts joined by `/`, e.g. `shape/ends/0`. */
  readonly field: string;
}

/** What a size is taken for; it says which forms of dimension can serve. */
export type SizeRole = 'diameter' | 'radius' | 'length' | 'width' | 'angle' | 'count';

/** A size that a body needs. */
export interface SizeUse {
  readonly dimension: DimensionId;
  readonly role: SizeRole;
  readonly field: string;
}

/** All that a body hangs on directly, in the order in which its record names it. */
export interface BodyUses {
  readonly stations: readonly StationUse[];
  readonly sizes: readonly SizeUse[];
  readonly solid: SolidId | undefined;
}

/**
 * What a dimension must measure to serve in each role. A radius serves as a diameter (doubled) and the other way round,
 * and a distance between stations as a length (its amount).
 */
const served: Readonly<Record<SizeRole, readonly (SizeForm | 'between')[]>> = {
  diameter: ['diameter', 'radius', 'thread'],
  radius: ['radius', 'diameter'],
  length: ['length', 'between'],
  width: ['length', 'between', 'diameter'],
  angle: ['angle'],
  count: ['count'],
};

/** What can serve in the role, in words: `a diameter, a radius or a thread`. */
export function wordsOfRole(role: SizeRole): string {
  const words = served[role].map((form) =>
    form === 'between' ? 'a distance' : `a${form === 'angle' ? 'n' : ''} ${form}`,
  );
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} or ${words.at(-1)}`;
}

/** What a dimension measures, in one word. */
export const formOf = (measure: Measure): SizeForm | 'between' => (measure.type === 'size' ? measure.form : 'between');

export const servesAs = (measure: Measure, role: SizeRole): boolean => served[role].includes(formOf(measure));

/** The value of a dimension in the role it serves in: a diameter of a radius is twice it. */
export function valueInRole({ measure }: Dimension, value: number, role: SizeRole): number {
  const form = formOf(measure);
  if (role === 'diameter' && form === 'radius') return 2 * value;
  if (role === 'radius' && form === 'diameter') return value / 2;
  return form === 'between' ? Math.abs(value) : value;
}

/** The two axes across the given one, in the order of the alphabet. */
export const axesAcross = (axis: Axis): readonly [Axis, Axis] =>
  axis === 'X' ? ['Y', 'Z'] : axis === 'Y' ? ['X', 'Z'] : ['X', 'Y'];

type Point = readonly [StationId, StationId];

/** Gathers what a shape and its repeats name. */
export function usesOf({ shape, repeats }: Pick<Body, 'shape' | 'repeats'>): BodyUses {
  const stations: StationUse[] = [];
  const sizes: SizeUse[] = [];
  const at = (station: StationId, axis: Axis, field: string) => {
    stations.push({ station, axis, field });
  };
  const ends = (pair: Point, axis: Axis, field: string) => {
    at(pair[0], axis, `${field}/0`);
    at(pair[1], axis, `${field}/1`);
  };
  const across = (point: Point, axis: Axis, field: string) => {
    const [first, second] = axesAcross(axis);
    at(point[0], first, `${field}/0`);
    at(point[1], second, `${field}/1`);
  };
  const size = (dimension: DimensionId | undefined, role: SizeRole, field: string) => {
    if (dimension !== undefined) sizes.push({ dimension, role, field });
  };
  usesOfShape(shape, { at, ends, across, size });
  repeats.forEach((repeat, i) => {
    usesOfRepeat(repeat, `repeats/${i}`, { at, across, size });
  });
  return { stations, sizes, solid: shape.type === 'imported' ? shape.solid : undefined };
}

interface Gather {
  readonly at: (station: StationId, axis: Axis, field: string) => void;
  readonly ends: (pair: Point, axis: Axis, field: string) => void;
  readonly across: (point: Point, axis: Axis, field: string) => void;
  readonly size: (dimension: DimensionId | undefined, role: SizeRole, field: string) => void;
}

function usesOfShape(shape: Shape, { at, ends, across, size }: Gather): void {
  switch (shape.type) {
    case 'block':
      ends(shape.x, 'X', 'shape/x');
      ends(shape.y, 'Y', 'shape/y');
      ends(shape.z, 'Z', 'shape/z');
      return;
    case 'cylinder':
      ends(shape.ends, shape.axis, 'shape/ends');
      across(shape.centre, shape.axis, 'shape/centre');
      size(shape.diameter, 'diameter', 'shape/diameter');
      size(shape.bore, 'diameter', 'shape/bore');
      return;
    case 'cone':
      ends(shape.ends, shape.axis, 'shape/ends');
      across(shape.centre, shape.axis, 'shape/centre');
      size(shape.diameters[0], 'diameter', 'shape/diameters/0');
      size(shape.diameters[1], 'diameter', 'shape/diameters/1');
      return;
    case 'prism':
      ends(shape.ends, shape.axis, 'shape/ends');
      shape.corners.forEach((corner, i) => {
        across(corner.at, shape.axis, `shape/corners/${i}/at`);
        size(corner.radius, 'radius', `shape/corners/${i}/radius`);
      });
      return;
    case 'revolved':
      across(shape.centre, shape.axis, 'shape/centre');
      shape.outline.forEach((point, i) => {
        at(point.at, shape.axis, `shape/outline/${i}/at`);
        size(point.diameter, 'diameter', `shape/outline/${i}/diameter`);
      });
      return;
    case 'hole':
      at(shape.from, shape.axis, 'shape/from');
      at(shape.to, shape.axis, 'shape/to');
      across(shape.centre, shape.axis, 'shape/centre');
      size(shape.diameter, 'diameter', 'shape/diameter');
      size(shape.counterbore?.diameter, 'diameter', 'shape/counterbore/diameter');
      size(shape.counterbore?.depth, 'length', 'shape/counterbore/depth');
      size(shape.countersink?.diameter, 'diameter', 'shape/countersink/diameter');
      size(shape.countersink?.angle, 'angle', 'shape/countersink/angle');
      size(shape.point, 'angle', 'shape/point');
      return;
    case 'slot':
      ends(shape.ends, shape.axis, 'shape/ends');
      across(shape.centres[0], shape.axis, 'shape/centres/0');
      across(shape.centres[1], shape.axis, 'shape/centres/1');
      size(shape.width, 'width', 'shape/width');
      return;
    case 'pocket':
      ends(shape.ends, shape.axis, 'shape/ends');
      across(shape.from, shape.axis, 'shape/from');
      across(shape.to, shape.axis, 'shape/to');
      size(shape.radius, 'radius', 'shape/radius');
      return;
    case 'rib':
      at(shape.at, shape.axis, 'shape/at');
      size(shape.thickness, 'length', 'shape/thickness');
      shape.corners.forEach((corner, i) => {
        across(corner, shape.axis, `shape/corners/${i}`);
      });
      return;
    case 'fillet':
      ends(shape.ends, shape.axis, 'shape/ends');
      across(shape.corner, shape.axis, 'shape/corner');
      size(shape.radius, 'radius', 'shape/radius');
      return;
    case 'imported':
      shape.origin.forEach((station, i) => {
        at(station, axes[i]!, `shape/origin/${i}`);
      });
      return;
    default:
      unreachable(shape);
  }
}

function usesOfRepeat(repeat: Repeat, field: string, { at, across, size }: Omit<Gather, 'ends'>): void {
  switch (repeat.type) {
    case 'circle':
      across(repeat.centre, repeat.axis, `${field}/centre`);
      size(repeat.count, 'count', `${field}/count`);
      size(repeat.circle, 'diameter', `${field}/circle`);
      size(repeat.start, 'angle', `${field}/start`);
      return;
    case 'row':
      size(repeat.count, 'count', `${field}/count`);
      size(repeat.pitch, 'length', `${field}/pitch`);
      return;
    case 'mirror':
      at(repeat.about, repeat.axis, `${field}/about`);
      return;
    default:
      unreachable(repeat);
  }
}

/** The ids of all that a body hangs on directly besides its part. */
export function idsIn(body: Pick<Body, 'shape' | 'repeats'>): readonly (StationId | DimensionId | SolidId)[] {
  const { stations, sizes, solid } = usesOf(body);
  const ids = [...stations.map((use) => use.station), ...sizes.map((use) => use.dimension)];
  return solid === undefined ? [...new Set(ids)] : [...new Set(ids), solid];
}
