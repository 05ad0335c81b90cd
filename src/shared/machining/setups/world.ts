import type { DimensionId, StationId } from '../../base/ids.ts';
import type { Axis } from '../../build/station.ts';
import { AS_DRAWN, type Changes, type Numbers } from '../../plan/numbers.ts';
import type { Vec3 } from '../../solid/placed.ts';
import { frameOf } from '../swept/pose.ts';
import type { Farthest, Stretch, SweepLine, SweepPiece } from '../swept/sweep-piece.ts';
import { type ChangedNumbers, changedNumbers, dimensionsBehind, type Recipe, type Sink } from './recipe.ts';
import {
  type AxisBox,
  shiftedAlong,
  shiftedPiece,
  standingPiece,
  type TurningPiece,
  turningPiece,
} from './world-piece.ts';

/** All that is put into a machine, as records and the drawing tell it. */
export interface Work {
  readonly numbers: Numbers;
  readonly axis: Axis;
  /** Undefined while the set-up does not say; the work then lies about the datum. */
  readonly through: readonly [StationId, StationId] | undefined;
  /** In the order in which they act. */
  readonly recipes: readonly Recipe[];
}

/** A piece that ends so near to the end of the whole may come to be that end within its limits, mm. */
const NEAR_MM = 5;

/** Sums of the same dimensions in another order differ by less than this, mm. */
const SAME_PLACE_MM = 1e-9;

/** The box of a piece seen from the line, mm: along it from the datum, across it from the line. */
export interface LineBox {
  readonly along: Stretch;
  readonly across: readonly [first: Stretch, second: Stretch];
}

/**
 * The work with the drawing's numbers, or with some of them changed: whatever is asked of it is worked out exactly, from the
 * shapes of its pieces. Where a change leaves a piece without a shape, `broken` is true and nothing that is asked means anything.
 */
export interface World extends ChangedNumbers {
  readonly changes: Changes;
  readonly line: SweepLine;
  readonly broken: boolean;
  recipeOf(index: number): Recipe;
  /** A piece as it stands in this world, in the first part's frame; whether it adds or takes away. */
  shapeOf(index: number): Pick<SweepPiece, 'shape' | 'moves'>;
  /** The box of one piece, seen from the line; undefined for one that takes away. */
  boxOf(index: number): LineBox | undefined;
  /** Where some pieces begin and end along the line; undefined where none of them adds. */
  extentOf(indexes: readonly number[]): Stretch | undefined;
  /** The farthest from the line that a piece reaches within a stretch. */
  reachOf(index: number, stretch: Stretch): Farthest | undefined;
}

/** The work as drawn, with worlds of it that differ. */
export interface Worlds {
  readonly work: Work;
  readonly drawn: World;
  /** Pieces that add. */
  readonly adding: readonly number[];
  readonly pieces: readonly SweepPiece[];
  changed(changes: Changes): World;
  /** As drawn; the dimensions behind whatever is asked of it are put into `noted`, until it is called again. */
  noting(noted: Set<DimensionId>): World;
  /** How far a piece reaches from the line anywhere, as drawn. */
  greatestOf(index: number): number;
  /** The dimensions that a piece and the line hang on. */
  hangsOn(index: number): readonly DimensionId[];
}

