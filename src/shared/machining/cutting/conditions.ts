import { unreachable } from '../../base/assert.ts';
import type { Process } from '../../build/operation.ts';
import { drillFeed, reamFeed, toothFeed, turningFeed } from '../../tables/cutting-feeds.ts';
import { type CuttingMetal, cuttingMetalRows } from '../../tables/cutting-metals.ts';
import { CUTTING_SHARE, deepHoles } from '../../tables/cutting-practice.ts';
import type { FigureRange } from '../../tables/cutting-row.ts';
import { type CuttingEdge, type CuttingJob, cuttingSpeed, grinding } from '../../tables/cutting-speeds.ts';
import { spindleSpeed, strokeSpeed, strokesPerMinute, surfaceSpeed } from './spindle-speed.ts';

/** A figure to work by, and where it comes from. */
export interface Proposal {
  readonly value: number;
  /** Chosen by the user, begun from the table's range, kept within what the machine can do, or led by the thread. */
  readonly from: 'chosen' | 'table' | 'machine' | 'thread';
  /** The row of the table; undefined where there is none, or the metal is not known. */
  readonly row: FigureRange | undefined;
}

/** What a machine can do: turns or double strokes per minute; of a bandsaw m/min. What is not known is undefined. */
export interface MachineRange {
  readonly slowest: number | undefined;
  readonly fastest: number | undefined;
}

export interface CutWanted {
  /** Undefined: not known, so only what is chosen, or led by the thread, can be said. */
  readonly metal: CuttingMetal | undefined;
  readonly process: Process;
  readonly edge: CuttingEdge;
  /** Of the work where it turns, of the tool where that does. */
  readonly diameterMm: number | undefined;
  /** Whether this cut is the last, to size. */
  readonly finish: boolean;
  /** Of a tap. */
  readonly pitchMm?: number | undefined;
  /** Of a hole. */
  readonly holeMm?: number | undefined;
  /** Of a shaper or a planer, with its run-out. */
  readonly strokeMm?: number | undefined;
  /** Of a grinding wheel. */
  readonly wheelMm?: number | undefined;
  readonly machine: MachineRange;
  readonly chosen: {
    /** m/min. */
    readonly speed?: number | undefined;
    readonly rpm?: number | undefined;
    /** mm per turn, tooth or stroke. */
    readonly feed?: number | undefined;
  };
}

/** How an edge is to run. What cannot be said, because something is not known, is undefined. */
export interface CutConditions {
  /** m/min, as it comes out at `rpm`. */
  readonly speed: Proposal | undefined;
  /** Turns, of shaper and planer double strokes, per minute. Undefined of a saw and of flat grinding. */
  readonly rpm: Proposal | undefined;
  /** mm per turn, tooth or stroke. */
  readonly feed: Proposal | undefined;
  /** What the speed asked for before the machine had its say: turns or strokes per minute, of a saw m/min. */
  readonly asked: number | undefined;
}

/** What the tables call a process; undefined of handwork and of grinding. */
export function jobOf(process: Process): CuttingJob | undefined {
  switch (process) {
    case 'face':
    case 'turn':
    case 'bore':
    case 'shape':
    case 'plane':
      return 'turn';
    case 'drill':
    case 'ream':
    case 'tap':
    case 'mill':
    case 'saw':
      return process;
    case 'countersink':
    case 'counterbore':
      return 'countersink';
    case 'grind':
    case 'scrape':
    case 'lap':
    case 'file':
      return undefined;
    default:
      return unreachable(process);
  }
}

const isStroke = (process: Process): boolean => process === 'shape' || process === 'plane';

/**
 * Speed and feed to begin with: from the table's range its low end, for a cut to size the middle; what the user chose holds
 * against it. Within the range of the machine, as far as that is known.
 */
export function proposeCut(wanted: CutWanted): CutConditions {
  const row = speedRow(wanted);
  const feed = proposeFeed(wanted);
  const { chosen, machine } = wanted;
  const factor = deepFactor(wanted)?.speed ?? 1;
  const start =
    chosen.speed ??
    (row && (wanted.finish && wanted.process !== 'drill' ? (row.least + row.most) / 2 : row.least) * factor);
  const from: Proposal['from'] = chosen.speed === undefined ? 'table' : 'chosen';
  if (wanted.process === 'saw') {
    if (start === undefined) return { speed: undefined, rpm: undefined, feed, asked: undefined };
    const value = within(start, machine);
    return { speed: { value, from: value === start ? from : 'machine', row }, rpm: undefined, feed, asked: start };
  }
  const turns = turning(wanted);
  if (!turns) {
    // Turns are chosen, and what ties them to the speed is not known: then the table's speed is not what it runs at.
    const isTold = start !== undefined && (chosen.rpm === undefined || chosen.speed !== undefined);
    const speed: Proposal | undefined = isTold ? { value: start, from, row } : undefined;
    const rpm = chosen.rpm === undefined ? undefined : ({ value: chosen.rpm, from: 'chosen', row: undefined } as const);
    return { speed, rpm, feed, asked: undefined };
  }
  if (chosen.rpm !== undefined) {
    const speed: Proposal = { value: turns.speedAt(chosen.rpm), from: 'chosen', row };
    return { speed, rpm: { value: chosen.rpm, from: 'chosen', row: undefined }, feed, asked: chosen.rpm };
  }
  if (start === undefined) return { speed: undefined, rpm: undefined, feed, asked: undefined };
  const asked = turns.rpmAt(start);
  const rpm = within(asked, machine);
  const isHeld = rpm !== asked;
  return {
    speed: { value: isHeld ? turns.speedAt(rpm) : start, from: isHeld ? 'machine' : from, row },
    rpm: { value: rpm, from: isHeld ? 'machine' : from, row: undefined },
    feed,
    asked,
  };
}

