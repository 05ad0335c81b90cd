import type { DimensionId, PartId, StationId } from '../../src/shared/base/ids.ts';
import { type Dimension, defaultDimension, type Measure } from '../../src/shared/build/dimension.ts';
import { kindOfMeasure } from '../../src/shared/build/kind-of-measure.ts';
import { defaultPart, type Part } from '../../src/shared/build/part.ts';
import { defaultSettings, type Settings } from '../../src/shared/build/settings.ts';
import { type Axis, defaultStation, type Station } from '../../src/shared/build/station.ts';
import type { DimensionFact } from '../../src/shared/check/rule.ts';
import type { AxisDrawing, ResolvedDimension } from '../../src/shared/drawing/drawing.ts';

export const partId = (name: string): PartId => `part:${name}` as PartId;
export const stationId = (name: string): StationId => `station:${name}` as StationId;
export const dimensionId = (name: string): DimensionId => `dimension:${name}` as DimensionId;

/** Settings of a build under test; fields that matter to a case are given. */
export const settings = (over: Partial<Settings> = {}): Settings => ({ ...defaultSettings('test machine'), ...over });

/** A casting called after its id. */
export const part = (name: string, over: Partial<Part> = {}): Part => ({
  ...defaultPart(partId(name), name, 1),
  material: 'aluminium',
  ...over,
});

export const station = (name: string, over: Partial<Station> & { axis?: Axis } = {}): Station => ({
  ...defaultStation(stationId(name), partId('column'), over.axis ?? 'Z', name, 1),
  ...over,
});

export const size = (form: Extract<Measure, { type: 'size' }>['form']): Measure => ({ type: 'size', form });
export const between = (from: string, to: string): Measure => ({
  type: 'between',
  from: stationId(from),
  to: stationId(to),
});

interface FactGiven extends Partial<Omit<Dimension, 'kind' | 'id' | 'value'>> {
  /** Text as written; the resolved value as text when left out. */
  readonly text?: string;
  readonly resolved?: Partial<ResolvedDimension>;
  readonly namedBy?: readonly DimensionId[];
}

/** A dimension of the part `column` with a plain value, as the graph would resolve it. */
export function fact(name: string, value: number | undefined, given: FactGiven = {}): DimensionFact {
  const { text, resolved, namedBy = [], measure = size('length'), ...over } = given;
  const record: Dimension = {
    ...defaultDimension(dimensionId(name), partId('column'), name, measure, 1),
    ...over,
    value: text ?? (value === undefined ? '' : String(value)),
  };
  return {
    record,
    resolved: {
      id: record.id,
      unit: kindOfMeasure(measure),
      value,
      problem: value === undefined ? { why: 'empty' } : undefined,
      limits: undefined,
      limitsProblem: undefined,
      isFormula: false,
      references: [],
      ...resolved,
    },
    namedBy,
  };
}

/** An axis with all its stations in one group, unless said otherwise. */
export const axis = (over: Partial<AxisDrawing> = {}): AxisDrawing => ({
  part: partId('column'),
  axis: 'Z',
  datum: undefined,
  stations: [],
  groups: [],
  loops: [],
  conflicts: [],
  ties: [],
  ...over,
});
