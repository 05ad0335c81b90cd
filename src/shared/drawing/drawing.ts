import type { DimensionId, PartId, StationId } from '../base/ids.ts';
import type { BuildDiff } from '../build/diff.ts';
import type { Axis } from '../build/station.ts';
import type { Kind, TextProblem } from '../quantity/kind.ts';

/** Where a dimension's limits come from, with the words to show: `written`, `ISO 2768-1 m`, `ISO 8062-3 DCTG 11`. */
export interface ResolvedLimits {
  /** Lowest and highest permitted value, in the dimension's unit (mm, deg, …), lower ≤ upper. */
  readonly lower: number;
  readonly upper: number;
  readonly origin: 'written' | 'general' | 'casting';
  /** The table row behind them, e.g. "ISO 2768-1:1989 table 1, class m, 30 to 120 mm"; "as written". */
  readonly row: string;
}

/** Why a dimension has no value. */
export type ValueProblem =
  /** Nothing is written. */
  | { readonly why: 'empty' }
  /** The text cannot be read, its units do not fit, a name is unknown, it divides by zero, … */
  | { readonly why: 'text'; readonly problem: TextProblem }
  /** It stands in a ring of formulas; `ring` in order, beginning with the smallest id. */
  | { readonly why: 'ring'; readonly ring: readonly DimensionId[] }
  /** It hangs on dimensions that have no value; `causes` are the roots (empty, text or ring), sorted by id. */
  | { readonly why: 'waiting'; readonly causes: readonly DimensionId[] };

/** A dimension as the graph resolves it. */
export interface ResolvedDimension {
  readonly id: DimensionId;
  readonly unit: Kind;
  /** In mm, degrees, kg, °C or as a number; finite; undefined exactly when `problem` is there. */
  readonly value: number | undefined;
  readonly problem: ValueProblem | undefined;
  /** Undefined when there is no value, or when the table has no row for it and none are written. */
  readonly limits: ResolvedLimits | undefined;
  /** The written limits cannot be read (the value still stands). */
  readonly limitsProblem: TextProblem | undefined;
  readonly isFormula: boolean;
  /** The dimensions its formula names, in order of first mention. */
  readonly references: readonly DimensionId[];
}

/** How far a distance may stray from its nominal, in mm: `minus` ≤ 0 ≤ `plus` for worst case; RSS is symmetric about `rssCentre`. */
export interface Band {
  readonly minus: number;
  readonly plus: number;
  /** Half width of the root-sum-square band, and its centre's offset from nominal (unequal limits shift it). */
  readonly rss: number;
  readonly rssCentre: number;
}

/** A station as placed along its axis. */
export interface PlacedStation {
  readonly id: StationId;
  /** Index into `AxisDrawing.groups`. */
  readonly group: number;
  /** Position in mm from the group's origin (the datum in group 0 if there is one, else the group's first station). */
  readonly at: number;
  readonly band: Band;
  /** The dimensions from the origin to here, in order. */
  readonly path: readonly DimensionId[];
}

/** Stations tied to one another. Group 0 holds the datum, if the axis has one. */
export interface StationGroup {
  readonly origin: StationId;
  readonly stations: readonly StationId[];
}

/** A closed chain: the stations are dimensioned twice. */
export interface Loop {
  /** Edges in order round the loop; `sign` +1 when walked from→to. */
  readonly edges: readonly { readonly dimension: DimensionId; readonly sign: 1 | -1 }[];
  /** Sum of the signed values round the loop in mm; 0 when it closes. */
  readonly closingError: number;
  /** What the limits allow: the closing error must lie in [worstMinus, worstPlus] for the loop to be possible. */
  readonly worstMinus: number;
  readonly worstPlus: number;
  readonly rss: number;
  /** Closes within limits (only redundant), or cannot close (contradiction). */
  readonly verdict: 'redundant' | 'contradiction';
}

/** One dimension that would explain a contradiction by itself if it read otherwise. */
export interface Suspect {
  readonly dimension: DimensionId;
  /** What it would have to read for everything to close, in mm. */
  readonly wouldBe: number;
  /** A likely slip that turns one into the other, if one is recognised. */
  readonly slip:
    | 'inch-for-mm'
    | 'mm-for-inch'
    | 'digits-swapped'
    | 'decimal-point'
    | 'wrong-sign'
    | 'diameter-for-radius'
    | undefined;
}

/** An irreducible set of dimensions that cannot all hold. */
export interface Conflict {
  /** Smallest set: take any one away and the rest can hold. Sorted along the loop. */
  readonly dimensions: readonly DimensionId[];
  readonly loop: Loop;
  /** Best explanation first. Holds one entry when exactly one edge explains every failing loop of its block. */
  readonly suspects: readonly Suspect[];
}

/** The likeliest dimension that would bridge two groups. */
export interface SuggestedTie {
  readonly from: StationId;
  readonly to: StationId;
  /** A dimension that already stands between the two but has no value, if there is one: fill that in rather than adding another. */
  readonly dimension: DimensionId | undefined;
  readonly reason: 'empty-dimension' | 'nearest-in-list' | 'named-in-formula';
}

/** Everything about one axis of one part. */
export interface AxisDrawing {
  readonly part: PartId;
  readonly axis: Axis;
  readonly datum: StationId | undefined;
  /** In list order. */
  readonly stations: readonly PlacedStation[];
  readonly groups: readonly StationGroup[];
  /** A fundamental set of loops: one per dimension beyond those the placing needs. */
  readonly loops: readonly Loop[];
  readonly conflicts: readonly Conflict[];
  /** One per group but the first: the tie that would bring that group in. Same order as `groups.slice(1)`. */
  readonly ties: readonly SuggestedTie[];
}

/** The distance between two stations of one axis. */
export interface Distance {
  readonly value: number;
  readonly band: Band;
  readonly path: readonly { readonly dimension: DimensionId; readonly sign: 1 | -1 }[];
}

/** What an edit changed in the drawing: ids whose resolution, and axes whose layout, differ from before. */
export interface DrawingChange {
  readonly dimensions: readonly DimensionId[];
  readonly axes: readonly { readonly part: PartId; readonly axis: Axis }[];
}

/**
 * The drawing graph of a whole build. It holds state and is updated in place, but everything it hands out is immutable
 * and keeps its identity (`===`) until an edit really changes it. After any sequence of updates it answers exactly as a
 * fresh graph of the same build would, bit for bit.
 */
export interface Drawing {
  /** Re-does only what the diff touches. */
  update(diff: BuildDiff): DrawingChange;
  dimension(id: DimensionId): ResolvedDimension;
  /** Axes of a part that have stations, in the order X, Y, Z. */
  axesOf(part: PartId): readonly AxisDrawing[];
  /** @returns undefined when no dimension ties the two. */
  distance(from: StationId, to: StationId): Distance | undefined;
  /** Dimensions whose formulas name this one, sorted by id. */
  namedBy(id: DimensionId): readonly DimensionId[];
  /** Rings of formulas in the whole build, each once, each beginning with its smallest id, sorted. */
  rings(): readonly (readonly DimensionId[])[];
  /** All that would move or change value with this dimension: dimensions (through formulas) and stations (through placing), across parts. */
  touches(id: DimensionId): { readonly dimensions: readonly DimensionId[]; readonly stations: readonly StationId[] };
  /** All that this dimension or this station's place hangs on. */
  hangsOn(id: DimensionId | StationId): {
    readonly dimensions: readonly DimensionId[];
    readonly stations: readonly StationId[];
  };
}