const within = (value: number, { slowest, fastest }: MachineRange): number =>
  Math.max(slowest ?? 0, Math.min(fastest ?? Number.POSITIVE_INFINITY, value));

function speedRow({ metal, process, edge }: CutWanted): FigureRange | undefined {
  if (process === 'grind') return grinding.work;
  const job = jobOf(process);
  return metal === undefined || job === undefined ? undefined : cuttingSpeed(metal, job, edge);
}

/** How speed and turns hang together; undefined where a length that ties them is not known, or nothing turns. */
function turning(
  wanted: Pick<CutWanted, 'process' | 'diameterMm' | 'strokeMm'>,
): { readonly rpmAt: (speed: number) => number; readonly speedAt: (rpm: number) => number } | undefined {
  const { process, diameterMm, strokeMm } = wanted;
  if (isStroke(process)) {
    if (strokeMm === undefined) return undefined;
    return {
      rpmAt: (speed) => strokesPerMinute(speed, strokeMm, CUTTING_SHARE.value),
      speedAt: (rpm) => strokeSpeed(rpm, strokeMm, CUTTING_SHARE.value),
    };
  }
  const job = jobOf(process);
  if (job === undefined || job === 'saw' || diameterMm === undefined) return undefined;
  return { rpmAt: (speed) => spindleSpeed(speed, diameterMm), speedAt: (rpm) => surfaceSpeed(rpm, diameterMm) };
}

/**
 * Turns, or double strokes, per minute at a speed in m/min.
 *
 * @param strokeMm of shaping and planing.
 */
export const turnsAt = (
  process: Process,
  speed: number,
  diameterMm: number | undefined,
  strokeMm: number | undefined,
): number | undefined => turning({ process, diameterMm, strokeMm })?.rpmAt(speed);

/** What a feed is counted by. */
export function feedPer(process: Process): 'turn' | 'tooth' | 'stroke' {
  if (process === 'mill') return 'tooth';
  return isStroke(process) || process === 'grind' ? 'stroke' : 'turn';
}

/** What a deep hole takes off speed and feed. */
function deepFactor({ process, holeMm, diameterMm }: CutWanted): (typeof deepHoles)[number] | undefined {
  if (process !== 'drill' || holeMm === undefined || diameterMm === undefined) return undefined;
  return deepHoles.findLast(({ diameters }) => holeMm >= diameters * diameterMm);
}

function proposeFeed(wanted: CutWanted): Proposal | undefined {
  const { process, pitchMm, chosen } = wanted;
  // A tap draws itself in by its thread; no other feed can be chosen for it.
  if (process === 'tap') return pitchMm === undefined ? undefined : { value: pitchMm, from: 'thread', row: undefined };
  const row = feedRow(wanted);
  if (chosen.feed !== undefined) return { value: chosen.feed, from: 'chosen', row };
  if (!row) return undefined;
  const metal = wanted.metal;
  const isSoft = metal !== undefined && !cuttingMetalRows[metal].isHard;
  const start = process === 'drill' && isSoft ? (row.least + row.most) / 2 : row.least;
  return { value: start * (deepFactor(wanted)?.feed ?? 1), from: 'table', row };
}

function feedRow({ metal, process, diameterMm, finish, wheelMm }: CutWanted): FigureRange | undefined {
  switch (process) {
    case 'face':
    case 'turn':
    case 'bore':
    case 'shape':
    case 'plane':
      return metal === undefined ? undefined : turningFeed(metal, finish);
    case 'drill':
    case 'countersink':
    case 'counterbore':
      return metal === undefined || diameterMm === undefined ? undefined : drillFeed(diameterMm);
    case 'ream':
      return metal === undefined || diameterMm === undefined ? undefined : reamFeed(diameterMm);
    case 'mill':
      return metal === undefined || diameterMm === undefined ? undefined : toothFeed(metal, diameterMm);
    case 'grind': {
      if (wheelMm === undefined) return undefined;
      const { least, most, source, status } = grinding.feedShare;
      return { least: least * wheelMm, most: most * wheelMm, source, status };
    }
    case 'tap':
    case 'saw':
    case 'scrape':
    case 'lap':
    case 'file':
      return undefined;
    default:
      return unreachable(process);
  }
}
