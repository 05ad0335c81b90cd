import { err, ok, type Result } from '../../base/result.ts';
import type { Amount, Place } from '../../build/amount.ts';
import type { Edge, Operation } from '../../build/operation.ts';
import { parseWritten } from '../../formula/parse-written.ts';
import { type Rate, readRate } from '../../plan/read-rate.ts';
import type { Unknown } from '../../plan/unknown.ts';
import type { Kind, LengthUnit } from '../../quantity/kind.ts';
import type { PlacedBody } from '../../solid/placed.ts';
import { bodiesMade, holeOf, type MadeHole, sizeIn, threadOf } from './made-holes.ts';
import type { Answers } from './route-part.ts';

/** An operation with its texts read and its sizes taken from the drawing. What is not said, or not known, is undefined. */
export interface ReadOperation {
  readonly tool: {
    readonly edge: Edge;
    readonly diameterMm: number | undefined;
    readonly overhangMm: number | undefined;
    readonly teeth: number;
    readonly angleDeg: number | undefined;
    /** Of a tap whose size is a thread. */
    readonly pitchMm: number | undefined;
  };
  /** Where the edge travels. */
  readonly cut:
    | {
        /** mm from the part's datum along the set-up's line. */
        readonly ends: readonly [number | undefined, number | undefined];
        readonly lengthMm: number | undefined;
        /** Of flat work the breadth. */
        readonly diameterMm: number | undefined;
        /** 0: to the centre. */
        readonly innerMm: number;
      }
    | undefined;
  /** 0: to size. */
  readonly leavesMm: number | undefined;
  readonly chosen: {
    /** m/min. */
    readonly speed: number | undefined;
    readonly rpm: number | undefined;
    /** mm per turn, tooth or stroke. */
    readonly feed: number | undefined;
    readonly depth: number | undefined;
    readonly minutes: number | undefined;
  };
  readonly holes: readonly MadeHole[];
  /** Texts that cannot be read, places and sizes that are not known. What is merely not said is not among them. */
  readonly unknown: readonly Unknown[];
}

/** `0.1 mm/rev`, `0.004 in per tooth`: what a feed is counted by is known from the process. */
const PER = /\s*(\/|per)\s*(rev(olution)?|turn|tooth|stroke)\s*$/i;

/** Reads a plain length or angle; undefined when nothing is written, an error for a text that is none. */
export function readPlain(text: string, kind: Kind, lengthUnit: LengthUnit): Result<number | undefined, 'unreadable'> {
  const read = parseWritten(text, { kind, lengthUnit });
  if (!read.ok) return err('unreadable');
  switch (read.value.is) {
    case 'empty':
      return ok(undefined);
    case 'quantity':
      return ok(read.value.value);
    case 'formula':
      return err('unreadable');
  }
}

export function readOperation(
  operation: Operation,
  bodies: readonly PlacedBody[],
  answers: Answers,
  lengthUnit: LengthUnit,
): ReadOperation {
  const unknown: Unknown[] = [];
  const plain = (text: string, field: string, kind: Kind = 'length'): number | undefined => {
    const read = readPlain(text, kind, lengthUnit);
    if (read.ok) return read.value;
    unknown.push({ is: 'written', field, text });
    return undefined;
  };
  /** A size of a tool, a feed or a depth is above nought. */
  const positive = (text: string, field: string, kind: Kind = 'length'): number | undefined => {
    const value = plain(text, field, kind);
    if (value === undefined || value > 0) return value;
    unknown.push({ is: 'written', field, text });
    return undefined;
  };
  const rate = (text: string, field: string, kind: Rate): number | undefined => {
    const read = readRate(text, kind);
    if (read.ok) return read.value;
    unknown.push({ is: 'written', field, text });
    return undefined;
  };
  /** The breadth of flat work, or of a slot, may be a distance between stations. */
  const amount = ({ size, written }: Amount, field: string): number | undefined => {
    if (size === undefined) return positive(written, `${field}/written`);
    const value = sizeIn(answers, size, 'diameter') ?? sizeIn(answers, size, 'width');
    if (value === undefined) unknown.push({ is: 'dimension', dimension: size });
    return value;
  };
  const place = ({ station, beyond }: Place, field: string): number | undefined => {
    const at = answers.at(station);
    if (at === undefined) unknown.push({ is: 'station', station });
    const more = plain(beyond, `${field}/beyond`);
    return at === undefined ? undefined : at + (more ?? 0);
  };

  const { tool, chosen, cut, leaves } = operation;
  const readCut = cut && {
    ends: [place(cut.ends[0], 'cut/ends/0'), place(cut.ends[1], 'cut/ends/1')] as const,
    diameterMm: amount(cut.diameter, 'cut/diameter'),
    innerMm: amount(cut.inner, 'cut/inner') ?? 0,
  };
  const left = plain(leaves, 'leaves');
  if (left !== undefined && left < 0) unknown.push({ is: 'written', field: 'leaves', text: leaves });
  const feedText = chosen.feed.replace(PER, '');
  return {
    tool: {
      edge: tool.edge,
      diameterMm: amount(tool.diameter, 'tool/diameter'),
      overhangMm: positive(tool.overhang, 'tool/overhang'),
      teeth: tool.teeth,
      angleDeg: positive(tool.angle, 'tool/angle', 'angle'),
      pitchMm: tool.diameter.size && threadOf(answers, tool.diameter.size)?.pitchMm,
    },
    cut: readCut && {
      ...readCut,
      lengthMm:
        readCut.ends[0] === undefined || readCut.ends[1] === undefined
          ? undefined
          : Math.abs(readCut.ends[1] - readCut.ends[0]),
    },
    leavesMm: leaves.trim() === '' ? 0 : left !== undefined && left >= 0 ? left : undefined,
    chosen: {
      speed: rate(chosen.speed, 'chosen/speed', 'speed'),
      rpm: rate(chosen.rpm, 'chosen/rpm', 'rpm'),
      feed: positive(feedText, 'chosen/feed'),
      depth: positive(chosen.depth, 'chosen/depth'),
      minutes: rate(chosen.minutes, 'chosen/minutes', 'minutes'),
    },
    holes: bodiesMade(operation, bodies).flatMap((body) => holeOf(body, answers) ?? []),
    unknown,
  };
}
