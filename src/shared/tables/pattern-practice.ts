import type { FigureStatus } from './alloys.ts';
import { rangeOf, ranges } from './row.ts';

/** A figure of the pattern shop, with how far it may be trusted. The founder's own goes before it. */
export interface PracticeFigure {
  readonly value: number;
  readonly status: FigureStatus;
  readonly source: string;
}

const start = (value: number, source = 'common practice, no source'): PracticeFigure => ({
  value,
  status: 'starting value',
  source,
});
const memory = (value: number, source: string): PracticeFigure => ({ value, status: 'from memory', source });
const read = (value: number, source: string): PracticeFigure => ({ value, status: 'read', source });

/** What a founder has not said is taken from here and shown as such. Lengths in mm. */
export const patternPractice = {
  /** Of foam that is cut with a wire and stays in the mould: 0 degrees. */
  foamDraft: read(
    0,
    'foam stays in the mould: a pattern cut by wire needs no draft; general text on casting with lost foam',
  ),
  /** Of wooden patterns that are drawn from green sand, degrees each side. */
  greenDraft: memory(2, 'wooden patterns in green sand: 1 to 3 degrees, more inside; general foundry texts'),
  /** Holes under this diameter are cast solid where a core would have to make them. */
  closeUnderCore: read(
    30,
    'design notes of a German sand foundry: holes under 30 mm between machined faces are closed up',
  ),
  /** Holes that dry sand fills of itself, and a coating reaches. */
  closeUnderFoam: start(8),
  glueJoint: start(0.2),
  coating: start(0.5),
  /** What a wire melts away; measured on a trial cut it is the bow's own figure. */
  kerf: start(1, 'hobby feeds: 0.8 to 1.5 mm, no source; cut a block in two and measure what is lost'),
  /** Foam thinner than this handles badly and shows its beads. */
  leastSection: start(5),
  /** Sand beside and under a pattern, for small castings of light metal; over it. */
  coverAround: start(50),
  coverAbove: start(75),
  /** Of the wire, beyond the foam at each end. */
  wireBeyond: start(20),
} as const satisfies Readonly<Record<string, PracticeFigure>>;

const extraRanges = ranges(0, 100, 160, 250, 400, 630, 1000);
const extras = [1, 1, 2, 3, 3, 4];
const extraSource =
  'allowances of a German sand foundry (ISO 8062-3, DCTG 11 and RMAG G): more on faces that look up, by the longest side';

/**
 * What is added to the machining allowance of faces that look up in the mould, where dirt and gas gather (ISO 8062-3 clause 8.1
 * asks for it and leaves the amount open).
 *
 * @param largestMm largest overall dimension of the casting.
 * @returns undefined beyond the table (1000 mm).
 */
export function copeExtra(largestMm: number): PracticeFigure | undefined {
  const value = extras[rangeOf(extraRanges, largestMm)];
  return value === undefined ? undefined : read(value, extraSource);
}

/** Grade of required machining allowance to begin with, of hand-moulded sand castings. */
export const startingGrade = {
  grade: 'G',
  status: 'starting value',
  source: 'hand-moulded sand castings: F to H (ISO 8062, from memory); a German sand foundry works to G',
} as const;
