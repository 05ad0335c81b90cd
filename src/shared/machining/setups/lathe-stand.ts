import type { Fixture } from '../../build/setup.ts';
import type { KnownPlace } from '../../plan/amounts.ts';
import type { Unknown } from '../../plan/unknown.ts';
import { asking } from '../verdicts/asking.ts';
import type { Scene } from './scene.ts';
import type { World } from './world.ts';

/** What turns on the nose of the spindle besides the work. */
export interface HeadTool {
  readonly is: 'chuck' | 'plate';
  /** From the face of the nose to its front: the ends of the jaws, the face of the plate. */
  readonly lengthKey: string;
  readonly diameterKey: string;
}

/** What jaws close on. */
export interface Grip {
  /** Its head and tail ends, mm from the part's datum. */
  ends(world: World): readonly [head: number, tail: number];
  /** How much of it the jaws close on. */
  length(world: World): number;
  /** Where the jaws end, towards the tailstock. */
  jawsEnd(world: World): number;
}

/**
 * Where a set-up's work stands in a lathe. Along the bed places count from the face of the nose towards the tailstock; `sense` says whether
 * the part's own axis runs that way.
 */
export interface LatheStand {
  readonly sense: 1 | -1;
  /** What is missing to know where the nose stands. */
  readonly unknown: readonly Unknown[];
  /** The face of the nose, mm from the part's datum along the line. Only where nothing is unknown. */
  nose(world: World): number;
  readonly head: HeadTool | undefined;
  readonly grip: Grip | undefined;
  /** Where the point of the tailstock's centre stands; undefined without one. */
  readonly tailPoint: ((world: World) => number) | undefined;
}

const borne: readonly Fixture['what'][] = ['arbor', 'mandrel'];

/** Pieces of the work by what they are: what lies between the centres, and what is worked upon. */
export interface WorkPieces {
  /** The arbor, if there is one, else the bodies (and where there are none, all that adds). */
  readonly centred: readonly number[];
  readonly arbors: readonly number[];
  readonly bodies: readonly number[];
  readonly dogs: readonly number[];
}

export function workPieces({ setup, worlds }: Pick<Scene, 'setup' | 'worlds'>): WorkPieces {
  const { adding, work } = worlds;
  const whatOf = (i: number): Fixture['what'] | undefined => {
    const { piece } = work.recipes[i]!;
    return piece.is === 'fixture' ? setup.fixtures[piece.index]?.what : undefined;
  };
  const arbors = adding.filter((i) => borne.includes(whatOf(i) ?? 'other'));
  const bodies = adding.filter((i) => work.recipes[i]!.piece.is === 'body');
  const dogs = adding.filter((i) => whatOf(i) === 'driving dog');
  return { centred: arbors.length > 0 ? arbors : bodies.length > 0 ? bodies : adding, arbors, bodies, dogs };
}

/** The end of some pieces that lies towards the headstock, or towards the tailstock. */
export function endOf(world: World, indexes: readonly number[], sense: 1 | -1, end: 'head' | 'tail'): number {
  const extent = world.extentOf(indexes);
  if (!extent) return Number.NaN;
  return extent[(end === 'head') === (sense === 1) ? 0 : 1];
}

const stands = new WeakMap<Scene, LatheStand>();

/** Worked out once for each scene. */
export function latheStand(scene: Scene): LatheStand {
  const known = stands.get(scene);
  if (known) return known;
  const stand = standOf(scene);
  stands.set(scene, stand);
  return stand;
}

function standOf(scene: Scene): LatheStand {
  const { setup } = scene;
  const { holding } = setup;
  const sense = setup.headEnd === 'low' ? 1 : -1;
  const ask = asking(scene);
  const { centred, arbors, bodies } = workPieces(scene);
  const tailOf = (world: World) =>
    endOf(world, arbors.length > 0 ? arbors : bodies.length > 0 ? bodies : centred, sense, 'tail');
  const tailPoint = 'tailCentre' in holding && holding.tailCentre ? tailOf : undefined;
  const plain = { sense, head: undefined, grip: undefined, tailPoint } as const;
  switch (holding.as) {
    case 'between centres': {
      const length = ask.figure('headCentreLength');
      const nose = (world: World) => endOf(world, centred, sense, 'head') - sense * length;
      return { ...plain, unknown: ask.unknown, nose, tailPoint: (world) => endOf(world, centred, sense, 'tail') };
    }
    case 'three-jaw chuck':
    case 'four-jaw chuck': {
      const keys = chuckKeys[holding.as];
      const depth = ask.figure(keys.depth);
      const a = ask.place(holding.ends?.[0], 'holding/ends');
      const b = ask.place(holding.ends?.[1], 'holding/ends');
      const grip = gripOf(a, b, depth, sense);
      const length = ask.figure(keys.length);
      const head: HeadTool = { is: 'chuck', lengthKey: keys.length, diameterKey: keys.diameter };
      return { ...plain, unknown: ask.unknown, head, grip, nose: (world) => grip.jawsEnd(world) - sense * length };
    }
    case 'face plate': {
      const seat = ask.place(holding.seat, 'holding/seat');
      const face = ask.figure('facePlateFace');
      const head: HeadTool = { is: 'plate', lengthKey: 'facePlateFace', diameterKey: 'facePlateDiameter' };
      return { ...plain, unknown: ask.unknown, head, nose: (world) => world.place(seat) - sense * face };
    }
    case 'steady': {
      // Driven by a centre or by a chuck, it does not say which: the one that brings the work farther from the nose, where
      // the bed has risen again and the gap is left behind.
      const known = ['headCentreLength', 'threeJawLength'].flatMap((key) => ask.figureIfKnown(key) ?? []);
      const farthest = known.length > 0 ? Math.max(...known) : ask.figure('headCentreLength');
      return {
        ...plain,
        unknown: ask.unknown,
        nose: (world) => endOf(world, centred, sense, 'head') - sense * farthest,
      };
    }
    case 'vise':
    case 'clamped to the table':
      return { ...plain, unknown: [{ is: 'field', field: 'holding' }], nose: () => Number.NaN };
  }
}

export const chuckKeys = {
  'three-jaw chuck': {
    length: 'threeJawLength',
    depth: 'threeJawDepth',
    diameter: 'threeJawDiameter',
    outside: ['threeJawLeast', 'threeJawMost'],
    inside: ['threeJawInsideLeast', 'threeJawInsideMost'],
  },
  'four-jaw chuck': {
    length: 'fourJawLength',
    depth: 'fourJawDepth',
    diameter: 'fourJawDiameter',
    outside: ['fourJawLeast', 'fourJawMost'],
    inside: ['fourJawInsideLeast', 'fourJawInsideMost'],
  },
} as const;

/**
 * Work is pushed home: the jaws close on what is gripped from its head end, as far as they are deep, and no farther than its tail end.
 */
function gripOf(a: KnownPlace, b: KnownPlace, depth: number, sense: 1 | -1): Grip {
  const ends = (world: World): readonly [number, number] => {
    const [p, q] = [world.place(a), world.place(b)];
    return sense * p <= sense * q ? [p, q] : [q, p];
  };
  const length = (world: World): number => {
    const [head, tail] = ends(world);
    return Math.min(Math.abs(tail - head), depth);
  };
  return { ends, length, jawsEnd: (world) => ends(world)[0] + sense * length(world) };
}

/** From one place along the bed to another, as a stretch along the part's axis. */
export const stretchBetween = (a: number, b: number): readonly [number, number] => (a <= b ? [a, b] : [b, a]);
