import type { DimensionId, OperationId } from '../../base/ids.ts';
import { kindOfMeasure } from '../../build/kind-of-measure.ts';
import type { Machine } from '../../build/machine.ts';
import type { BuildRecord, RecordId } from '../../build/records.ts';
import { sameContent } from '../../drawing/keep.ts';
import { readFigures } from '../../plan/machine-figures-read.ts';
import type { Unknown } from '../../plan/unknown.ts';
import type { Kind, LengthUnit } from '../../quantity/kind.ts';
import { machineFigure } from '../../tables/machine-figures.ts';
import type { Piece, Remedy, SetupCheck, Verdict } from '../setup-check.ts';

/** A set-up with what is said of it, and the names of all that it speaks of. Keeps its identity as its check does. */
export interface SetupFact {
  readonly check: SetupCheck;
  readonly machine: Machine | undefined;
  /** By id: of stations, dimensions, bodies, parts, operations and machines that the check names. */
  readonly names: Readonly<Record<string, string>>;
  /** By id of a machine's figure, `machine:… key`: its label. */
  readonly figures: Readonly<Record<string, string>>;
  /** What the dimensions that carry or mend a verdict measure, by id. */
  readonly kinds: Readonly<Record<string, Kind>>;
  /** Slowest speed of the machine, turns per minute; undefined where it is not known. */
  readonly slowestRpm: number | undefined;
  /** Operations of its part that are done in it, in list order. */
  readonly operations: readonly OperationId[];
}

/** Only the dimensions that carry most are spoken of. */
const SHARES_NAMED = 3;

export function setupFact(
  check: SetupCheck,
  operations: readonly OperationId[],
  lengthUnit: LengthUnit,
  get: (id: RecordId) => BuildRecord | undefined,
  before: SetupFact | undefined,
): SetupFact {
  const names: Record<string, string> = {};
  const figures: Record<string, string> = {};
  const kinds: Record<string, Kind> = {};
  const name = (id: RecordId | undefined) => {
    const record = id === undefined ? undefined : get(id);
    if (record && 'name' in record) names[record.id] = record.name;
  };
  const piece = (one: Piece | undefined) => {
    if (one?.is !== 'body') return;
    name(one.part);
    name(one.body);
  };
  const unknown = (one: Unknown) => {
    if (one.is === 'station') name(one.station);
    else if (one.is === 'dimension') name(one.dimension);
    else if (one.is === 'body') name(one.body);
    else if (one.is === 'figure') {
      name(one.machine);
      const of = get(one.machine);
      const label = of?.kind === 'machine' ? machineFigure(of.type, one.key)?.label : undefined;
      figures[`${one.machine} ${one.key}`] = label ?? one.key;
    }
  };
  const remedy = (one: Remedy) => {
    if (one.is === 'dimension') withPart(one.dimension);
    else if (one.is === 'machine') name(one.machine);
    else if (one.is === 'after') name(one.operation);
  };
  const withPart = (id: DimensionId) => {
    const record = get(id);
    name(id);
    if (record?.kind !== 'dimension') return;
    name(record.part);
    kinds[id] = kindOfMeasure(record.measure);
  };
  const verdict = ({ operation, carriedBy, shares, remedies, unknown: missing }: Verdict) => {
    name(operation);
    piece(carriedBy);
    for (const { dimension } of shares.slice(0, SHARES_NAMED)) withPart(dimension);
    remedies.forEach(remedy);
    missing.forEach(unknown);
  };
  check.verdicts.forEach(verdict);
  check.unknown.forEach(unknown);
  check.balanceUnknown.forEach(unknown);
  operations.forEach(name);
  const { machine: id } = check.setup;
  const record = id === undefined ? undefined : get(id);
  const machine = record?.kind === 'machine' ? record : undefined;
  const slowestRpm = machine && readFigures(machine, lengthUnit).values.get('slowestRpm');
  const fresh: SetupFact = { check, machine, names, figures, kinds, slowestRpm, operations };
  const same =
    before?.check === check &&
    before.machine === machine &&
    before.slowestRpm === slowestRpm &&
    sameContent(before.names, names) &&
    sameContent(before.figures, figures) &&
    sameContent(before.kinds, kinds) &&
    sameContent(before.operations, operations);
  return same ? before : fresh;
}
