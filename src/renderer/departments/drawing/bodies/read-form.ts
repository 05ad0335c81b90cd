import type { BodyId, DimensionId, PartId, StationId } from '../../../../shared/base/ids.ts';
import type {
  NewPlace,
  PlaceSketch,
  RepeatSketch,
  ShapeSketch,
  SizeSketch,
} from '../../../../shared/build/body-sketch.ts';
import type { SizeRole } from '../../../../shared/build/body-uses.ts';
import type { Axis } from '../../../../shared/build/station.ts';
import { nameKey } from '../../../../shared/formula/name-key.ts';
import type { BodyDraft } from '../../../engine/asks/body-preview.ts';
import { type BodyForm, bodyOf, fieldsOf, type Known } from './body-form.ts';

/** What a text in a field for a place means. */
export type PlaceMeaning =
  | { readonly is: 'blank' }
  | { readonly is: 'station'; readonly id: StationId; readonly name: string }
  /** `from` undefined: from the datum, or from the other end of the body. */
  | {
      readonly is: 'new';
      readonly name: string | undefined;
      readonly value: string;
      readonly from: { readonly id: StationId; readonly name: string } | undefined;
    };

/**
 * A place is the name of a station, or a distance: `60`, `60 from foot`, `crown = 60`, `crown = 60 from foot`. What is
 * the name of a station is never a distance.
 */
export function readPlace(text: string, axis: Axis, known: Known): PlaceMeaning {
  const typed = text.trim();
  if (typed === '') return { is: 'blank' };
  const find = (name: string) => {
    const key = nameKey(name.replace(/^"(.*)"$/, '$1'));
    return known.stations.find((station) => station.axis === axis && nameKey(station.name) === key);
  };
  const station = find(typed);
  if (station !== undefined) return { is: 'station', id: station.id, name: station.name };
  const equals = typed.indexOf('=');
  const name = equals > 0 ? typed.slice(0, equals).trim() : undefined;
  const rest = equals > 0 ? typed.slice(equals + 1).trim() : typed;
  const split = / from /i.exec(rest);
  const from = split === null ? undefined : find(rest.slice(split.index + split[0].length));
  return {
    is: 'new',
    name,
    value: split !== null && from !== undefined ? rest.slice(0, split.index).trim() : rest,
    from: from && { id: from.id, name: from.name },
  };
}

export type SizeMeaning =
  | { readonly is: 'blank' }
  | { readonly is: 'dimension'; readonly id: DimensionId; readonly name: string }
  | { readonly is: 'new'; readonly name: string | undefined; readonly value: string };

/** A size is the name of a dimension that can serve, or a value: `25`, `bore = 25`, `"shaft diameter" + 0.2`. */
export function readSize(text: string, role: SizeRole, known: Known): SizeMeaning {
  const typed = text.trim();
  if (typed === '') return { is: 'blank' };
  const key = nameKey(typed.replace(/^"([^"]*)"$/, '$1'));
  const size = known.sizes.find((one) => one.roles.includes(role) && nameKey(one.name) === key);
  if (size !== undefined) return { is: 'dimension', id: size.id, name: size.name };
  const equals = typed.indexOf('=');
  if (equals <= 0) return { is: 'new', name: undefined, value: typed };
  return { is: 'new', name: typed.slice(0, equals).trim(), value: typed.slice(equals + 1).trim() };
}

/** The second of two ends: a bare distance there is how far the body reaches from the first. */
export const isSecondEnd = (field: string): boolean => /^shape\/(x|y|z|ends)\/1$/.test(field) || field === 'shape/to';
export const isFirstEnd = (field: string): boolean => /^shape\/(x|y|z|ends)\/0$/.test(field);

const firstOf = (field: string): string => (field === 'shape/to' ? 'shape/from' : field.replace(/1$/, '0'));

/**
 * The order that a form stands for.
 *
 * @param body the body that is changed; undefined: a new one is drawn.
 */
