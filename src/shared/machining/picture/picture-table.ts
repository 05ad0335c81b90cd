import { axesAcross } from '../../build/body-uses.ts';
import type { Axis } from '../../build/station.ts';
import { readFigures } from '../../plan/machine-figures-read.ts';
import { knownCuts, type Scene } from '../setups/scene.ts';
import { extentAlong, tableStand } from '../setups/table-stand.ts';
import type { Judged } from './judged.ts';
import { pictureCut } from './picture-cut.ts';
import { crossed, zeroAcross } from './picture-frame.ts';
import type { PictureAxis, PictureFrame, Span, TableScene } from './scene.ts';

/** Work on a table or in a vise in the places of its picture. */
export function tableScene(scene: Scene, { hits }: Judged): TableScene | undefined {
  const { setup, type, worlds, figures } = scene;
  const world = worlds.drawn;
  const stand = tableStand(scene);
  const upAxis = stand.upright[0];
  if (stand.unknown.length > 0 || upAxis === undefined || worlds.adding.length === 0) return undefined;
  const lineAxis = setup.line.axis;
  const extent = (axis: Axis): Span => extentAlong(world, worlds.adding, lineAxis, axis);
  const up = uprightOf(scene, upAxis, extent, stand.seat && world.place(stand.seat));
  const isUpright = upAxis === lineAxis;
  const frame = isUpright ? spindleFrame(scene, up, extent) : strokeFrame(scene, up, extent);
  const span = ({ axis, sign, zero }: PictureAxis): Span => {
    const [low, high] = extent(axis);
    return sign === 1 ? [low - zero, high - zero] : [zero - high, zero - low];
  };
  const moving = isUpright ? frame.up : frame.along;
  return {
    is: 'table',
    machine: type,
    frame,
    size: { along: span(frame.along), back: span(frame.back), up: span(frame.up) },
    jaws: jawsOf(scene, frame),
    has: { ...Object.fromEntries(viseFigures(scene)), ...Object.fromEntries(figures.values) },
    isUpright,
    hits,
    cuts: knownCuts(scene).map((cut) => pictureCut(scene, cut, (at) => moving.sign * (at - moving.zero))),
  };
}

/** Heights count from the seat, else from the lower end of the work; on a drill press the spindle stands over it. */
function uprightOf(scene: Scene, axis: Axis, extent: (axis: Axis) => Span, seat: number | undefined): PictureAxis {
  const { setup } = scene;
  const [low, high] = extent(axis);
  if (axis === setup.line.axis) {
    const sign = setup.headEnd === 'low' ? -1 : 1;
    return { axis, sign, zero: seat ?? (sign === 1 ? low : high) };
  }
  if (seat === undefined) {
    // Nothing says which end is up: the one on which something is made.
    const sign = made(scene, axis, (low + high) / 2) < 0 ? -1 : 1;
    return { axis, sign, zero: sign === 1 ? low : high };
  }
  // The work lies on that side of the seat on which there is more of it.
  const sign = high - seat >= seat - low ? 1 : -1;
  return { axis, sign, zero: seat };
}

/** Whether more of what is made in the set-up lies beyond (positive) or before a place along an axis. */
function made({ cuts, worlds }: Scene, axis: Axis, middle: number): number {
  const { numbers } = worlds.work;
  let sum = 0;
  for (const cut of cuts) {
    const { operation } = cut.ok ? cut.value : cut.error;
    for (const id of operation.makes) {
      const record = numbers.record(id);
      const place = record?.kind === 'station' && record.axis === axis ? numbers.place(record.id) : undefined;
      if (place !== undefined) sum += Math.sign(place.at - middle);
    }
  }
  return sum;
}

/** The line is the spindle: the work is turned so that it reaches least towards the column, as far as its own axes let it. */
function spindleFrame({ setup, worlds }: Scene, up: PictureAxis, extent: (axis: Axis) => Span): PictureFrame {
  const { line } = worlds.drawn;
  const ways = axesAcross(setup.line.axis).flatMap((axis) => {
    const zero = zeroAcross(line, axis);
    const [low, high] = extent(axis);
    return [
      { axis, sign: 1, zero, reach: high - zero },
      { axis, sign: -1, zero, reach: zero - low },
    ] as const;
  });
  const least = ways.reduce((best, way) => (way.reach < best.reach ? way : best));
  const back: PictureAxis = { axis: least.axis, sign: least.sign, zero: least.zero };
  const along = crossed(back, up);
  return { up, back, along: { ...along, zero: zeroAcross(line, along.axis) } };
}

/** The line runs across the picture; behind it, where there is a column, that side on which the work reaches less. */
function strokeFrame({ setup, worlds }: Scene, up: PictureAxis, extent: (axis: Axis) => Span): PictureFrame {
  const { line } = worlds.drawn;
  const { axis } = setup.line;
  const other = axesAcross(axis).find((one) => one !== up.axis) ?? axis;
  const zero = zeroAcross(line, other);
  const [low, high] = extent(other);
  const back: PictureAxis = { axis: other, sign: high - zero <= zero - low ? 1 : -1, zero };
  const along = crossed(back, up);
  const [first, last] = extent(axis);
  return { up, back, along: { ...along, zero: along.sign === 1 ? first : last } };
}

function jawsOf({ setup, reading, worlds }: Scene, frame: PictureFrame): TableScene['jaws'] {
  const { holding } = setup;
  if (holding.as !== 'vise' || holding.ends === undefined) return undefined;
  const [a, b] = holding.ends.map((end, i) => reading.place(end, `holding/ends/${i}`));
  if (!a?.ok || !b?.ok) return undefined;
  const station = worlds.work.numbers.record(a.value.station);
  if (station?.kind !== 'station') return undefined;
  const way = (['along', 'back', 'up'] as const).find((one) => frame[one].axis === station.axis);
  if (way === undefined) return undefined;
  const { sign, zero } = frame[way];
  const [p, q] = [a, b].map(({ value }) => sign * (worlds.drawn.place(value) - zero)) as [number, number];
  return { way, span: [Math.min(p, q), Math.max(p, q)] };
}

/** Jaws of the shop's vise, where the machine has none of its own: of the one that opens widest. */
function viseFigures({ setup, machines, type, lengthUnit }: Scene): readonly (readonly [string, number])[] {
  if (setup.holding.as !== 'vise' || type === 'vise') return [];
  const vises = machines
    .filter((machine) => machine.type === 'vise')
    .map((machine) => readFigures(machine, lengthUnit).values);
  const widest = vises.reduce<ReadonlyMap<string, number> | undefined>(
    (best, one) => (best === undefined || (one.get('opening') ?? 0) > (best.get('opening') ?? 0) ? one : best),
    undefined,
  );
  return [...(widest ?? [])].filter(([key]) => key === 'jawWidth' || key === 'jawDepth');
}
