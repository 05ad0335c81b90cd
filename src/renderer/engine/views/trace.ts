import type { BodyId, DimensionId, PartId, StationId } from '../../../shared/base/ids.ts';
import { kindOfMeasure } from '../../../shared/build/kind-of-measure.ts';
import type { RecordId } from '../../../shared/build/records.ts';
import { bodyProblemWords, extentWords } from '../body-words.ts';
import { valueProblemWords } from '../problem-words.ts';
import { show, showBand } from '../show.ts';
import { defineView, type Scene } from '../view.ts';
import { type FindingLine, lineOfFinding } from './findings.ts';
import { fullName } from './part.ts';

/** One step of "where do you come from?". `depth` is how far down the chain it stands. */
export interface TraceStep {
  readonly id: RecordId;
  readonly depth: number;
  readonly name: string;
  /** As written on the drawing, e.g. `bore of column + 0.2 mm`. */
  readonly written: string;
  readonly value: string;
  readonly source: string;
}

/** A station, dimension or body, where its number comes from and what hangs together with it. */
export interface Trace {
  readonly id: RecordId;
  readonly kind: 'station' | 'dimension' | 'body';
  readonly name: string;
  readonly part: PartId;
  readonly value: string | undefined;
  readonly problem: string | undefined;
  /** The worst-case and the root-sum-square band, or the limits, in words. */
  readonly band: string | undefined;
  readonly rss: string | undefined;
  readonly limitsRow: string | undefined;
  readonly steps: readonly TraceStep[];
  readonly touches: readonly Neighbour[];
  readonly touchesMore: number;
  readonly hangsOn: readonly Neighbour[];
  readonly hangsOnMore: number;
  readonly findings: readonly FindingLine[];
}

export interface Neighbour {
  readonly id: RecordId;
  readonly name: string;
  readonly part: PartId;
}

// Enough to follow a chain by eye; the dependency map shows the rest.
const STEPS_SHOWN = 60;
const DEPTH_SHOWN = 12;
const NEIGHBOURS_SHOWN = 12;

/** Everything behind one station, dimension or body. Undefined when it is not there (any more). */
export const traceView = defineView<{ readonly id: RecordId }, Trace | undefined>({
  open:
    () =>
    (scene, { id }) => {
      const part = scene.index.partOf(id);
      if (part === undefined) return undefined;
      const findings = scene.works
        .findingsOf(part)
        .filter((finding) => finding.at.includes(id))
        .map((finding) => lineOfFinding(scene, finding));
      if (scene.index.dimension(id as DimensionId))
        return { ...traceDimension(scene, id as DimensionId, part), findings };
      if (scene.index.station(id as StationId)) return { ...traceStation(scene, id as StationId, part), findings };
      if (scene.index.body(id as BodyId)) return { ...traceBody(scene, id as BodyId, part), findings };
      return undefined;
    },
});

/** What a body stands on: its size over all, its stations and sizes, and the dimensions behind them. */
function traceBody(scene: Scene, id: BodyId, part: PartId): Omit<Trace, 'findings'> {
  const record = scene.index.body(id)!;
  const placed = scene.solids.bodiesOf(part).find((body) => body.record.id === id);
  const nameOf = (other: DimensionId | StationId) =>
    scene.index.dimension(other as DimensionId)?.name ?? scene.index.station(other as StationId)?.name ?? '';
  const on = [...(placed?.stations ?? []), ...(placed?.dimensions ?? [])];
  return {
    id,
    kind: 'body',
    name: record.name,
    part,
    value: placed && extentWords(placed, scene.index.settings().lengthUnit),
    problem: placed?.problem && bodyProblemWords(placed.problem, nameOf),
    band: undefined,
    rss: undefined,
    limitsRow: undefined,
    steps: (placed?.dimensions ?? []).slice(0, STEPS_SHOWN).map((dimension) => stepOf(scene, dimension, 0, part)),
    hangsOn: on.slice(0, NEIGHBOURS_SHOWN).map((other) => ({ id: other, name: nameOf(other), part })),
    hangsOnMore: Math.max(0, on.length - NEIGHBOURS_SHOWN),
    touches: [],
    touchesMore: 0,
  };
}

