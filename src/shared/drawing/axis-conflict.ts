import type { Step } from './constraints.ts';
import type { Slip } from './slips.ts';

/** A smallest set of dimensions that cannot all hold, round its loop, with what would explain it. Edges are slots. */
export interface AxisConflict {
  readonly steps: readonly Step[];
  readonly suspects: readonly AxisSuspect[];
}

export interface AxisSuspect {
  readonly edge: number;
  readonly wouldBe: number;
  readonly slip: Slip | undefined;
}