export function draftOf(form: BodyForm, part: PartId, known: Known, body: BodyId | undefined): BodyDraft {
  const { shape, repeats } = sketchOf(form, known);
  const name = form.name.trim();
  if (body === undefined) {
    const { adds, finish, note } = form;
    return {
      command: 'body-sketch',
      params: { part, adds, finish, note, shape, repeats, ...(name === '' ? {} : { name }) },
    };
  }
  const { adds, finish, note } = form;
  return { command: 'body-set', params: { changes: [{ body, set: { name, adds, finish, note, shape, repeats } }] } };
}

/** Shape and repeats of a form; what is typed becomes stations and sizes that are there or yet to be made. */
function sketchOf(
  form: BodyForm,
  known: Known,
): { readonly shape: ShapeSketch; readonly repeats: readonly RepeatSketch[] } {
  const fields = new Map(fieldsOf(form).map((one) => [one.field, one]));
  const places = new Map<string, PlaceSketch>();
  // The same distance written twice is one station: the corners of an outline share theirs.
  const byText = new Map<string, PlaceSketch>();
  const placeAt = (field: string, axis: Axis): PlaceSketch => {
    const made = places.get(field);
    if (made !== undefined) return made;
    const place = placeSketch(field, axis);
    places.set(field, place);
    return place;
  };
  const placeSketch = (field: string, axis: Axis): PlaceSketch => {
    const meaning = readPlace(form.texts[field] ?? '', axis, known);
    if (meaning.is === 'station') return meaning.id;
    if (meaning.is === 'blank') return { value: isFirstEnd(field) ? '0' : '' };
    const from = meaning.from?.id ?? (isSecondEnd(field) ? placeAt(firstOf(field), axis) : undefined);
    const place: NewPlace = {
      value: meaning.value,
      ...(meaning.name === undefined ? {} : { new: meaning.name }),
      ...(from && { from }),
    };
    if (isSecondEnd(field)) return place;
    const key = `${axis} ${meaning.name ?? ''} ${nameKey(meaning.value)} ${meaning.from?.id ?? ''}`;
    const same = byText.get(key) ?? place;
    byText.set(key, same);
    return same;
  };
  const sizeSketch = (field: string, role: SizeRole): SizeSketch => {
    const meaning = readSize(form.texts[field] ?? '', role, known);
    if (meaning.is === 'dimension') return meaning.id;
    if (meaning.is === 'blank') return { value: '' };
    return meaning.name === undefined ? { value: meaning.value } : { new: meaning.name, value: meaning.value };
  };
  const at = (field: string): PlaceSketch | SizeSketch => {
    const one = fields.get(field);
    if (one === undefined) return { value: '' };
    return one.is === 'place' ? placeAt(field, one.axis) : sizeSketch(field, one.role);
  };
  const has = (field: string): boolean => (form.texts[field] ?? '').trim() !== '';
  const { shape, repeats } = bodyOf(form, at, has);
  return {
    shape: withStretches(shape as Plain, form, known) as ShapeSketch,
    repeats: repeats as readonly RepeatSketch[],
  };
}

type Plain = Readonly<Record<string, unknown>>;

/** Two ends of which the second is a bare distance become a stretch: its dimension is then called by how far it reaches. */
function withStretches(shape: Plain, form: BodyForm, known: Known): Plain {
  const next: Record<string, unknown> = { ...shape };
  for (const key of ['x', 'y', 'z', 'ends']) {
    const pair = shape[key];
    if (!Array.isArray(pair)) continue;
    const axis = key === 'ends' ? form.axis : (key.toUpperCase() as Axis);
    const second = readPlace(form.texts[`shape/${key}/1`] ?? '', axis, known);
    if (second.is !== 'new' || second.name !== undefined || second.from !== undefined) continue;
    const isBlank = (form.texts[`shape/${key}/0`] ?? '').trim() === '';
    next[key] = { length: second.value, ...(isBlank ? {} : { from: pair[0] as PlaceSketch }) };
  }
  return next;
}
