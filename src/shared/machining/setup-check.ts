import type { BodyId, DimensionId, MachineId, OperationId, PartId } from '../base/ids.ts';
import type { Holding, Setup } from '../build/setup.ts';
import type { Axis } from '../build/station.ts';
import type { Unknown } from '../plan/unknown.ts';

/** What goes round or along: a body of one of the parts (with which of its copies), or a fixture of the set-up. */
export type Piece =
  | { readonly is: 'body'; readonly part: PartId; readonly body: BodyId; readonly copy: number }
  | { readonly is: 'fixture'; readonly index: number };

/**
 * The greatest radius about the line at each position along it, bounded from both sides. Cell i reaches from `edges[i]` to
 * `edges[i + 1]` (mm along the set-up's axis, from the part's datum, rising). Nowhere in a cell does the solid reach beyond
 * `most`; somewhere in it a point that nothing takes away reaches `least` (0 where none is sure). Both are equal where the shape
 * allows an exact answer.
 */
export interface SweptProfile {
  readonly axis: Axis;
  readonly edges: Float64Array;
  readonly most: Float64Array;
  readonly least: Float64Array;
  /** Which of `pieces` carries `most` in the cell; -1 where there is nothing. */
  readonly by: Int32Array;
  readonly pieces: readonly Piece[];
}

/** What a verdict is about; stable, it stands in finding keys. */
export const verdictKinds = [
  'over-bed',
  'in-gap',
  'over-saddle',
  'over-cross-slide',
  'tool-block-head',
  'tool-block-tail',
  'between-centres',
  'barrel-travel',
  'arbor-length',
  'face-plate',
  'jaw-range',
  'grip-length',
  'through-spindle',
  'steady-range',
  'tool-reach',
  'cross-travel',
  'in-throat',
  'daylight',
  'quill-travel',
  'chuck-range',
  'stroke',
  'under-ram',
  'head-travel',
  'table-travel',
  'on-table',
  'travel-x',
  'travel-y',
  'travel-z',
  'in-vise',
  'under-wheel',
  'saw-height',
  'on-plate',
] as const;
export type VerdictKind = (typeof verdictKinds)[number];

/** Limits and allowance are counted: `at the limit` clears as drawn and hits at the worst of them. */
export type VerdictState = 'clears' | 'at the limit' | 'hits' | 'unknown';

/** How the margin moves with a dimension: mm per mm (or per degree), as drawn. */
export interface Share {
  readonly dimension: DimensionId;
  readonly sensitivity: number;
  /** What its limits can take from the margin and add to it: `minus` ≤ 0 ≤ `plus`, mm. */
  readonly minus: number;
  readonly plus: number;
}

/** A way out, nearest first. */
export type Remedy =
  /** The smallest change of one dimension that clears, limits counted. */
  | { readonly is: 'dimension'; readonly dimension: DimensionId; readonly from: number; readonly to: number }
  /** Another machine of the shop on which every verdict of the set-up clears. */
  | { readonly is: 'machine'; readonly machine: MachineId }
  /** Another way of holding on the same machine that clears, with all that was said of it for that. */
  | { readonly is: 'holding'; readonly holding: Holding }
  | { readonly is: 'end-for-end' }
  /** The same set-up in a later state of the part clears. */
  | { readonly is: 'after'; readonly operation: OperationId };

export interface Verdict {
  readonly kind: VerdictKind;
  readonly state: VerdictState;
  /** The cut that asks for it; undefined for what holds for the set-up as a whole. */
  readonly operation: OperationId | undefined;
  /** mm; what is there less what is needed. Undefined when unknown. */
  readonly margin: number | undefined;
  readonly has: number | undefined;
  readonly needs: number | undefined;
  /** What limits make of the margin at worst and at best: minus ≤ 0 ≤ plus. */
  readonly band: { readonly minus: number; readonly plus: number };
  /** Where along the line it is worst, mm from the part's datum. */
  readonly at: number | undefined;
  readonly carriedBy: Piece | undefined;
  /** Largest share first; the first is the dimension that carries it. */
  readonly shares: readonly Share[];
  readonly unknown: readonly Unknown[];
  readonly remedies: readonly Remedy[];
}

/** What turns off its axis. */
export interface Balance {
  readonly massKg: number;
  /** Of the centre of mass from the line. */
  readonly eccentricityMm: number;
  /** From the first axis across towards the second, degrees. */
  readonly directionDeg: number;
  readonly imbalanceKgMm: number;
  /** Counterweight opposite, for a given radius: mass × radius = imbalance. */
  readonly counterweightKg: number | undefined;
  readonly counterweightRadiusMm: number | undefined;
  /** Highest speed at which the out-of-balance force stays within the limit; Infinity in balance. */
  readonly highestRpm: number;
}

/** What the workshop says of one set-up. Keeps its identity until something behind it really changes. */
export interface SetupCheck {
  readonly setup: Setup;
  /** Undefined when the line, or a body, is not placed: `unknown` says what is missing. Nothing is guessed. */
  readonly profile: SweptProfile | undefined;
  /** Where the whole of it begins and ends along the line, mm from the part's datum, fixtures included. */
  readonly extent: readonly [number, number] | undefined;
  readonly verdicts: readonly Verdict[];
  readonly unknown: readonly Unknown[];
  /** Undefined where a mass is not known (`balanceUnknown`), no solid is worked out yet, or nothing turns. */
  readonly balance: Balance | undefined;
  /** What must be known before the balance can be told; verdicts do without it. */
  readonly balanceUnknown: readonly Unknown[];
}
