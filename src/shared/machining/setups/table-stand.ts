import { axesAcross } from '../../build/body-uses.ts';
import { type Axis, axes } from '../../build/station.ts';
import type { KnownPlace } from '../../plan/amounts.ts';
import type { Unknown } from '../../plan/unknown.ts';
import type { Scene } from './scene.ts';
import type { World } from './world.ts';

/**
 * How the work of a set-up stands on a table or in a vise: which of the part's axes may stand upright, and what it stands on. In a vise whose
 * jaws close along the stroke it does not say which side is up: then both that may be are looked at, and the worse counts.
 */
export interface TableStand {
  /** Axes that may be upright. */
  readonly upright: readonly Axis[];
  /** The place that lies on the table; undefined where the lower end of the work does. */
  readonly seat: KnownPlace | undefined;
  readonly unknown: readonly Unknown[];
  /** The height of the work over what it lies on, mm. */
  height(world: World): number;
  /** Its size along an axis. */
  across(world: World, axis: Axis): number;
}

export function tableStand({ setup, type, worlds, reading }: Scene): TableStand {
  const { holding, line } = setup;
  const { numbers } = worlds.work;
  const axisOf = (place: KnownPlace): Axis => {
    const station = numbers.record(place.station);
    return station?.kind === 'station' ? station.axis : line.axis;
  };
  const across = (world: World, axis: Axis): number => sizeAlong(world, worlds.adding, line.axis, axis);
  const stand = (upright: readonly Axis[], seat: KnownPlace | undefined, unknown: readonly Unknown[]): TableStand => ({
    upright,
    seat,
    unknown,
    across,
    height: (world) => {
      const heights = upright.map((axis) => {
        if (!seat) return across(world, axis);
        const [low, high] = extentAlong(world, worlds.adding, line.axis, axis);
        const at = world.place(seat);
        return Math.max(high - at, at - low);
      });
      return Math.max(...heights);
    },
  });
  const spindleUpright = type === 'drill press';
  if (holding.as === 'clamped to the table') {
    if (!holding.seat)
      return spindleUpright
        ? stand([line.axis], undefined, [])
        : stand([], undefined, [{ is: 'field', field: 'holding/seat' }]);
    const seat = reading.place(holding.seat, 'holding/seat');
    return seat.ok ? stand([axisOf(seat.value)], seat.value, []) : stand([], undefined, [seat.error]);
  }
  if (spindleUpright) return stand([line.axis], undefined, []);
  if (holding.as === 'vise') {
    const end = reading.place(holding.ends?.[0], 'holding/ends');
    if (!end.ok) return stand([], undefined, [end.error]);
    const closes = axisOf(end.value);
    return stand(
      axesAcross(line.axis).filter((axis) => axis !== closes),
      undefined,
      [],
    );
  }
  return stand([], undefined, [{ is: 'field', field: 'holding' }]);
}

/** From and to of some pieces along any axis of the first part, mm from its datum. */
export function extentAlong(
  world: World,
  indexes: readonly number[],
  lineAxis: Axis,
  axis: Axis,
): readonly [number, number] {
  if (axis === lineAxis) return world.extentOf(indexes) ?? [0, 0];
  const which = axesAcross(lineAxis).indexOf(axis) as 0 | 1;
  const from = which === 0 ? world.line.u : world.line.v;
  let [low, high] = [Infinity, -Infinity];
  for (const i of indexes) {
    const faces = world.boxOf(i)?.across[which];
    if (!faces) continue;
    low = Math.min(low, faces[0]);
    high = Math.max(high, faces[1]);
  }
  return [low + from, high + from];
}

const sizeAlong = (world: World, indexes: readonly number[], lineAxis: Axis, axis: Axis): number => {
  const [low, high] = extentAlong(world, indexes, lineAxis, axis);
  return high - low;
};

/** The axes of the table's plane, given those that may be upright. */
export const levelAxes = (upright: Axis): readonly Axis[] => axes.filter((axis) => axis !== upright);
