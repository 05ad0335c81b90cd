import { PRACTICE, type Sourced } from './cutting-row.ts';

/** A limit of the trade. */
export interface Limit extends Sourced {
  readonly value: number;
}

const practice = (value: number): Limit => ({ value, ...PRACTICE });
const read = (value: number, source: string): Limit => ({ value, source, status: 'read' });

/** How far a tool may stand out, in diameters (of a turning tool: widths of its shank), before it sings. */
export const overhangLimits = {
  /** A bar of steel; a solid carbide one may go to 6. */
  bore: read(4, 'tool makers’ guides: steel boring bars up to 4 diameters'),
  turn: practice(1.5),
  mill: practice(4),
} as const satisfies Readonly<Record<string, Limit>>;

/** Length of work that stands free, in its diameters. */
export const slenderLimits = {
  /** Held at one end. */
  chuck: practice(4),
  /** Held at both. */
  centres: practice(10),
} as const satisfies Readonly<Record<string, Limit>>;

const DEEP = 'a drill maker’s guide, deep holes';
/** Share of speed and of feed that a hole takes away, from this many diameters of depth. */
export const deepHoles: readonly (Sourced & {
  readonly diameters: number;
  readonly speed: number;
  readonly feed: number;
})[] = [
  { diameters: 3, speed: 0.9, feed: 0.9, source: DEEP, status: 'read' },
  { diameters: 4, speed: 0.8, feed: 0.9, source: DEEP, status: 'read' },
  { diameters: 5, speed: 0.7, feed: 0.8, source: DEEP, status: 'read' },
  { diameters: 6, speed: 0.6, feed: 0.8, source: DEEP, status: 'read' },
];

/** Deeper than this, in diameters, a drill is drawn back often to clear it, and wanders. */
export const DEEP_HOLE: Limit = practice(5);
/** Deeper than this a common drill does not reach, and needs a longer one or another way. */
export const TOO_DEEP_HOLE: Limit = practice(10);
/** A thread longer than this, in diameters, holds no more and breaks taps. */
export const DEEP_THREAD: Limit = practice(2);

/** Included angle of a twist drill, degrees. */
export const DRILL_POINT_DEG: Limit = practice(118);

/** Run-in of a tool before it cuts, and run-out behind, mm at each end. */
export const RUN_IN_MM: Limit = practice(2);
/** A shaper's tool runs out of the work before it turns round, mm at both ends together. */
export const OVERRUN_MM: Limit = practice(25);
/** Part of a double stroke that cuts: the return is quicker. */
export const CUTTING_SHARE: Limit = read(3 / 5, 'lecture on shaping machines: stroke to return as 3 to 2');

/** What a reamer is left to take, mm of diameter, by the diameter up to which it holds. */
export const reamStock: readonly (Sourced & {
  readonly upToMm: number;
  readonly least: number;
  readonly most: number;
})[] = (
  [
    [0.17, 0.005, 0.01],
    [0.28, 0.008, 0.012],
    [0.88, 0.01, 0.016],
    [2.5, 0.015, 0.03],
  ] as const
).map(([upTo, least, most]) => ({
  upToMm: upTo * 25.4,
  least: least * 25.4,
  most: most * 25.4,
  source: 'a reamer maker’s chart, metal left on the diameter',
  status: 'read',
}));

/** Minutes to set the work up, by the way it is held; a start until your own are known. */
export const setupMinutes = {
  'between centres': practice(15),
  'three-jaw chuck': practice(8),
  'four-jaw chuck': practice(20),
  'face plate': practice(45),
  steady: practice(30),
  vise: practice(10),
  'clamped to the table': practice(25),
} as const satisfies Readonly<Record<string, Limit>>;

/** Metal beside a hole, in its diameters, that is too thin to guide a drill or to stand its pressure. */
export const THIN_BESIDE_HOLE: Limit = practice(1 / 4);
