import type { DimensionId, PartId, StationId } from '../../src/shared/base/ids.ts';
import { bodyFinishes } from '../../src/shared/build/body.ts';
import type { PlaceSketch, RepeatSketch, ShapeSketch, SizeSketch } from '../../src/shared/build/body-sketch.ts';
import { axesAcross, type SizeRole, servesAs } from '../../src/shared/build/body-uses.ts';
import type { Order } from '../../src/shared/build/commands/registry.ts';
import { bodiesOf, dimensionsOf, partsOf, stationsOf } from '../../src/shared/build/look-up.ts';
import type { Build } from '../../src/shared/build/records.ts';
import { type Axis, axes } from '../../src/shared/build/station.ts';
import type { Dice } from './random-edits.ts';
import { tetrahedron } from './sketch-bodies.ts';

const pick = <T>(list: readonly T[], n: number): T | undefined => list[n % Math.max(1, list.length)];

/** Numbers out of one throw, as many as are asked for. */
function stream({ a, b, c }: Dice): () => number {
  let state = (a * 10_007 + b * 101 + c + 1) >>> 0;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state >>> 8;
  };
}

const values = ['0', '5', '12', '20', '-8', '33.3', '60', '', '1/2"', 'height', '100'];
const sizesOf: Readonly<Record<SizeRole, readonly string[]>> = {
  diameter: ['8', '20', '12.5', 'M8', '1/4-20', '0', 'bore', '44'],
  radius: ['2', '5', '1', '0', '12'],
  length: ['4', '10', '-3', '', 'wall'],
  width: ['6', '12', '0'],
  angle: ['90', '118', '30', '180', '45°'],
  count: ['1', '2', '3', '6', '0', '2.5'],
};

/** An order about bodies that the throw comes to in this build; many of them are refused, and all of them may be. */
export function bodyOrderOf(build: Build, dice: Dice): Order | undefined {
  const part = pick(partsOf(build), dice.a);
  if (!part) return undefined;
  const next = stream(dice);
  const bodies = bodiesOf(build, part.id);
  const body = pick(bodies, dice.b);
  const finish = pick(bodyFinishes, next()) ?? 'as cast';
  const kind = dice.kind % 20;
  if (kind < 10 || !body) {
    const shape = shapeOf(build, part.id, next);
    const repeats = next() % 3 === 0 ? [repeatOf(build, part.id, next)] : [];
    return { id: 'body-sketch', params: { part: part.id, name: `body ${dice.c % 7}`, finish, shape, repeats } };
  }
  if (kind < 11)
    return { id: 'body-add', params: { part: part.id, shape: body.shape, set: { finish }, before: body.id } };
  if (kind < 15) {
    const shape = shapeOf(build, part.id, next);
    const sets = [{ name: 'renamed' }, { adds: dice.c % 2 === 0 }, { finish }, { shape }, { repeats: [] }] as const;
    return { id: 'body-set', params: { changes: [{ body: body.id, set: pick(sets, dice.c) ?? {} }] } };
  }
  if (kind < 17) return { id: 'body-remove', params: { bodies: [body.id] } };
  if (kind < 18) return { id: 'body-move', params: { body: body.id, before: pick(bodies, dice.c)?.id } };
  const { kind: _, id: __, ...solid } = tetrahedron();
  const origin = axes.map((axis) => placeOf(build, part.id, axis, next)) as [PlaceSketch, PlaceSketch, PlaceSketch];
  const turns = [
    ['+X', '+Y', '+Z'],
    ['-X', '-Y', '+Z'],
    ['+Z', '+X', '+Y'],
    ['-X', '+Y', '+Z'],
  ] as const;
  const turn = [...(pick(turns, next()) ?? turns[0])] as [
    (typeof turns)[0][0],
    (typeof turns)[0][1],
    (typeof turns)[0][2],
  ];
  return { id: 'solid-import', params: { part: part.id, solid, origin, turn } };
}

