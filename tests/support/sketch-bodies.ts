import type { BodyId, DimensionId, PartId, SolidId, StationId } from '../../src/shared/base/ids.ts';
import type { Body, Repeat, Shape } from '../../src/shared/build/body.ts';
import { type Dimension, defaultDimension, type SizeForm } from '../../src/shared/build/dimension.ts';
import { encodeMesh } from '../../src/shared/build/mesh-code.ts';
import { defaultPart, type Part } from '../../src/shared/build/part.ts';
import type { BuildRecord } from '../../src/shared/build/records.ts';
import { defaultSettings } from '../../src/shared/build/settings.ts';
import type { Solid } from '../../src/shared/build/solid.ts';
import { type Axis, axes, defaultStation } from '../../src/shared/build/station.ts';

/** A place as a number of mm from the datum of its axis. */
export interface BodySketch {
  readonly part: Part;
  /** The station so far along the axis: the same one for the same number. */
  at(axis: Axis, mm: number): StationId;
  /** The size of that form and value: the same one for the same two. */
  size(form: SizeForm, value: number | string): DimensionId;
  body(shape: Shape, more?: Partial<Body>): Body;
  records(): readonly BuildRecord[];
}

/** A part with a datum at 0 along each axis, whose stations and sizes come to be as bodies ask for them. */
export function sketchBodies(key = 'b'): BodySketch {
  const part = defaultPart(`part:${key}` as PartId, `body ${key}`, 1);
  const stations = new Map<string, readonly BuildRecord[]>();
  const sizes = new Map<string, Dimension>();
  const bodies: Body[] = [];
  const stationId = (axis: Axis, mm: number) => `station:${key}-${axis}${mm}` as StationId;
  const sketch: BodySketch = {
    part,
    at(axis, mm) {
      const id = stationId(axis, mm);
      const name = `${axis}${mm}`;
      if (!stations.has(name)) {
        const order = stations.size + 1;
        const station = { ...defaultStation(id, part.id, axis, name, order), datum: mm === 0 };
        const measure = { type: 'between', from: stationId(axis, 0), to: id } as const;
        const dimension = defaultDimension(`dimension:${key}-${name}` as DimensionId, part.id, name, measure, order);
        stations.set(name, mm === 0 ? [station] : [station, { ...dimension, value: String(mm) }]);
      }
      return id;
    },
    size(form, value) {
      const name = `${form} ${value}`;
      const id = `dimension:${key}-${form}-${String(value).replace(/[^\w.-]/g, '_')}` as DimensionId;
      if (!sizes.has(name)) {
        const dimension = defaultDimension(id, part.id, name, { type: 'size', form }, 1000 + sizes.size);
        sizes.set(name, { ...dimension, value: String(value) });
      }
      return id;
    },
    body(shape, more = {}) {
      const n = bodies.length + 1;
      const body: Body = {
        kind: 'body',
        id: `body:${key}${n}` as BodyId,
        part: part.id,
        name: `${shape.type} ${n}`,
        adds: shape.type !== 'hole',
        finish: 'as cast',
        shape,
        repeats: [],
        note: '',
        order: n,
        ...more,
      };
      bodies.push(body);
      return body;
    },
    records() {
      for (const axis of axes) sketch.at(axis, 0);
      const placing = [...stations.values()].flat();
      return [
        defaultSettings('Bodies'),
        part,
        ...placing.filter(({ kind }) => kind === 'station'),
        ...placing.filter(({ kind }) => kind === 'dimension'),
        ...sizes.values(),
        ...bodies,
      ];
    },
  };
  return sketch;
}

/** A tetrahedron with three edges of 10 mm along the axes; 1000/6 mm³. */
export const tetrahedron = (): Solid => ({
  kind: 'solid',
  id: 'solid:t' as SolidId,
  name: 'tetrahedron',
  fileName: 'tetrahedron.stl',
  unit: 'mm',
  ...encodeMesh({
    vertices: Float64Array.of(0, 0, 0, 10, 0, 0, 0, 10, 0, 0, 0, 10),
    triangles: Uint32Array.of(0, 2, 1, 0, 1, 3, 1, 2, 3, 2, 0, 3),
  }),
  note: '',
});

