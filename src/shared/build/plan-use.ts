import type { PartId, StationId } from '../base/ids.ts';
import type { Amount, Place } from './amount.ts';
import type { SizeRole } from './body-uses.ts';
import type { RecordId, RecordKind } from './records.ts';
import type { Axis } from './station.ts';

/** One record that a plan names. */
export interface PlanUse {
  readonly id: RecordId;
  readonly kind: RecordKind;
  /** Whose it must be; undefined of a part, a machine, a set-up or a pour. */
  readonly of?: PartId;
  /** The parts of one of which it must be, where there is more than one. */
  readonly among?: readonly PartId[];
  /** The axis that a station must lie along; undefined: any. */
  readonly axis?: Axis;
  /** What a size is taken for: it must serve as one of these. */
  readonly roles?: readonly SizeRole[];
  /** Where in the record it stands, parts joined by `/`. */
  readonly field: string;
  /** The record holds together without it too: where it goes, it is taken out (`withoutGone`). */
  readonly loose: boolean;
}

/** Two stations that must lie along one axis, whichever it is. */
export interface PlanPair {
  readonly stations: readonly [StationId, StationId];
  readonly field: string;
}

export interface PlanUses {
  readonly uses: readonly PlanUse[];
  readonly pairs: readonly PlanPair[];
}

export interface Gather {
  readonly station: (id: StationId, of: PartId, axis: Axis | undefined, field: string) => void;
  readonly places: (ends: readonly [Place, Place], axis: Axis | undefined, field: string) => void;
  readonly size: (amount: Amount, roles: readonly SizeRole[], field: string) => void;
}

/** Gathers into the given lists what a record of the part cannot do without. */
export function gatherer(part: PartId, uses: PlanUse[], pairs: PlanPair[]): Gather {
  const station: Gather['station'] = (id, of, axis, field) => {
    uses.push({ id, kind: 'station', of, ...(axis === undefined ? {} : { axis }), field, loose: false });
  };
  return {
    station,
    places(ends, axis, field) {
      ends.forEach((end, i) => {
        station(end.station, part, axis, `${field}/${i}/station`);
      });
      if (axis === undefined) pairs.push({ stations: [ends[0].station, ends[1].station], field: `${field}/1/station` });
    },
    size(amount, roles, field) {
      if (amount.size === undefined) return;
      uses.push({ id: amount.size, kind: 'dimension', of: part, roles, field: `${field}/size`, loose: false });
    },
  };
}
