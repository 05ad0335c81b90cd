import type { DimensionId, StationId } from '../../../shared/base/ids.ts';
import type { Dimension, Source } from '../../../shared/build/dimension.ts';
import type { Axis, Station, StationForm } from '../../../shared/build/station.ts';
import type { AxisDrawing, Conflict } from '../../../shared/drawing/drawing.ts';
import type { LengthUnit } from '../../../shared/quantity/kind.ts';
import { bareMm, show, showBand } from '../show.ts';
import type { Scene } from '../view.ts';

/** A station on the chain strip. */
export interface StripStation {
  readonly id: StationId;
  readonly name: string;
  readonly form: StationForm;
  readonly datum: boolean;
  /** Index of its group: 0 hangs on the datum. */
  readonly group: number;
  /** Place in mm from the group's origin, and the worst-case band about it. */
  readonly at: number;
  readonly minus: number;
  readonly plus: number;
  readonly atText: string;
  readonly bandText: string;
}

/** A dimension between two stations of the strip. */
export interface StripArc {
  readonly id: DimensionId;
  readonly name: string;
  readonly from: StationId;
  readonly to: StationId;
  /** The value as resolved and shown; "no value" when there is none. */
  readonly text: string;
  readonly source: Source;
  /** `placing`: the places hang on it; `closing`: it closes a loop; `conflict`: it is of a loop that cannot close. */
  readonly role: 'placing' | 'closing' | 'conflict' | 'no value';
}

export interface StripTie {
  readonly from: StationId;
  readonly to: StationId;
  readonly dimension: DimensionId | undefined;
  /** What a click would do, and the same with the names of the stations. */
  readonly act: string;
  readonly sentence: string;
}

export interface StripConflict {
  readonly dimensions: readonly DimensionId[];
  readonly stations: readonly StationId[];
  readonly closingError: string;
  readonly allowed: string;
  readonly suspects: readonly { readonly dimension: DimensionId; readonly name: string; readonly wouldBe: string }[];
}

export interface StripModel {
  readonly axis: Axis;
  readonly datum: StationId | undefined;
  readonly stations: readonly StripStation[];
  readonly groups: number;
  readonly arcs: readonly StripArc[];
  readonly ties: readonly StripTie[];
  readonly conflicts: readonly StripConflict[];
}

interface StripInput {
  readonly scene: Scene;
  readonly drawing: AxisDrawing;
  readonly stations: readonly Station[];
  readonly dimensions: readonly Dimension[];
  readonly unit: LengthUnit;
}

/** The chain strip of one axis: where its stations stand, what runs between them, what is amiss. */
export function stripOf({ scene, drawing, stations, dimensions, unit }: StripInput): StripModel {
  const byId = new Map(stations.filter(({ axis }) => axis === drawing.axis).map((station) => [station.id, station]));
  const name = (id: StationId) => byId.get(id)?.name ?? '';
  const contradicted = new Set(drawing.conflicts.flatMap((conflict) => conflict.dimensions));
  const closing = new Set(drawing.loops.flatMap((loop) => loop.edges.map((edge) => edge.dimension)));
  const placing = new Set(drawing.stations.flatMap((station) => station.path));
  const arcs = dimensions.flatMap((dimension): StripArc[] => {
    const { measure } = dimension;
    if (measure.type !== 'between' || !byId.has(measure.from) || !byId.has(measure.to)) return [];
    const { value } = scene.works.drawing.dimension(dimension.id);
    const role =
      value === undefined
        ? 'no value'
        : contradicted.has(dimension.id)
          ? 'conflict'
          : placing.has(dimension.id) || !closing.has(dimension.id)
            ? 'placing'
            : 'closing';
    const text = value === undefined ? 'no value' : show(value, 'length', unit);
    return [
      {
        id: dimension.id,
        name: dimension.name,
        from: measure.from,
        to: measure.to,
        text,
        source: dimension.source,
        role,
      },
    ];
  });
  return {
    axis: drawing.axis,
    datum: drawing.datum,
    groups: drawing.groups.length,
    stations: drawing.stations.map((placed) => {
      const station = byId.get(placed.id);
      return {
        id: placed.id,
        name: station?.name ?? '',
        form: station?.form ?? 'face',
        datum: placed.id === drawing.datum,
        group: placed.group,
        at: placed.at,
        minus: placed.band.minus,
        plus: placed.band.plus,
        atText: show(placed.at, 'length', unit),
        bandText: showBand(placed.band, unit),
      };
    }),
    arcs,
    ties: drawing.ties.map((tie) => {
      const act = tie.dimension === undefined ? 'Add a dimension' : 'Fill in the dimension';
      return {
        from: tie.from,
        to: tie.to,
        dimension: tie.dimension,
        act,
        sentence: `${act} from ${name(tie.from)} to ${name(tie.to)}`,
      };
    }),
    conflicts: drawing.conflicts.map((conflict) => conflictOf(conflict, dimensions, unit)),
  };
}

function conflictOf(conflict: Conflict, dimensions: readonly Dimension[], unit: LengthUnit): StripConflict {
  const { loop } = conflict;
  const stations = new Set<StationId>();
  const members = new Set(conflict.dimensions);
  for (const { id, measure } of dimensions) {
    if (members.has(id) && measure.type === 'between') stations.add(measure.from).add(measure.to);
  }
  return {
    dimensions: conflict.dimensions,
    stations: [...stations],
    closingError: show(Math.abs(loop.closingError), 'length', unit),
    allowed: `${bareMm(loop.worstMinus)} to ${show(loop.worstPlus, 'length', 'mm')}`,
    suspects: conflict.suspects.map((suspect) => ({
      dimension: suspect.dimension,
      name: dimensions.find(({ id }) => id === suspect.dimension)?.name ?? '',
      wouldBe: show(suspect.wouldBe, 'length', unit),
    })),
  };
}
