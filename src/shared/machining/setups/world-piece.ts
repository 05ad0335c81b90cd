import { boundsOfCopy } from '../../solid/bounds.ts';
import type { Move, Vec3 } from '../../solid/placed.ts';
import { grownShape, MESH_CORNER } from '../swept/grown-shape.ts';
import { type Pose, pointFrom, poseOf, sweepsTheSame } from '../swept/pose.ts';
import { clear, nothingFound, type Reach } from '../swept/reach.ts';
import { reachOfShape } from '../swept/reach-of-shape.ts';
import type { Farthest, Stretch, SweepLine, SweepPiece } from '../swept/sweep-piece.ts';

/** From and to along X, Y and Z of the first part. */
export interface AxisBox {
  readonly min: readonly [number, number, number];
  readonly max: readonly [number, number, number];
}

/** One piece where it stands, whatever line it turns about: shape with its stock, and box, made when first asked for. */
export interface StandingPiece {
  readonly sweep: SweepPiece;
  /** Undefined for what takes away. */
  readonly box: AxisBox | undefined;
  /** The piece with its stock in its shape. */
  readonly grown: SweepPiece;
}

/** The same as it turns about a line. */
export interface TurningPiece {
  readonly standing: StandingPiece;
  /** The farthest that it reaches from the line within a stretch; undefined when nothing of it is there, or it takes away. */
  farthest(stretch: Stretch): Farthest | undefined;
}

export function standingPiece(sweep: SweepPiece): StandingPiece {
  let grown: SweepPiece | undefined;
  let box: { readonly is: AxisBox | undefined } | undefined;
  return {
    sweep,
    get grown() {
      grown ??=
        sweep.grow === 0 || sweep.shape.is === 'mesh'
          ? sweep
          : { ...sweep, shape: grownShape(sweep.shape, sweep.grow), grow: 0 };
      return grown;
    },
    get box() {
      box ??= { is: sweep.adds ? boxOf(this.grown) : undefined };
      return box.is;
    },
  };
}

function boxOf({ shape, moves, grow }: SweepPiece): AxisBox {
  const min: [number, number, number] = [Infinity, Infinity, Infinity];
  const max: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  // A mesh is not grown in its shape: stock lies all round it.
  const slack = shape.is === 'mesh' ? MESH_CORNER * grow : 0;
  for (const move of moves) {
    const bounds = boundsOfCopy(shape, move);
    for (let k = 0; k < 3; k++) {
      min[k] = Math.min(min[k]!, bounds.min[k]! - slack);
      max[k] = Math.max(max[k]!, bounds.max[k]! + slack);
    }
  }
  return { min, max };
}

const found = nothingFound();

export function turningPiece(standing: StandingPiece, line: SweepLine): TurningPiece {
  let reaches: readonly { readonly reach: Reach; readonly copy: number }[] | undefined;
  // The same stretch is asked for in world after world that does nothing to this piece.
  let [lastFrom, lastTo] = [Number.NaN, Number.NaN];
  let last: Farthest | undefined;
  return {
    standing,
    farthest([from, to]) {
      const { sweep, grown } = standing;
      if (!sweep.adds || !(to > from)) return undefined;
      if (from === lastFrom && to === lastTo) return last;
      [lastFrom, lastTo] = [from, to];
      reaches ??= reachesOf(grown, line);
      let best: Farthest | undefined;
      for (const { reach, copy } of reaches) {
        if (reach.hi <= from || reach.lo >= to) continue;
        clear(found, best?.least ?? -1);
        reach.within(from, to, found);
        if (found.most < 0 || (best && found.most <= best.most)) continue;
        const { most, x, y, z } = found;
        best = { most, least: found.least, at: x, point: pointFrom(line, x, y, z), copy };
      }
      last = best;
      return best;
    },
  };
}

/** Copies that sweep the very same count once: the holes of a circle about the line, the halves of a mirror. */
function reachesOf(
  { shape, moves, grow }: SweepPiece,
  line: SweepLine,
): readonly { readonly reach: Reach; readonly copy: number }[] {
  const poses: Pose[] = [];
  const reaches: { reach: Reach; copy: number }[] = [];
  moves.forEach((move, copy) => {
    const pose = poseOf(shape, move, line);
    if (moves.length > 1) {
      if (poses.some((before) => sweepsTheSame(before, pose))) return;
      poses.push(pose);
    }
    reaches.push({ reach: reachOfShape(shape, grow, pose), copy });
  });
  return reaches;
}

/** The same piece moved as a whole; nothing of it is worked out again. */
export function shiftedPiece({ sweep, grown, box }: StandingPiece, by: Vec3): StandingPiece {
  const moves = sweep.moves.map((move) => shifted(move, by));
  return {
    sweep: { ...sweep, moves },
    grown: { ...grown, moves },
    box: box && { min: sum(box.min, by), max: sum(box.max, by) },
  };
}

/** A piece that shifted along the line and not across it reaches as far as before, only elsewhere. */
export function shiftedAlong(piece: TurningPiece, standing: StandingPiece, along: number): TurningPiece {
  return {
    standing,
    farthest([from, to]) {
      const far = piece.farthest([from - along, to - along]);
      return far && (along === 0 ? far : { ...far, at: far.at + along });
    },
  };
}

const sum = (a: Vec3, b: Vec3): [number, number, number] => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];

function shifted(move: Move, [x, y, z]: Vec3): Move {
  const moved = [...move] as unknown as { -readonly [K in keyof Move]: Move[K] };
  moved[3] += x;
  moved[7] += y;
  moved[11] += z;
  return moved as unknown as Move;
}
