import type { DimensionId, StationId } from '../base/ids.ts';
import type { Unknown } from '../plan/unknown.ts';

/** What the pattern shop must know, and does not. */
export type PatternUnknown =
  | Unknown
  /** The material is no alloy of the table or of the build: its contraction is not known. */
  | { readonly is: 'alloy'; readonly name: string }
  /** Faces look both ways at the station: which of them is to have stock cannot be told. */
  | { readonly is: 'direction'; readonly station: StationId }
  /** No body has a face at the station, or is as wide as the size. */
  | { readonly is: 'face'; readonly of: StationId | DimensionId }
  /** The casting is larger than the table of allowances goes. */
  | { readonly is: 'table'; readonly sizeMm: number };
