import type { BodyId, PartId } from '../../base/ids.ts';
import type { Part } from '../../build/part.ts';
import { parseThread } from '../../quantity/parse-thread.ts';
import type { PlacedBody } from '../../solid/placed.ts';
import { type ClearanceHole, inchClearance, metricClearance } from '../../tables/clearance-holes.ts';
import { gradeWidth } from '../../tables/iso286.ts';
import { holeToTap } from '../../tables/tap-drill.ts';
import { knownThread, knownThreads } from '../../tables/threads-known.ts';
import { type DrillChoice, drillsFor, reamDrillsFor, tapDrillsFor } from './drill-choice.ts';
import { bodiesMade, holeOf, type MadeHole } from './made-holes.ts';
import { type Answers, answersOf, type RoutePart } from './route-part.ts';

/** What is to be known of a hole to make it. */
export interface HoleSize {
  /** Of a thread its name as listed (`M8`, `1/4-20`), else as the drawing writes it; empty of a plain hole. */
  readonly thread: string;
  /** Of a thread the major diameter, mm. */
  readonly diameterMm: number;
  readonly pitchMm: number | undefined;
  /** Poured with a core, drilled, drilled and reamed, or bored. */
  readonly opened: 'cored' | 'drilled' | 'reamed' | 'bored';
  /** Reamed because an operation says so, or because its limits are narrower than a drill keeps: IT8. */
  readonly reamedFor: 'operation' | 'limits' | undefined;
  /** Undefined of a cored hole. */
  readonly drill: DrillChoice | undefined;
  /** Screws that a plain hole of this size lets through. */
  readonly clears: readonly { readonly screw: string; readonly hole: ClearanceHole }[];
}

/** Holes of a part that are all alike. */
export interface HoleLine extends HoleSize {
  readonly bodies: readonly BodyId[];
  readonly count: number;
  /** Undefined where it is not known. */
  readonly depthMm: number | undefined;
  readonly counterbore: MadeHole['counterbore'];
  readonly countersink: MadeHole['countersink'];
}

/** Holes of one size throughout the build, parts taken as often as they are made. */
export interface BuildHoleLine extends HoleSize {
  readonly count: number;
  readonly parts: readonly PartId[];
}

export interface HoleSchedule {
  /** Parts that have holes, in the order given; lines from thin to thick. */
  readonly parts: readonly { readonly part: Part; readonly lines: readonly HoleLine[] }[];
  readonly build: readonly BuildHoleLine[];
  /** Holes whose diameter, or thread, is not known. */
  readonly unknown: readonly { readonly part: PartId; readonly body: BodyId }[];
}

export type HolePart = Pick<RoutePart, 'part' | 'bodies' | 'dimensions' | 'axes' | 'operations'>;

/** All holes of some parts, by size, with the drills that make them. */
export function holeSchedule(parts: readonly HolePart[]): HoleSchedule {
  const unknown: { part: PartId; body: BodyId }[] = [];
  const listed: { part: Part; lines: readonly HoleLine[] }[] = [];
  for (const of of parts) {
    const lines = linesOf(of, (body) => unknown.push({ part: of.part.id, body }));
    if (lines.length > 0) listed.push({ part: of.part, lines });
  }
  return { parts: listed, build: throughout(listed), unknown };
}

function linesOf(of: HolePart, missing: (body: BodyId) => void): readonly HoleLine[] {
  const answers = answersOf(of);
  const lines = new Map<string, HoleLine>();
  for (const body of of.bodies) {
    if (body.record.shape.type !== 'hole') continue;
    const hole = holeOf(body, answers)!;
    const size = sizeOf(of, body, hole, answers);
    if (!size) {
      missing(body.record.id);
      continue;
    }
    const { depthMm, counterbore, countersink, copies } = hole;
    const key = JSON.stringify([keyOf(size), round(depthMm), counterbore, countersink]);
    const line = lines.get(key);
    if (line) lines.set(key, { ...line, bodies: [...line.bodies, hole.body], count: line.count + copies });
    else lines.set(key, { ...size, bodies: [hole.body], count: copies, depthMm, counterbore, countersink });
  }
  return [...lines.values()].sort(bySize);
}

/** Sizes that differ by less than what any drawing says are one. */
const round = (mm: number | undefined): string | undefined => mm?.toFixed(4);

const keyOf = ({ thread, diameterMm, pitchMm, opened }: HoleSize): string =>
  JSON.stringify([thread, round(diameterMm), round(pitchMm), opened]);

const bySize = (a: HoleSize & { readonly depthMm?: number | undefined }, b: typeof a): number =>
  a.diameterMm - b.diameterMm ||
  (a.thread < b.thread ? -1 : a.thread > b.thread ? 1 : (a.depthMm ?? 0) - (b.depthMm ?? 0));

