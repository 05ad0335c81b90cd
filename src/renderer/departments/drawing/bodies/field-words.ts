import type { ShapeType } from '../../../../shared/build/body.ts';
import { placeWord, sizeWord } from '../../../../shared/build/body-sketch-names.ts';
import type { SizeRole } from '../../../../shared/build/body-uses.ts';
import type { Axis } from '../../../../shared/build/station.ts';
import type { BodyForm, FormField, Known } from './body-form.ts';
import { isFirstEnd, isSecondEnd, readPlace, readSize } from './read-form.ts';

export const shapeNames: readonly (readonly [ShapeType, string])[] = [
  ['block', 'Block'],
  ['cylinder', 'Cylinder, tube'],
  ['cone', 'Cone, taper'],
  ['prism', 'Prism'],
  ['revolved', 'Turned profile'],
  ['hole', 'Hole'],
  ['slot', 'Slot'],
  ['pocket', 'Pocket'],
  ['rib', 'Rib'],
  ['fillet', 'Fillet'],
];

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

export function labelOf(one: FormField): string {
  return capital(one.is === 'place' ? placeWord(one.field, one.axis) : sizeWord(one.field));
}

const roleHints: Readonly<Record<SizeRole, string>> = {
  diameter: 'diameter, or M8',
  radius: 'radius',
  length: 'length',
  width: 'width',
  angle: 'degrees',
  count: 'how many',
};

export function placeholderOf(one: FormField): string {
  if (one.is === 'size') return one.optional ? 'none' : roleHints[one.role];
  if (isFirstEnd(one.field)) return 'datum';
  if (one.field === 'shape/to') return 'depth, e.g. -10';
  return isSecondEnd(one.field) ? 'length' : 'place';
}

/** What the text of a field means, in words. */
export function meaningOf(one: FormField, form: BodyForm, known: Known): string {
  const text = form.texts[one.field] ?? '';
  if (one.is === 'size') {
    const size = readSize(text, one.role, known);
    switch (size.is) {
      case 'blank':
        return one.optional ? 'left out' : 'no value yet';
      case 'dimension':
        return asideOfSize(known, size.id);
      case 'new':
        return size.name === undefined ? 'new dimension' : `new dimension "${size.name}"`;
    }
  }
  const place = readPlace(text, one.axis, known);
  switch (place.is) {
    case 'blank':
      return isFirstEnd(one.field) ? `the datum along ${one.axis}` : 'not placed yet';
    case 'station':
      return `station${asideOfStation(known, place.id)}`;
    case 'new': {
      const from = place.from?.name ?? (isSecondEnd(one.field) ? firstName(one.field, form, one.axis) : 'the datum');
      const what = place.name === undefined ? 'new' : `new "${place.name}"`;
      return `${what}, ${place.value === '' ? '?' : place.value} from ${from}`;
    }
  }
}

function firstName(field: string, form: BodyForm, axis: Axis): string {
  const first = form.texts[field === 'shape/to' ? 'shape/from' : field.replace(/1$/, '0')]?.trim() ?? '';
  return first === ''
    ? 'the datum'
    : field === 'shape/to'
      ? 'the mouth'
      : `the ${placeWord(field.replace(/1$/, '0'), axis)}`;
}

const asideOfStation = (known: Known, id: string): string => {
  const aside = known.stations.find((one) => one.id === id)?.aside;
  return aside === undefined || aside === '' ? '' : ` at ${aside}`;
};
const asideOfSize = (known: Known, id: string): string => known.sizes.find((one) => one.id === id)?.aside ?? '';