export function createWorlds(work: Work): Worlds {
  const { numbers, recipes, axis, through } = work;
  const lineHangsOn = dimensionsBehind(numbers, through ?? [], []);
  const lineOf = ({ at }: ChangedNumbers): SweepLine =>
    through ? { axis, u: at(through[0]), v: at(through[1]) } : { axis, u: 0, v: 0 };
  const line = lineOf(changedNumbers(numbers, AS_DRAWN));
  const [x, y, z] = frameOf(line);
  const drawn: readonly TurningPiece[] = recipes.map((recipe) =>
    turningPiece(standingPiece(sweepOf(recipe, recipe.drawn)), line),
  );

  /** How a piece shifts as a whole; undefined where a change does more to it. */
  function shiftOf({ dimensions, shiftFor }: Recipe, changes: Changes): Vec3 | undefined {
    const shift: [number, number, number] = [0, 0, 0];
    for (const [dimension, by] of changes) {
      if (!dimensions.has(dimension)) continue;
      const per = shiftFor(dimension);
      if (!per) return undefined;
      for (let k = 0; k < 3; k++) shift[k]! += by * per[k]!;
    }
    return shift;
  }

  // Most worlds are asked for one or two pieces only, and most pieces only shift in them.
  function pieceIn(i: number, now: ChangedNumbers, changes: Changes, here: SweepLine): TurningPiece | undefined {
    const recipe = recipes[i]!;
    const asDrawn = drawn[i]!;
    const shift = shiftOf(recipe, changes);
    if (!shift) {
      const made = recipe.make(now);
      return made && turningPiece(standingPiece(sweepOf(recipe, made)), here);
    }
    const isStill = shift[0] === 0 && shift[1] === 0 && shift[2] === 0;
    if (isStill && here === line) return asDrawn;
    const standing = isStill ? asDrawn.standing : shiftedPiece(asDrawn.standing, shift);
    const across = Math.abs(shift[y]! - (here.u - line.u)) + Math.abs(shift[z]! - (here.v - line.v));
    return across < SAME_PLACE_MM ? shiftedAlong(asDrawn, standing, shift[x]!) : turningPiece(standing, here);
  }

  function worldOf(changes: Changes, sink: Sink | undefined): World {
    const own = changedNumbers(numbers, changes, sink);
    const here = anyOf(lineHangsOn, changes) ? lineOf(own) : line;
    const isDrawn = changes.size === 0;
    const pieces: Map<number, TurningPiece> | undefined = isDrawn ? undefined : new Map();
    let broken = false;
    // Asked for again and again: where the work ends says where the lathe stands.
    let extents: Map<readonly number[], Stretch> | undefined;
    const pieceAt = (i: number): TurningPiece => {
      if (!pieces) return drawn[i]!;
      let piece = pieces.get(i);
      if (!piece) {
        piece = pieceIn(i, own, changes, here);
        if (!piece) {
          broken = true;
          piece = drawn[i]!;
        }
        pieces.set(i, piece);
      }
      return piece;
    };
    const note = (i: number) => {
      if (!sink) return;
      for (const dimension of recipes[i]!.dimensions) sink.noted.add(dimension);
      for (const dimension of lineHangsOn) sink.noted.add(dimension);
    };
    return {
      at: own.at,
      size: own.size,
      place: own.place,
      amount: own.amount,
      changes,
      line: here,
      get broken() {
        return broken;
      },
      recipeOf: (i) => recipes[i]!,
      shapeOf(i) {
        note(i);
        return pieceAt(i).standing.sweep;
      },
      boxOf(i) {
        note(i);
        return boxAbout(pieceAt(i).standing.box, here);
      },
      extentOf(indexes) {
        const known = extents?.get(indexes);
        if (known && !sink) return known;
        const extent = extentIn(indexes, pieceAt, x);
        if (extent) {
          extents ??= new Map();
          extents.set(indexes, extent);
        }
        if (sink && extent) for (const i of indexes) if (isNearEnd(pieceAt(i).standing.box, extent, x)) note(i);
        return extent;
      },
      reachOf(i, stretch) {
        note(i);
        return pieceAt(i).farthest(stretch);
      },
    };
  }

  const boxAbout = (box: AxisBox | undefined, here: SweepLine): LineBox | undefined =>
    box && {
      along: [box.min[x]!, box.max[x]!],
      across: [
        [box.min[y]! - here.u, box.max[y]! - here.u],
        [box.min[z]! - here.v, box.max[z]! - here.v],
      ],
    };
  const greatest: (number | undefined)[] = [];
  const greatestOf = (i: number): number => {
    const box = drawn[i]!.standing.box;
    greatest[i] ??= (box && drawn[i]!.farthest([box.min[x]! - 1, box.max[x]! + 1])?.most) ?? 0;
    return greatest[i];
  };

  const sink: Sink = { noted: new Set() };
  const noting = worldOf(AS_DRAWN, sink);
  return {
    work,
    drawn: worldOf(AS_DRAWN, undefined),
    pieces: drawn.map(({ standing }) => standing.sweep),
    adding: recipes.flatMap(({ adds }, i) => (adds ? [i] : [])),
    changed: (changes) => worldOf(changes, undefined),
    noting(noted) {
      sink.noted = noted;
      return noting;
    },
    greatestOf,
    hangsOn: (i) => [...recipes[i]!.dimensions, ...lineHangsOn],
  };
}

function extentIn(
  indexes: readonly number[],
  pieceAt: (i: number) => TurningPiece,
  along: number,
): Stretch | undefined {
  let [low, high] = [Infinity, -Infinity];
  for (const i of indexes) {
    const box = pieceAt(i).standing.box;
    if (!box) continue;
    low = Math.min(low, box.min[along]!);
    high = Math.max(high, box.max[along]!);
  }
  return low <= high ? [low, high] : undefined;
}

const isNearEnd = (box: AxisBox | undefined, [low, high]: Stretch, along: number): boolean =>
  box !== undefined && (box.min[along]! < low + NEAR_MM || box.max[along]! > high - NEAR_MM);

const sweepOf = ({ piece, adds, grow }: Recipe, { shape, moves }: Recipe['drawn']): SweepPiece => ({
  piece,
  shape,
  moves,
  adds,
  grow,
});

function anyOf(dimensions: ReadonlySet<DimensionId>, changes: Changes): boolean {
  for (const id of changes.keys()) if (dimensions.has(id)) return true;
  return false;
}