function sizeOf(of: HolePart, body: PlacedBody, hole: MadeHole, answers: Answers): HoleSize | undefined {
  const { diameterMm, thread } = hole;
  if (diameterMm === undefined) return undefined;
  const isCored = body.record.finish !== 'machined';
  if (thread) {
    if (thread.pitchMm === undefined) return undefined;
    const name = threadName(body, answers, diameterMm, thread.pitchMm);
    return {
      thread: name.shown,
      diameterMm,
      pitchMm: thread.pitchMm,
      opened: isCored ? 'cored' : 'drilled',
      reamedFor: undefined,
      drill: isCored ? undefined : tapDrillsFor(name.listed, holeToTap(diameterMm, thread.pitchMm)),
      clears: [],
    };
  }
  const plain = { thread: '', diameterMm, pitchMm: undefined, clears: clearedBy(diameterMm) };
  if (isCored) return { ...plain, opened: 'cored', reamedFor: undefined, drill: undefined };
  const by = new Set(of.operations.filter((one) => bodiesMade(one, [body]).length > 0).map(({ process }) => process));
  const reamedFor = by.has('ream')
    ? 'operation'
    : by.has('bore')
      ? undefined
      : isNarrow(body, answers)
        ? 'limits'
        : undefined;
  if (reamedFor) return { ...plain, opened: 'reamed', reamedFor, drill: reamDrillsFor(diameterMm) };
  return {
    ...plain,
    opened: by.has('bore') ? 'bored' : 'drilled',
    reamedFor: undefined,
    drill: by.has('bore') ? undefined : drillsFor(diameterMm),
  };
}

const diameterId = ({ record: { shape } }: PlacedBody) => (shape.type === 'hole' ? shape.diameter : undefined);

function threadName(
  body: PlacedBody,
  answers: Answers,
  majorMm: number,
  pitchMm: number,
): { readonly shown: string; readonly listed: string | undefined } {
  const id = diameterId(body);
  const written = id && answers.size(id)?.record.value;
  const read = written === undefined ? undefined : parseThread(written);
  // A formula that comes to a major diameter is a metric thread.
  const form = read?.ok ? read.value.form : 'metric';
  const listed = knownThread(form, majorMm, pitchMm)?.name;
  const shown = listed ?? (read?.ok ? written!.trim() : `M${Number(majorMm.toFixed(3))}x${Number(pitchMm.toFixed(3))}`);
  const hand = read?.ok && read.value.hand === 'left' && listed !== undefined ? ' LH' : '';
  return { shown: `${shown}${hand}`, listed };
}

/** A drill keeps about IT12, a good one with care IT10; narrower than IT8 asks for a reamer. Common practice, no source. */
const REAMED_GRADE = 8;

function isNarrow(body: PlacedBody, answers: Answers): boolean {
  const id = diameterId(body);
  const limits = id && answers.size(id)?.resolved.limits;
  const value = id && answers.size(id)?.resolved.value;
  const grade = value === undefined ? undefined : gradeWidth(REAMED_GRADE, value);
  return limits !== undefined && grade !== undefined && limits.upper - limits.lower <= grade.widthMm + 1e-9;
}

/** Screws whose clearance hole this is, in any of the standards' fits. */
function clearedBy(diameterMm: number): HoleSize['clears'] {
  const sizes = new Map<string, readonly ClearanceHole[]>();
  for (const { name, form, series, majorMm } of knownThreads) {
    if (form === 'metric' && series === 'coarse') sizes.set(name, metricClearance(majorMm));
    if (form === 'unified' && series === 'UNC') sizes.set(name.replace(/-\d+$/, ''), inchClearance(majorMm));
  }
  return [...sizes].flatMap(([screw, holes]) =>
    holes.filter((hole) => Math.abs(hole.diameterMm - diameterMm) < 1e-3).map((hole) => ({ screw, hole })),
  );
}

function throughout(parts: HoleSchedule['parts']): readonly BuildHoleLine[] {
  const lines = new Map<string, BuildHoleLine>();
  for (const { part, lines: own } of parts) {
    for (const { bodies: _, depthMm: __, counterbore: ___, countersink: ____, count, ...size } of own) {
      const key = keyOf(size);
      const line = lines.get(key);
      const all = count * part.quantity;
      if (!line) lines.set(key, { ...size, count: all, parts: [part.id] });
      else {
        const named = line.parts.includes(part.id) ? line.parts : [...line.parts, part.id];
        lines.set(key, { ...line, count: line.count + all, parts: named });
      }
    }
  }
  return [...lines.values()].sort(bySize);
}