function placeOf(build: Build, part: PartId, axis: Axis, next: () => number): PlaceSketch {
  const stations = stationsOf(build, part, axis);
  const station = pick(stations, next());
  if (station && next() % 3 > 0) return station.id;
  const from = pick(stations, next());
  const value = pick(values, next()) ?? '5';
  return {
    value,
    ...(from && next() % 2 ? { from: from.id } : {}),
    ...(next() % 4 === 0 ? { new: `p${next() % 5}` } : {}),
  };
}

function sizeOf(build: Build, part: PartId, role: SizeRole, next: () => number): SizeSketch {
  const there = dimensionsOf(build, part).filter(({ measure }) => servesAs(measure, role));
  const dimension = pick(there, next());
  if (dimension && next() % 2) return dimension.id;
  return { value: pick(sizesOf[role], next()) ?? '5' };
}

function shapeOf(build: Build, part: PartId, next: () => number): ShapeSketch {
  const axis = pick(axes, next()) ?? 'Z';
  const [first, second] = axesAcross(axis);
  const at = (along: Axis) => placeOf(build, part, along, next) as StationId;
  const point = (): [StationId, StationId] => [at(first), at(second)];
  const ends = (along: Axis = axis) =>
    (next() % 2 ? { length: pick(values, next()) ?? '5' } : [at(along), at(along)]) as never;
  const size = (role: SizeRole) => sizeOf(build, part, role, next) as DimensionId;
  const maybe = (role: SizeRole) => (next() % 2 ? size(role) : undefined);
  switch (next() % 10) {
    case 0:
      return { type: 'block', x: ends('X'), y: ends('Y'), z: ends('Z') };
    case 1:
      return {
        type: 'cylinder',
        axis,
        ends: ends(),
        centre: point(),
        diameter: size('diameter'),
        bore: maybe('diameter'),
      };
    case 2:
      return {
        type: 'cone',
        axis,
        ends: ends(),
        centre: point(),
        diameters: next() % 2 ? [size('diameter')] : [size('diameter'), size('diameter')],
      };
    case 3:
      return {
        type: 'prism',
        axis,
        ends: ends(),
        corners: Array.from({ length: 3 + (next() % 4) }, () => ({ at: point(), radius: maybe('radius') })),
      };
    case 4:
      return {
        type: 'revolved',
        axis,
        centre: point(),
        outline: Array.from({ length: 3 + (next() % 3) }, () => ({ at: at(axis), diameter: maybe('diameter') })),
      };
    case 5:
      return {
        type: 'hole',
        axis,
        from: at(axis),
        to: at(axis),
        centre: point(),
        diameter: size('diameter'),
        counterbore: next() % 3 ? undefined : { diameter: size('diameter'), depth: size('length') },
        countersink: next() % 3 ? undefined : { diameter: size('diameter'), angle: size('angle') },
        point: maybe('angle'),
      };
    case 6:
      return { type: 'slot', axis, ends: ends(), centres: [point(), point()], width: size('width') };
    case 7:
      return { type: 'pocket', axis, ends: ends(), from: point(), to: point(), radius: maybe('radius') };
    case 8:
      return { type: 'rib', axis, at: at(axis), thickness: size('length'), corners: [point(), point(), point()] };
    default:
      return {
        type: 'fillet',
        axis,
        ends: ends(),
        corner: point(),
        radius: size('radius'),
        quadrant: [next() % 2 ? 1 : -1, next() % 2 ? 1 : -1],
      };
  }
}

function repeatOf(build: Build, part: PartId, next: () => number): RepeatSketch {
  const axis = pick(axes, next()) ?? 'Z';
  const [first, second] = axesAcross(axis);
  const at = (along: Axis) => placeOf(build, part, along, next) as StationId;
  const size = (role: SizeRole) => sizeOf(build, part, role, next) as DimensionId;
  switch (next() % 3) {
    case 0:
      return {
        type: 'circle',
        axis,
        centre: [at(first), at(second)],
        count: size('count'),
        circle: next() % 2 ? size('diameter') : undefined,
        start: next() % 2 ? size('angle') : undefined,
      };
    case 1:
      return { type: 'row', axis, count: size('count'), pitch: size('length') };
    default:
      return { type: 'mirror', axis, about: at(axis) };
  }
}
