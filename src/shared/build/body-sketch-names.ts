import type { Axis } from './station.ts';

// What new stations and sizes of a body are called: after the body, and the place or measure they are of it.

const ends: Readonly<Record<Axis, readonly [low: string, high: string]>> = {
  X: ['left', 'right'],
  Y: ['front', 'back'],
  Z: ['bottom', 'top'],
};

const extents: Readonly<Record<Axis, string>> = { X: 'length', Y: 'width', Z: 'height' };

/** The word for how far something reaches along an axis. */
export const extentWord = (axis: Axis): string => extents[axis];

/** The word for the place that stands in a field of a body's record, such as `shape/ends/0`. */
export function placeWord(field: string, axis: Axis): string {
  const steps = field.split('/');
  const [, name = '', third = ''] = steps;
  const last = Number(steps.at(-1));
  if (steps[0] === 'repeats') return name !== '' && steps[2] === 'about' ? 'mirror' : `centre ${axis}`;
  switch (name) {
    case 'x':
    case 'y':
    case 'z':
    case 'ends':
      return ends[axis][last] ?? 'end';
    case 'from':
      // Of a hole its mouth, of a pocket its lower corner.
      return third === '' ? 'mouth' : ends[axis][0];
    case 'to':
      return third === '' ? 'floor' : ends[axis][1];
    case 'centres':
      return `centre ${Number(third) + 1} ${axis}`;
    case 'corners':
      return `corner ${Number(third) + 1} ${axis}`;
    case 'outline':
      return `shoulder ${Number(third) + 1}`;
    case 'at':
      return 'middle';
    default:
      return `${name} ${axis}`;
  }
}

/** The word for the size that stands in a field, such as `shape/counterbore/depth`. */
export function sizeWord(field: string): string {
  const [where, name = '', third = '', fourth = ''] = field.split('/');
  if (where === 'repeats') return third === 'circle' ? 'bolt circle' : third === 'start' ? 'start angle' : third;
  switch (name) {
    case 'diameters':
      return third === '0' ? 'diameter' : 'end diameter';
    case 'corners':
      return `corner ${Number(third) + 1} ${fourth}`;
    case 'outline':
      return `diameter ${Number(third) + 1}`;
    case 'point':
      return 'point angle';
    default:
      return third === '' ? name : `${name} ${third}`;
  }
}

/** Whether a place is the middle of something rather than a face. */
export const isCentre = (field: string): boolean => /\/(centres?|about)(\/|$)/.test(field);
