import type { OperationId } from '../../base/ids.ts';
import type { Unknown } from '../../plan/unknown.ts';
import type { Piece, VerdictKind } from '../setup-check.ts';
import type { World } from '../setups/world.ts';

/** What there is and what is needed, mm, in one world. The margin is the first less the second. */
export interface Term {
  readonly has: number;
  readonly needs: number;
  /** Where along the line, mm from the part's datum. */
  readonly at?: number | undefined;
  readonly piece?: Piece | undefined;
}

/** One thing to be judged of a set-up: how it is worked out, or what must be known first. */
export interface Question {
  readonly kind: VerdictKind;
  /** The cut that asks for it. */
  readonly operation: OperationId | undefined;
  /** Not empty: it cannot be judged, and `term` is not to be called. */
  readonly unknown: readonly Unknown[];
  /** How many things could carry it: each piece, or the two ends of a range. The worst of them is the verdict. */
  readonly carriers: number;
  /**
   * Of one carrier; undefined where that one does not come near. Pure: it depends on the world alone.
   * @returns NaN nowhere: a term whose world is broken is thrown away by the caller
   */
  term(world: World, carrier: number): Term | undefined;
  /** Of carriers that are pieces: which one, and the margin if it reached everywhere as far as it does anywhere. */
  atMost?(carrier: number): { readonly piece: number; readonly margin: number } | undefined;
}
