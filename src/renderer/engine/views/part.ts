import type { DimensionId, PartId, StationId } from '../../../shared/base/ids.ts';
import type { Dimension } from '../../../shared/build/dimension.ts';
import { kindOfMeasure } from '../../../shared/build/kind-of-measure.ts';
import type { Part } from '../../../shared/build/part.ts';
import type { Station } from '../../../shared/build/station.ts';
import type { Finding, Severity } from '../../../shared/check/rule.ts';
import type { AxisDrawing, ResolvedDimension } from '../../../shared/drawing/drawing.ts';
import type { Kind, LengthUnit } from '../../../shared/quantity/kind.ts';
import { limitsProblemWords, valueProblemWords } from '../problem-words.ts';
import { bareInch, bareMm, show, showBand } from '../show.ts';
import { defineView, type Scene } from '../view.ts';
import { type StripModel, stripOf } from './strip.ts';

/** The gravest open finding that points at a row. */
export type RowMark = Severity | undefined;

export interface StationRow {
  readonly record: Station;
  /** Place from the datum as shown; undefined while no chain reaches it. */
  readonly at: string | undefined;
  readonly band: string | undefined;
  readonly mark: RowMark;
}

export interface DimensionRow {
  readonly record: Dimension;
  readonly kind: Kind;
  /** Names of the two stations, or the size's form. */
  readonly from: string;
  readonly to: string;
  readonly axis: string;
  /** The resolved value in the build's unit (or the kind's own). */
  readonly value: string | undefined;
  /** A length in the other of the two units, bare: inches in a build of mm, mm in one of inches. */
  readonly other: string | undefined;
  readonly isFormula: boolean;
  readonly lower: string | undefined;
  readonly upper: string | undefined;
  /** Where the limits come from, in words. */
  readonly limitsFrom: string;
  readonly valueProblem: string | undefined;
  readonly limitsProblem: string | undefined;
  readonly mark: RowMark;
}

/** All that the Drawing Office shows of one part. */
export interface PartSheet {
  readonly part: Part;
  readonly unit: LengthUnit;
  readonly stations: readonly StationRow[];
  readonly dimensions: readonly DimensionRow[];
  readonly strips: readonly StripModel[];
}

const rank: Readonly<Record<Severity, number>> = { stop: 3, caution: 2, note: 1 };

export function marksOf(findings: readonly Finding[]): ReadonlyMap<string, Severity> {
  const marks = new Map<string, Severity>();
  for (const { at, severity, accepted } of findings) {
    if (accepted !== undefined) continue;
    for (const id of at) {
      const now = marks.get(id);
      if (now === undefined || rank[severity] > rank[now]) marks.set(id, severity);
    }
  }
  return marks;
}

/** Drawing Office of one part. Undefined when the part is not there any more. */
export const partView = defineView<{ readonly part: PartId }, PartSheet | undefined>({
  open: () => {
    const rows = new Map<string, { readonly from: readonly unknown[]; readonly row: unknown }>();
    const strips = new Map<string, { readonly from: readonly unknown[]; readonly row: unknown }>();
    /** Reuses a row while everything that it was made from is the same. */
    const kept = <R>(held: typeof rows, key: string, from: readonly unknown[], make: () => R): R => {
      const known = held.get(key);
      if (known?.from.every((value, i) => value === from[i])) return known.row as R;
      const row = make();
      held.set(key, { from, row });
      return row;
    };
    return (scene, { part: id }) => {
      const part = scene.index.part(id);
      if (part === undefined) return undefined;
      const unit = scene.index.settings().lengthUnit;
      const stations = scene.index.stationsOf(id);
      const dimensions = scene.index.dimensionsOf(id);
      const axes = scene.works.drawing.axesOf(id);
      const marks = marksOf(scene.works.findingsOf(id));
      const axisOf = new Map(axes.map((drawing) => [drawing.axis as string, drawing]));
      const resolved = dimensions.map((dimension) => scene.works.drawing.dimension(dimension.id));
      return {
        part,
        unit,
        stations: stations.map((record) => {
          const drawing = axisOf.get(record.axis);
          const mark = marks.get(record.id);
          return kept(rows, record.id, [record, drawing, mark, unit], () => stationRow(record, drawing, mark, unit));
        }),
        dimensions: dimensions.map((record, i) => {
          const mark = marks.get(record.id);
          const from = [record, resolved[i], mark, unit, stations, scene.index.parts()];
          return kept(rows, record.id, from, () => dimensionRow(scene, record, resolved[i]!, mark, unit));
        }),
        strips: axes.map((drawing) =>
          kept(strips, drawing.axis, [drawing, stations, dimensions, unit, ...resolved], () =>
            stripOf({ scene, drawing, stations, dimensions, unit }),
          ),
        ),
      };
    };
  },
});

function stationRow(record: Station, drawing: AxisDrawing | undefined, mark: RowMark, unit: LengthUnit): StationRow {
  const placed = drawing?.stations.find((station) => station.id === record.id);
  const reached = placed !== undefined && placed.group === 0 && drawing?.datum !== undefined;
  return {
    record,
    at: reached ? show(placed.at, 'length', unit) : undefined,
    band: reached && !record.datum ? showBand(placed.band, unit) : undefined,
    mark,
  };
}

function dimensionRow(
  scene: Scene,
  record: Dimension,
  resolved: ResolvedDimension,
  mark: RowMark,
  unit: LengthUnit,
): DimensionRow {
  const kind = kindOfMeasure(record.measure);
  const { value, limits } = resolved;
  const isLength = kind === 'length';
  const station = (id: StationId) => scene.index.station(id);
  const between = record.measure.type === 'between' ? record.measure : undefined;
  return {
    record,
    kind,
    from: between === undefined ? (record.measure as { form: string }).form : (station(between.from)?.name ?? ''),
    to: between === undefined ? '' : (station(between.to)?.name ?? ''),
    axis: between === undefined ? '' : (station(between.from)?.axis ?? ''),
    value: value === undefined ? undefined : show(value, kind, unit),
    other: value === undefined || !isLength ? undefined : (unit === 'in' ? bareMm : bareInch)(value),
    isFormula: resolved.isFormula,
    lower: limits === undefined ? undefined : show(limits.lower, kind, unit),
    upper: limits === undefined ? undefined : show(limits.upper, kind, unit),
    limitsFrom: limits === undefined ? '' : limits.row,
    valueProblem: resolved.problem === undefined ? undefined : valueProblemWords(scene, resolved.problem),
    limitsProblem: resolved.limitsProblem === undefined ? undefined : limitsProblemWords(resolved.limitsProblem),
    mark,
  };
}

/** @returns the name of a dimension as a formula of another part would write it. */
export function fullName(scene: Scene, id: DimensionId): string {
  const dimension = scene.index.dimension(id);
  if (dimension === undefined) return '';
  return `${dimension.name} of ${scene.index.part(dimension.part)?.name ?? ''}`;
}
