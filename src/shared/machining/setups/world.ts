import type { DimensionId, StationId } from '../../base/ids.ts';
import type { Axis } from '../../build/station.ts';
import { AS_DRAWN, type Changes, type Numbers } from '../../plan/numbers.ts';
import { boxOfPieces, type PieceBox } from '../swept/box-of-pieces.ts';
import { type FarthestOfAll, reachWithin } from '../swept/reach-of-piece.ts';
import type { Stretch, SweepLine, SweepPiece } from '../swept/sweep-piece.ts';
import { createSweeper, type Sweeper } from '../swept/sweeper.ts';
import { type ChangedNumbers, changedNumbers, dimensionsBehind, type Recipe } from './recipe.ts';

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

/** One piece in one world. */
interface WorldPiece {
  readonly sweep: SweepPiece;
  readonly box: PieceBox | undefined;
  readonly sweeper: Sweeper;
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
  boxOf(index: number): PieceBox | undefined;
  /** Where some pieces begin and end along the line; undefined where none of them adds. */
  extentOf(indexes: readonly number[]): Stretch | undefined;
  /** The farthest from the line that a piece reaches within a stretch. */
  reachOf(index: number, stretch: Stretch): FarthestOfAll | undefined;
}

/** The work as drawn, with worlds of it that differ. */
export interface Worlds {
  readonly work: Work;
  readonly drawn: World;
  /** Pieces that add. */
  readonly adding: readonly number[];
  readonly pieces: readonly SweepPiece[];
  changed(changes: Changes): World;
  /** As drawn; the dimensions behind whatever is asked of it are put into `noted`. */
  noting(noted: Set<DimensionId>): World;
}

export function createWorlds(work: Work): Worlds {
  const { numbers, recipes, axis, through } = work;
  const lineHangsOn = dimensionsBehind(numbers, through ?? [], []);
  const lineOf = ({ at }: ChangedNumbers): SweepLine =>
    through ? { axis, u: at(through[0]), v: at(through[1]) } : { axis, u: 0, v: 0 };
  const line = lineOf(changedNumbers(numbers, AS_DRAWN));
  const drawn: readonly WorldPiece[] = recipes.map((recipe) => readyPiece(sweepOf(recipe, recipe.drawn), line));

  function worldOf(changes: Changes, noted?: Set<DimensionId>): World {
    const own = changedNumbers(numbers, changes, noted);
    const moved = anyOf(lineHangsOn, changes);
    const lineHere = moved ? lineOf(own) : line;
    const pieces: (WorldPiece | undefined)[] = new Array(recipes.length);
    let broken = false;
    const pieceAt = (i: number): WorldPiece => {
      const before = pieces[i];
      if (before) return before;
      const recipe = recipes[i]!;
      const asDrawn = drawn[i]!;
      let piece = asDrawn;
      if (anyOf(recipe.dimensions, changes)) {
        const made = recipe.make(own);
        if (made) piece = readyPiece(sweepOf(recipe, made), lineHere);
        else broken = true;
      } else if (moved) piece = readyPiece(asDrawn.sweep, lineHere);
      pieces[i] = piece;
      return piece;
    };
    const note = (i: number) => {
      if (!noted) return;
      for (const dimension of recipes[i]!.dimensions) noted.add(dimension);
    };
    const noteLine = () => {
      if (noted) for (const dimension of lineHangsOn) noted.add(dimension);
    };
    return {
      ...own,
      changes,
      line: lineHere,
      get broken() {
        return broken;
      },
      recipeOf: (i) => recipes[i]!,
      shapeOf(i) {
        note(i);
        noteLine();
        return pieceAt(i).sweep;
      },
      boxOf(i) {
        note(i);
        noteLine();
        return pieceAt(i).box;
      },
      extentOf(indexes) {
        let [low, high] = [Infinity, -Infinity];
        let [first, last] = [-1, -1];
        for (const i of indexes) {
          const along = pieceAt(i).box?.along;
          if (!along) continue;
          if (along[0].at < low) [low, first] = [along[0].at, i];
          if (along[1].at > high) [high, last] = [along[1].at, i];
        }
        if (first < 0) return undefined;
        if (noted) {
          note(first);
          note(last);
          for (const i of indexes) {
            const along = pieceAt(i).box?.along;
            if (along && (along[0].at < low + NEAR_MM || along[1].at > high - NEAR_MM)) note(i);
          }
        }
        return [low, high];
      },
      reachOf(i, stretch) {
        note(i);
        noteLine();
        return reachWithin(pieceAt(i).sweeper, stretch);
      },
    };
  }

  const asDrawn = worldOf(AS_DRAWN);
  return {
    work,
    drawn: asDrawn,
    pieces: drawn.map(({ sweep }) => sweep),
    adding: recipes.flatMap(({ adds }, i) => (adds ? [i] : [])),
    changed: (changes) => worldOf(changes),
    noting: (noted) => worldOf(AS_DRAWN, noted),
  };
}

const sweepOf = ({ piece, adds, grow }: Recipe, { shape, moves }: Recipe['drawn']): SweepPiece => ({
  piece,
  shape,
  moves,
  adds,
  grow,
});

/** Box and sweeper are made when first asked for. */
function readyPiece(sweep: SweepPiece, line: SweepLine): WorldPiece {
  let box: { readonly is: PieceBox | undefined } | undefined;
  let sweeper: Sweeper | undefined;
  return {
    sweep,
    get box() {
      box ??= { is: boxOfPieces([sweep], line) };
      return box.is;
    },
    get sweeper() {
      sweeper ??= createSweeper([sweep], line);
      return sweeper;
    },
  };
}

function anyOf(dimensions: ReadonlySet<DimensionId>, changes: Changes): boolean {
  for (const id of changes.keys()) if (dimensions.has(id)) return true;
  return false;
}
