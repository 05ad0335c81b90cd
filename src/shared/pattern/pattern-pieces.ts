import type { BodyId } from '../base/ids.ts';
import type { Casting } from '../build/casting.ts';
import type { Operation } from '../build/operation.ts';
import type { Axis } from '../build/station.ts';
import type { Reading } from '../plan/amounts.ts';
import type { Numbers } from '../plan/numbers.ts';
import { distinctUnknowns } from '../plan/unknown.ts';
import type { ExactShape, PlacedBody } from '../solid/placed.ts';
import { type PracticeFigure, patternPractice } from '../tables/pattern-practice.ts';
import { type ClosedHole, type CloseUnder, closedHole, closeUnderOf, isFoam } from './closed-holes.ts';
import { type Core, coreOf } from './cores.ts';
import { withDraft } from './draft.ts';
import { isCutAway } from './drawn-stock.ts';
import { lugPieces } from './lugs.ts';
import type { PatternPiece, Taper } from './pattern-piece.ts';
import type { PatternUnknown } from './pattern-unknown.ts';
import { placeShifted, type Shifts } from './shifted-body.ts';

/** The simple solids of a casting and of its pattern, in the order in which they act, at the casting's size. */
export interface PatternPieces {
  /** The metal as it is poured: stock, draft and lugs on, hollows open, small holes closed. */
  readonly casting: readonly PatternPiece[];
  /** What the pattern is made like: as the casting where no core is laid; else hollows filled and prints put on. The same list where both are one. */
  readonly pattern: readonly PatternPiece[];
  readonly cores: readonly Core[];
  readonly closed: readonly ClosedHole[];
  readonly closeUnder: CloseUnder;
  readonly draft: Draft;
  /** Hollows that lie across the draw and no core makes; bodies that draft would fold into themselves. */
  readonly undercuts: readonly BodyId[];
  readonly undrafted: readonly BodyId[];
  readonly unknown: readonly PatternUnknown[];
}

/** Draft of the process or as written. */
export interface Draft {
  readonly deg: number;
  readonly isOwn: boolean;
  readonly figure: PracticeFigure;
  /** Undefined where none is needed, or up or parting are not said. */
  readonly taper: Taper | undefined;
}

export interface PiecesGiven {
  readonly casting: Casting;
  readonly bodies: readonly PlacedBody[];
  readonly operations: readonly Operation[];
  readonly numbers: Numbers;
  readonly reading: Reading;
  /** Of the stock: see `stockOf`. */
  readonly shifts: ReadonlyMap<BodyId, Shifts>;
}

/** Draft beyond this is a slip, degrees. */
const MOST_DRAFT_DEG = 30;

/** Makes the pattern's bodies out of the drawing's. */
export function patternPieces(given: PiecesGiven): PatternPieces {
  const { casting, bodies, operations, numbers, reading, shifts } = given;
  const unknown: PatternUnknown[] = [];
  const closeUnder = closeUnderOf(casting, reading);
  unknown.push(...closeUnder.unknown);
  const closed: ClosedHole[] = [];
  const cores: Core[] = [];
  const prints: PatternPiece[] = [];
  const filled = new Set<string>();
  const pieces: PatternPiece[] = [];
  for (const body of bodies) {
    if (isCutAway(body)) continue;
    const { record, moves } = body;
    if (!body.shape) {
      unknown.push(...missingOf(body));
      continue;
    }
    const own = shifts.get(record.id);
    const shape = own ? shifted(body, body.shape, numbers, own, unknown) : body.shape;
    const hole = closedHole(body, shape, closeUnder, bodies, operations);
    if (hole) closed.push(hole);
    if (hole || !shape) continue;
    const cored = record.finish === 'cored' && !record.adds;
    const piece = {
      key: record.id,
      name: record.name,
      body: record.id,
      is: 'body',
      adds: record.adds,
      cored,
      shape,
      moves,
      taper: undefined,
    } as const;
    pieces.push(piece);
    if (!cored || (isFoam(casting) && !casting.prints.some((print) => print.body === record.id))) continue;
    const made = coreOf(piece, record.shape, casting, numbers, reading);
    cores.push(made.core);
    prints.push(...made.prints);
    unknown.push(...made.unknown);
    filled.add(record.id);
  }
  const lugs = lugPieces(casting, numbers, reading);
  unknown.push(...lugs.unknown);
  const draft = draftOf(given, unknown);
  const all = [...pieces, ...lugs.pieces];
  const drafted = draft.taper ? withDraft(all, draft.taper) : { pieces: all, undercuts: [], undrafted: [] };
  const bodyIds = (list: readonly PatternPiece[]) => [...new Set(list.flatMap(({ body }) => body ?? []))];
  const poured = drafted.pieces;
  const pattern =
    filled.size === 0 ? poured : [...poured.filter(({ body }) => body === undefined || !filled.has(body)), ...prints];
  return {
    casting: poured,
    pattern,
    cores,
    closed,
    closeUnder,
    draft,
    undercuts: bodyIds(drafted.undercuts),
    undrafted: bodyIds(drafted.undrafted),
    unknown: distinctUnknowns(unknown),
  };
}

/** @returns undefined where stock leaves nothing of a hollow. What has no shape with its stock is asked for, and stays as drawn. */
function shifted(
  { record }: PlacedBody,
  asDrawn: ExactShape,
  numbers: Numbers,
  own: Shifts,
  unknown: PatternUnknown[],
): ExactShape | undefined {
  const placed = placeShifted(record, numbers, own);
  if (placed.ok) return placed.value;
  if (!record.adds && placed.error.why === 'no-size') return undefined;
  unknown.push({ is: 'body', body: record.id });
  return asDrawn;
}

function missingOf({ record, problem }: PlacedBody): readonly PatternUnknown[] {
  const body: PatternUnknown = { is: 'body', body: record.id };
  if (problem?.why !== 'not-placed') return [body];
  return [
    body,
    ...problem.stations.map((station): PatternUnknown => ({ is: 'station', station })),
    ...problem.dimensions.map((dimension): PatternUnknown => ({ is: 'dimension', dimension })),
  ];
}

function draftOf({ casting, numbers, reading }: PiecesGiven, unknown: PatternUnknown[]): Draft {
  const start = isFoam(casting) ? patternPractice.foamDraft : patternPractice.greenDraft;
  const own = reading.plain(casting.draft, 'draft', 'angle');
  const isSound = own.ok && own.value !== undefined && own.value >= 0 && own.value <= MOST_DRAFT_DEG;
  if (!own.ok) unknown.push(own.error);
  else if (own.value !== undefined && !isSound) unknown.push({ is: 'written', field: 'draft', text: casting.draft });
  const figure: PracticeFigure = isSound ? { value: own.value, status: 'written', source: 'as written' } : start;
  const deg = figure.value;
  const rest = { deg, isOwn: isSound, figure };
  if (deg === 0) return { ...rest, taper: undefined };
  if (casting.up === undefined) unknown.push({ is: 'field', field: 'up' });
  const parting = reading.place(casting.parting, 'parting');
  if (!parting.ok) unknown.push(parting.error);
  if (casting.up === undefined || !parting.ok) return { ...rest, taper: undefined };
  const station = numbers.record(parting.value.station);
  const draw = casting.up[1] as Axis;
  if (station?.kind !== 'station' || station.axis !== draw) {
    unknown.push({ is: 'field', field: 'parting' });
    return { ...rest, taper: undefined };
  }
  const partingMm = numbers.place(parting.value.station)!.at + parting.value.beyond;
  return { ...rest, taper: { draw, partingMm, slope: Math.tan((deg * Math.PI) / 180) } };
}