function traceDimension(scene: Scene, id: DimensionId, part: PartId): Omit<Trace, 'findings'> {
  const unit = scene.index.settings().lengthUnit;
  const record = scene.index.dimension(id)!;
  const kind = kindOfMeasure(record.measure);
  const { value, limits, problem } = scene.works.drawing.dimension(id);
  const steps: TraceStep[] = [];
  const walk = (at: DimensionId, depth: number, above: ReadonlySet<DimensionId>) => {
    if (steps.length >= STEPS_SHOWN) return;
    steps.push(stepOf(scene, at, depth, part));
    if (depth >= DEPTH_SHOWN || above.has(at)) return;
    for (const next of scene.works.drawing.dimension(at).references) walk(next, depth + 1, new Set([...above, at]));
  };
  walk(id, 0, new Set());
  return {
    id,
    kind: 'dimension',
    name: record.name,
    part,
    value: value === undefined ? undefined : show(value, kind, unit),
    problem: problem === undefined ? undefined : valueProblemWords(scene, problem),
    band: limits === undefined ? undefined : `${show(limits.lower, kind, unit)} to ${show(limits.upper, kind, unit)}`,
    rss: undefined,
    limitsRow: limits?.row,
    steps,
    ...neighbours(scene, id, part),
  };
}

function traceStation(scene: Scene, id: StationId, part: PartId): Omit<Trace, 'findings'> {
  const unit = scene.index.settings().lengthUnit;
  const record = scene.index.station(id)!;
  const drawing = scene.works.drawing.axesOf(part).find((each) => each.axis === record.axis);
  const placed = drawing?.stations.find((station) => station.id === id);
  const origin = placed && drawing?.groups[placed.group]?.origin;
  const originName = origin === undefined ? '' : (scene.index.station(origin)?.name ?? '');
  const reached = placed !== undefined && drawing?.datum !== undefined && placed.group === 0;
  return {
    id,
    kind: 'station',
    name: record.name,
    part,
    value:
      placed === undefined
        ? undefined
        : placeWords(show(placed.at, 'length', unit), originName, origin === id, reached),
    problem: reached
      ? undefined
      : drawing?.datum === undefined
        ? `Axis ${record.axis} has no datum.`
        : origin === id
          ? `No dimension ties it to the datum of ${record.axis}.`
          : `No dimension ties it to the datum of ${record.axis}; it hangs on ${originName} alone.`,
    band: placed === undefined || placed.path.length === 0 ? undefined : showBand(placed.band, unit),
    rss: placed === undefined || placed.path.length === 0 ? undefined : `±${show(placed.band.rss, 'length', unit)}`,
    limitsRow: undefined,
    steps: (placed?.path ?? []).slice(0, STEPS_SHOWN).map((dimension) => stepOf(scene, dimension, 0, part)),
    ...neighbours(scene, id, part),
  };
}

/** A station that others are placed from has no distance from itself worth telling. */
function placeWords(at: string, from: string, isOrigin: boolean, reached: boolean): string {
  if (!isOrigin) return `${at} from ${from}`;
  return reached ? `${at}, the datum` : 'not placed';
}

function stepOf(scene: Scene, id: DimensionId, depth: number, home: PartId): TraceStep {
  const record = scene.index.dimension(id)!;
  const { value } = scene.works.drawing.dimension(id);
  return {
    id,
    depth,
    name: record.part === home ? record.name : fullName(scene, id),
    written: record.value,
    value:
      value === undefined ? 'no value' : show(value, kindOfMeasure(record.measure), scene.index.settings().lengthUnit),
    source: record.source,
  };
}

function neighbours(scene: Scene, id: DimensionId | StationId, home: PartId) {
  const name = (other: DimensionId | StationId): Neighbour => {
    const record = scene.index.dimension(other as DimensionId) ?? scene.index.station(other as StationId);
    const part = record?.part ?? home;
    const where = part === home ? '' : ` of ${scene.index.part(part)?.name ?? ''}`;
    return { id: other, name: `${record?.name ?? ''}${where}`, part };
  };
  const list = (found: { readonly dimensions: readonly DimensionId[]; readonly stations: readonly StationId[] }) =>
    [...found.dimensions, ...found.stations].filter((other) => other !== id);
  const on = list(scene.works.drawing.hangsOn(id));
  const touched = scene.index.dimension(id as DimensionId) ? list(scene.works.drawing.touches(id as DimensionId)) : [];
  return {
    hangsOn: on.slice(0, NEIGHBOURS_SHOWN).map(name),
    hangsOnMore: Math.max(0, on.length - NEIGHBOURS_SHOWN),
    touches: touched.slice(0, NEIGHBOURS_SHOWN).map(name),
    touchesMore: Math.max(0, touched.length - NEIGHBOURS_SHOWN),
  };
}