/** One body of every shape and one repeat of every kind, on one part, with the mesh that one of them needs. */
export function everyShape(): readonly BuildRecord[] {
  const s = sketchBodies();
  const { at, size } = s;
  const ends = [at('Z', 0), at('Z', 20)] as const;
  const point = (x: number, y: number) => [at('X', x), at('Y', y)] as [StationId, StationId];
  const axis = 'Z';
  const shapes: readonly Shape[] = [
    { type: 'block', x: [at('X', 0), at('X', 60)], y: [at('Y', 0), at('Y', 40)], z: [...ends] },
    { type: 'cylinder', axis, ends: [...ends], centre: point(30, 20), diameter: size('diameter', 25) },
    {
      type: 'cylinder',
      axis,
      ends: [...ends],
      centre: point(30, 20),
      diameter: size('diameter', 25),
      bore: size('diameter', 10),
    },
    {
      type: 'cone',
      axis,
      ends: [...ends],
      centre: point(30, 20),
      diameters: [size('diameter', 25), size('diameter', 10)],
    },
    {
      type: 'prism',
      axis,
      ends: [...ends],
      corners: [{ at: point(0, 0), radius: size('radius', 3) }, { at: point(60, 0) }, { at: point(0, 40) }],
    },
    {
      type: 'revolved',
      axis,
      centre: point(30, 20),
      outline: [
        { at: at('Z', 0) },
        { at: at('Z', 0), diameter: size('diameter', 10) },
        { at: at('Z', 20), diameter: size('diameter', 25) },
        { at: at('Z', 20) },
      ],
    },
    {
      type: 'hole',
      axis,
      from: at('Z', 20),
      to: at('Z', 5),
      centre: point(30, 20),
      diameter: size('thread', 'M8'),
      counterbore: { diameter: size('diameter', 15), depth: size('length', 4) },
      countersink: { diameter: size('diameter', 10), angle: size('angle', 90) },
      point: size('angle', 118),
    },
    { type: 'slot', axis, ends: [...ends], centres: [point(0, 0), point(60, 0)], width: size('length', 8) },
    { type: 'pocket', axis, ends: [...ends], from: point(0, 0), to: point(60, 40), radius: size('radius', 3) },
    {
      type: 'rib',
      axis,
      at: at('Z', 5),
      thickness: size('length', 4),
      corners: [point(0, 0), point(60, 0), point(0, 40)],
    },
    { type: 'fillet', axis, ends: [...ends], corner: point(0, 0), radius: size('radius', 3), quadrant: [1, -1] },
    {
      type: 'imported',
      solid: tetrahedron().id,
      origin: [at('X', 0), at('Y', 0), at('Z', 20)],
      turn: ['-X', '-Y', '+Z'],
    },
  ];
  const repeats: readonly Repeat[] = [
    {
      type: 'circle',
      axis,
      centre: point(30, 20),
      count: size('count', 3),
      circle: size('diameter', 25),
      start: size('angle', 30),
    },
    { type: 'row', axis: 'X', count: size('count', 2), pitch: size('length', 40) },
    { type: 'mirror', axis: 'Y', about: at('Y', 0) },
  ];
  shapes.forEach((shape, i) => {
    const takes = shape.type === 'hole' || shape.type === 'slot' || shape.type === 'pocket';
    s.body(shape, { adds: !takes, finish: takes ? 'machined' : 'as cast', repeats: i === 6 ? [...repeats] : [] });
  });
  const records = s.records();
  const firstBody = records.findIndex(({ kind }) => kind === 'body');
  return [...records.slice(0, firstBody), tetrahedron(), ...records.slice(firstBody)];
}
