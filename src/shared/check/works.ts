import type { PartId } from '../base/ids.ts';
import type { BuildDiff } from '../build/diff.ts';
import type { Build } from '../build/records.ts';
import type { Drawing, DrawingChange } from '../drawing/drawing.ts';
import type { PlacedBody } from '../solid/placed.ts';
import type { MeasuredPart, Solids } from '../solid/solids.ts';
import type { Finding, GateState, PartFacts } from './rule.ts';

/** What an edit changed, for whoever shows it. */
export interface WorksChange {
  readonly drawing: DrawingChange;
  /** Parts whose findings, gates or facts changed. */
  readonly parts: readonly PartId[];
  readonly findingsChanged: boolean;
}

/** The whole engine over one build: document, drawing graph, findings and gates, kept in step by `update`. */
export interface Works {
  readonly build: Build;
  readonly drawing: Drawing;
  /** Parts whose solid is still to be measured are in `solids.pending()`; `computeSolid` does one. */
  readonly solids: Solids;
  /** By severity, then part in list order, then rule, then subject; keeps identity while nothing changes. */
  findings(): readonly Finding[];
  findingsOf(part: PartId): readonly Finding[];
  gatesOf(part: PartId): readonly GateState[];
  /** What the rules see of a part; entries keep their identity while they say the same. Undefined when it is not there. */
  factsOf(part: PartId): PartFacts | undefined;
  update(diff: BuildDiff): WorksChange;
  /** Works out the solid of a part as it is now, and what the rules say of it. Without a kernel nothing changes. */
  computeSolid(part: PartId): WorksChange;
  /** The same with a solid that was measured elsewhere; nothing comes of it where the part has other bodies by now. */
  takeSolid(part: PartId, bodies: readonly PlacedBody[], measured: MeasuredPart): WorksChange;
  /**
   * The same for the live figures, in a fraction of the time; what hangs on the surface of the part follows when it is
   * measured. Nothing changes where they are there already.
   */
  computeLive(part: PartId): WorksChange;
}
