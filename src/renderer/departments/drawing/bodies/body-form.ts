import { unreachable } from '../../../../shared/base/assert.ts';
import type { DimensionId, SolidId, StationId } from '../../../../shared/base/ids.ts';
import type { Body, Repeat, Shape, ShapeType } from '../../../../shared/build/body.ts';
import { type SizeRole, servesAs, usesOf } from '../../../../shared/build/body-uses.ts';
import type { Axis } from '../../../../shared/build/station.ts';
import type { PartSheet } from '../../../engine/views/part.ts';

/** The turn of an imported solid: which signed axis of the part each axis of the file becomes. */
export type Turn = Extract<Shape, { type: 'imported' }>['turn'];

export interface RepeatForm {
  readonly type: Repeat['type'];
  readonly axis: Axis;
}

/** A body as it stands in the form: all texts as typed, each under the field of the record that it is for. */
export interface BodyForm {
  readonly type: ShapeType;
  readonly axis: Axis;
  readonly name: string;
  readonly adds: boolean;
  readonly finish: Body['finish'];
  readonly note: string;
  /** `shape/ends/0` → what is typed there. */
  readonly texts: Readonly<Record<string, string>>;
  /** Number of corners of a prism, rib or turned profile. */
  readonly corners: number;
  readonly quadrant: readonly [1 | -1, 1 | -1];
  readonly counterbore: boolean;
  readonly countersink: boolean;
  readonly repeats: readonly RepeatForm[];
  readonly solid: SolidId | undefined;
  readonly turn: Turn;
}

const startCorners: Partial<Record<ShapeType, number>> = { prism: 4, rib: 3, revolved: 4 };
const takers: readonly ShapeType[] = ['hole', 'slot', 'pocket'];

/** The form of a new body of a shape. */
export function newForm(type: ShapeType): BodyForm {
  const takes = takers.includes(type);
  return {
    type,
    axis: 'Z',
    name: '',
    adds: !takes,
    finish: takes ? 'machined' : 'as cast',
    note: '',
    texts: {},
    corners: startCorners[type] ?? 0,
    quadrant: [1, 1],
    counterbore: false,
    countersink: false,
    repeats: [],
    solid: undefined,
    turn: ['+X', '+Y', '+Z'],
  };
}

/** The form of a body that is there. @param fields names of what stands in its fields. */
export function formOfBody(body: Body, fields: Readonly<Record<string, string>>): BodyForm {
  const { shape } = body;
  return {
    ...newForm(shape.type),
    axis: 'axis' in shape ? shape.axis : 'Z',
    name: body.name,
    adds: body.adds,
    finish: body.finish,
    note: body.note,
    texts: fields,
    corners: 'corners' in shape ? shape.corners.length : shape.type === 'revolved' ? shape.outline.length : 0,
    quadrant: shape.type === 'fillet' ? shape.quadrant : [1, 1],
    counterbore: shape.type === 'hole' && shape.counterbore !== undefined,
    countersink: shape.type === 'hole' && shape.countersink !== undefined,
    repeats: body.repeats.map(({ type, axis }) => ({ type, axis })),
    solid: shape.type === 'imported' ? shape.solid : undefined,
    turn: shape.type === 'imported' ? shape.turn : ['+X', '+Y', '+Z'],
  };
}

export interface PlaceField {
  readonly is: 'place';
  readonly field: string;
  readonly axis: Axis;
}

export interface SizeField {
  readonly is: 'size';
  readonly field: string;
  readonly role: SizeRole;
  readonly optional: boolean;
}

export type FormField = PlaceField | SizeField;

/** Sizes that a body can do without. */
const optional =
  /^shape\/(bore|diameters\/1|corners\/\d+\/radius|outline\/\d+\/diameter|point|radius)$|^repeats\/\d+\/(circle|start)$/;

/** A fillet is nothing without its radius; a pocket may have sharp corners. */
const isOptional = (type: ShapeType, field: string): boolean =>
  optional.test(field) && !(type === 'fillet' && field === 'shape/radius');

/** The fields of a form, in the order in which they are asked for. */
export function fieldsOf(form: BodyForm): readonly FormField[] {
  // Every field filled with something, so that all of them are named.
  const { stations, sizes } = usesOf(
    bodyOf(
      form,
      (field) => field,
      () => true,
    ) as Pick<Body, 'shape' | 'repeats'>,
  );
  return [
    ...stations.map(({ axis, field }) => ({ is: 'place', axis, field }) as const),
    ...sizes.map(({ role, field }) => ({ is: 'size', role, field, optional: isOptional(form.type, field) }) as const),
  ];
}

/**
 * The shape and repeats of a form.
 *
 * @param at what to put into a field.
 * @param has whether a field that may be missing is there.
 */
