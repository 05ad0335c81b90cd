import type { DimensionId, PartId } from '../base/ids.ts';
import type { Acceptance } from '../build/acceptance.ts';
import type { Dimension } from '../build/dimension.ts';
import type { Machine } from '../build/machine.ts';
import type { Part } from '../build/part.ts';
import type { RecordId } from '../build/records.ts';
import type { Settings } from '../build/settings.ts';
import type { Station } from '../build/station.ts';
import type { AxisDrawing, ResolvedDimension } from '../drawing/drawing.ts';
import type { OperationFact } from '../machining/route/operation-fact.ts';
import type { RouteCheck } from '../machining/route/order-faults.ts';
import type { SetupFact } from '../machining/setups/setup-fact.ts';
import type { PlacedBody } from '../solid/placed.ts';
import type { PartSolid, RefusedBody } from '../solid/solids.ts';
import type { Material } from '../tables/materials.ts';

export type Severity = 'stop' | 'caution' | 'note';
export type Department = 'drawing' | 'pattern' | 'foundry' | 'machining' | 'fitting' | 'erecting';
/** Clear to cut (pattern or stock), to pour, to machine, to fit. */
export type Gate = 'cut' | 'pour' | 'machine' | 'fit';

/** A dimension with what the graph makes of it. */
export interface DimensionFact {
  readonly record: Dimension;
  readonly resolved: ResolvedDimension;
  /** Dimensions, of any part, whose formulas name it. */
  readonly namedBy: readonly DimensionId[];
}

/** What a rule of one part can ask for. Each entry keeps its identity until it really changes. */
export interface PartFacts {
  readonly settings: Settings;
  readonly part: Part;
  /** What the part's material is known by: the build's own row, else the table's; undefined when neither knows its name. */
  readonly material: Material | undefined;
  /** In list order. */
  readonly stations: readonly Station[];
  readonly dimensions: readonly DimensionFact[];
  readonly axes: readonly AxisDrawing[];
  /** In list order, as the drawing places them. */
  readonly bodies: readonly PlacedBody[];
  /** What the kernel makes of them; undefined while it is not worked out, without a kernel, and when nothing is placed. */
  readonly solid: PartSolid | undefined;
  /** Bodies with a shape that the kernel did not take. */
  readonly refused: readonly RefusedBody[];
  /** In list order, each with what follows from it. */
  readonly operations: readonly OperationFact[];
  /** What is said of the order of its operations. */
  readonly route: RouteCheck;
  /** The set-ups in which it is the part that is worked upon, in list order, each with what is said of it. */
  readonly setups: readonly SetupFact[];
}

/** What a rule of the whole build can ask for. */
export interface BuildFacts {
  readonly settings: Settings;
  readonly parts: readonly Part[];
  readonly machines: readonly Machine[];
  /** Rings of formulas, each with the names behind its ids. */
  readonly rings: readonly (readonly { readonly dimension: Dimension; readonly part: Part }[])[];
}

/**
 * What a rule says. Values in `data` fill the `{placeholders}` of the message; a name ending in `Mm` is a length in mm,
 * in `Deg` an angle, in `Kg` a mass: they are shown in the reader's units. Everything else is shown as it is.
 */
export interface Said<M extends string = string> {
  readonly message: M;
  /** What the finding points at; the first entry is selected when the user goes to it. */
  readonly at: readonly [RecordId, ...RecordId[]];
  readonly data?: Readonly<Record<string, string | number>>;
}

interface RuleHead<M extends string> {
  /** Same as the file name, for life: it is stored in acceptances. */
  readonly id: string;
  readonly title: string;
  readonly department: Department;
  readonly severity: Severity;
  /** Gates that an open finding of this rule keeps shut. */
  readonly shuts: readonly Gate[];
  /** Whether the builder may take it on themselves with a reason. */
  readonly acceptable: boolean;
  /**
   * What it says hangs on the measured surfaces of a part: after an edit it says what it said before, until they are measured
   * anew.
   */
  readonly ofSurfaces?: true;
  readonly messages: Readonly<Record<M, string>>;
  /** What to do about it, one sentence per message, with the same placeholders. */
  readonly remedies: Readonly<Record<M, string>>;
}

/** A rule of one part: run for each part, and again only when one of the facts that it needs changes identity. */
export interface PartRule<N extends keyof PartFacts = keyof PartFacts, M extends string = string> extends RuleHead<M> {
  readonly scope: 'part';
  readonly needs: readonly N[];
  /** Pure: same facts, same findings, in a stable order. */
  check(facts: Pick<PartFacts, N>): readonly Said<NoInfer<M>>[];
}

/** A rule of the build as a whole. */
export interface BuildRule<N extends keyof BuildFacts = keyof BuildFacts, M extends string = string>
  extends RuleHead<M> {
  readonly scope: 'build';
  readonly needs: readonly N[];
  check(facts: Pick<BuildFacts, N>): readonly Said<NoInfer<M>>[];
}

/** A rule whose type parameters the registry no longer needs. */
export type AnyRule =
  | (Omit<PartRule, 'check'> & { check(facts: PartFacts): readonly Said[] })
  | (Omit<BuildRule, 'check'> & { check(facts: BuildFacts): readonly Said[] });

export function definePartRule<const N extends keyof PartFacts, const M extends string>(
  rule: Omit<PartRule<N, M>, 'scope'>,
): PartRule<N, M> {
  return { scope: 'part', ...rule };
}

export function defineBuildRule<const N extends keyof BuildFacts, const M extends string>(
  rule: Omit<BuildRule<N, M>, 'scope'>,
): BuildRule<N, M> {
  return { scope: 'build', ...rule };
}

/** What a rule says of the build, complete. */
export interface Finding {
  /** `rule/message@id,id…`: the same finding keeps the same key over edits. */
  readonly key: string;
  readonly rule: string;
  readonly message: string;
  readonly severity: Severity;
  readonly department: Department;
  readonly shuts: readonly Gate[];
  readonly acceptable: boolean;
  /** The part it is of; undefined for one of the whole build. */
  readonly part: PartId | undefined;
  readonly at: readonly [RecordId, ...RecordId[]];
  readonly data: Readonly<Record<string, string | number>>;
  /** The acceptance that holds for it at its present figures. */
  readonly accepted: Acceptance | undefined;
  /** An acceptance given at other figures: it holds no longer, and says so. */
  readonly lapsed: Acceptance | undefined;
}

/** One gate of one part. */
export interface GateState {
  readonly gate: Gate;
  /** `not needed`: a bought part has no gate to cut. */
  readonly state: 'open' | 'shut' | 'not needed';
  /** Keys of the open findings that keep it shut, own ones first, then those upstream through formulas. */
  readonly because: readonly string[];
}
