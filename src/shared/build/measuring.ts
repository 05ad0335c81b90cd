import type { PartId } from '../base/ids.ts';
import { err, ok, type Result } from '../base/result.ts';
import type { Measure } from './dimension.ts';
import { recordOf } from './look-up.ts';
import type { Build } from './records.ts';
import type { Refusal } from './refusals.ts';

/** Sees that a measure between stations joins two different stations of one axis of the given part. */
export function checkMeasure(build: Build, part: PartId, measure: Measure): Result<Measure, Refusal> {
  if (measure.type === 'size') return ok(measure);
  const from = recordOf(build, 'station', measure.from);
  const to = recordOf(build, 'station', measure.to);
  if (!from || !to) return err({ code: 'station-not-found' });
  for (const station of [from, to]) {
    if (station.part !== part) return err({ code: 'not-of-this-part', data: { station: station.name } });
  }
  if (from.id === to.id) return err({ code: 'same-station', data: { station: from.name } });
  if (from.axis !== to.axis) {
    return err({
      code: 'different-axes',
      data: { from: from.name, to: to.name, fromAxis: from.axis, toAxis: to.axis },
    });
  }
  return ok(measure);
}

/** The name a dimension gets when none is given: what it measures. */
export function nameOfMeasure(build: Build, measure: Measure): string {
  if (measure.type === 'size') return measure.form;
  const from = recordOf(build, 'station', measure.from);
  const to = recordOf(build, 'station', measure.to);
  return from && to ? `${from.name} to ${to.name}`.slice(0, 110) : 'distance';
}