export function bodyOf<T>(
  form: BodyForm,
  at: (field: string) => T,
  has: (field: string) => boolean,
): { readonly shape: unknown; readonly repeats: readonly unknown[] } {
  const put = (field: string): T => at(`shape/${field}`);
  const may = (field: string): T | undefined => (has(`shape/${field}`) ? put(field) : undefined);
  const pair = (field: string) => [put(`${field}/0`), put(`${field}/1`)];
  const each = <R>(make: (i: number) => R): readonly R[] => Array.from({ length: form.corners }, (_, i) => make(i));
  const { type, axis } = form;
  const shape = (): object => {
    switch (type) {
      case 'block':
        return { x: pair('x'), y: pair('y'), z: pair('z') };
      case 'cylinder':
        return { axis, ends: pair('ends'), centre: pair('centre'), diameter: put('diameter'), bore: may('bore') };
      case 'cone':
        return {
          axis,
          ends: pair('ends'),
          centre: pair('centre'),
          diameters: [put('diameters/0'), ...(has('shape/diameters/1') ? [put('diameters/1')] : [])],
        };
      case 'prism':
        return {
          axis,
          ends: pair('ends'),
          corners: each((i) => ({ at: pair(`corners/${i}/at`), radius: may(`corners/${i}/radius`) })),
        };
      case 'revolved':
        return {
          axis,
          centre: pair('centre'),
          outline: each((i) => ({ at: put(`outline/${i}/at`), diameter: may(`outline/${i}/diameter`) })),
        };
      case 'hole':
        return {
          axis,
          from: put('from'),
          to: put('to'),
          centre: pair('centre'),
          diameter: put('diameter'),
          counterbore: form.counterbore
            ? { diameter: put('counterbore/diameter'), depth: put('counterbore/depth') }
            : undefined,
          countersink: form.countersink
            ? { diameter: put('countersink/diameter'), angle: put('countersink/angle') }
            : undefined,
          point: may('point'),
        };
      case 'slot':
        return { axis, ends: pair('ends'), centres: [pair('centres/0'), pair('centres/1')], width: put('width') };
      case 'pocket':
        return { axis, ends: pair('ends'), from: pair('from'), to: pair('to'), radius: may('radius') };
      case 'rib':
        return { axis, at: put('at'), thickness: put('thickness'), corners: each((i) => pair(`corners/${i}`)) };
      case 'fillet':
        return {
          axis,
          ends: pair('ends'),
          corner: pair('corner'),
          radius: put('radius'),
          quadrant: form.quadrant,
        };
      case 'imported':
        return { solid: form.solid, origin: [put('origin/0'), put('origin/1'), put('origin/2')], turn: form.turn };
    }
  };
  const repeats = form.repeats.map((repeat, i) => {
    const of = (field: string): T => at(`repeats/${i}/${field}`);
    const perhaps = (field: string): T | undefined => (has(`repeats/${i}/${field}`) ? of(field) : undefined);
    switch (repeat.type) {
      case 'circle':
        return {
          ...repeat,
          centre: [of('centre/0'), of('centre/1')],
          count: of('count'),
          circle: perhaps('circle'),
          start: perhaps('start'),
        };
      case 'row':
        return { ...repeat, count: of('count'), pitch: of('pitch') };
      case 'mirror':
        return { ...repeat, about: of('about') };
      default:
        return unreachable(repeat.type);
    }
  });
  return { shape: { type, ...shape() }, repeats };
}

/** What is left in the texts when corner `gone` is taken out: those behind it move up. */
export function withoutCorner(form: BodyForm, gone: number): BodyForm {
  return {
    ...form,
    corners: form.corners - 1,
    texts: withoutNumber(form.texts, /^(shape\/(?:corners|outline)\/)(\d+)(\/.*)?$/, gone),
  };
}

export function withoutRepeat(form: BodyForm, gone: number): BodyForm {
  return {
    ...form,
    repeats: form.repeats.toSpliced(gone, 1),
    texts: withoutNumber(form.texts, /^(repeats\/)(\d+)(\/.*)?$/, gone),
  };
}

function withoutNumber(texts: BodyForm['texts'], numbered: RegExp, gone: number): BodyForm['texts'] {
  const left: Record<string, string> = {};
  for (const [field, text] of Object.entries(texts)) {
    const [, before, number, after = ''] = numbered.exec(field) ?? [];
    if (number === undefined) left[field] = text;
    else if (Number(number) !== gone) left[`${before}${Number(number) - Number(Number(number) > gone)}${after}`] = text;
  }
  return left;
}

/** Names that a text may mean, with the records behind them. */
export interface Known {
  readonly stations: readonly {
    readonly id: StationId;
    readonly name: string;
    readonly axis: Axis;
    /** Where it stands, as shown; empty while it is not placed. */
    readonly aside: string;
  }[];
  readonly sizes: readonly {
    readonly id: DimensionId;
    readonly name: string;
    readonly roles: readonly SizeRole[];
    readonly aside: string;
  }[];
}

const roles: readonly SizeRole[] = ['diameter', 'radius', 'length', 'width', 'angle', 'count'];

/** The names of a part's sheet. */
export const knownOf = ({ stations, dimensions }: PartSheet): Known => ({
  stations: stations.map(({ record, at }) => ({
    id: record.id,
    name: record.name,
    axis: record.axis,
    aside: at ?? '',
  })),
  sizes: dimensions.map(({ record, value }) => ({
    id: record.id,
    name: record.name,
    roles: roles.filter((role) => servesAs(record.measure, role)),
    aside: value ?? 'no value',
  })),
});
