import type { BodyId, DimensionId, MachineId, OperationId, PartId, SetupId } from '../../../shared/base/ids.ts';
import type { Machine } from '../../../shared/build/machine.ts';
import type { Holding, Setup } from '../../../shared/build/setup.ts';
import type { SetupScene, ShownVerdict } from '../../../shared/machining/picture/scene.ts';
import type { VerdictState } from '../../../shared/machining/setup-check.ts';
import type { LengthUnit } from '../../../shared/quantity/kind.ts';

/** A set-up as the list of set-ups shows it. */
export interface SetupRow {
  readonly record: Setup;
  readonly machine: string | undefined;
  readonly holding: string;
  /** The worst that is said of it; undefined while nothing is. */
  readonly state: VerdictState | undefined;
  /** How many of its verdicts are not clear, in words: `2 hits, 1 not known`. */
  readonly words: string;
}

/** The set-ups of one part. */
export interface SetupGroup {
  readonly part: PartId;
  readonly name: string;
  readonly rows: readonly SetupRow[];
}

/** How a dimension carries a verdict. */
export interface ShareRow {
  readonly dimension: DimensionId;
  readonly part: PartId;
  readonly name: string;
  /** Of which part, when not the set-up's own. */
  readonly of: string | undefined;
  readonly value: string | undefined;
  /** What a change of it does, in words: `1 mm more takes 1 mm`. */
  readonly words: string;
}

/** What a remedy does when it is taken. */
export type RemedyAct =
  | { readonly is: 'dimension'; readonly part: PartId; readonly dimension: DimensionId; readonly written: string }
  | { readonly is: 'machine'; readonly machine: MachineId }
  | { readonly is: 'holding'; readonly holding: Holding }
  | { readonly is: 'end-for-end' }
  | { readonly is: 'after'; readonly operation: OperationId };

export interface RemedyRow {
  /** What would be done: `Make rim radius 81.2 mm`. */
  readonly words: string;
  readonly act: RemedyAct;
}

/** What is not known, and where it is given. */
export interface UnknownRow {
  readonly sentence: string;
  readonly go:
    | { readonly to: 'drawing'; readonly part: PartId; readonly subject: string }
    | { readonly to: 'machine'; readonly machine: MachineId; readonly key: string }
    | { readonly to: 'field'; readonly field: string }
    | undefined;
}

export interface VerdictRow {
  /** Stable while the verdict is about the same. */
  readonly key: string;
  readonly title: string;
  readonly state: VerdictState;
  readonly operation: { readonly id: OperationId; readonly name: string } | undefined;
  /** What is left over or wanting, in words; undefined when unknown. */
  readonly margin: string | undefined;
  /** What limits make of it: `3.1 to 4.3 mm`. */
  readonly band: string | undefined;
  readonly has: string | undefined;
  readonly needs: string | undefined;
  /** `41 mm from foot`. */
  readonly at: string | undefined;
  readonly carriedBy: { readonly words: string; readonly part: PartId; readonly body: BodyId | undefined } | undefined;
  readonly shares: readonly ShareRow[];
  readonly unknown: readonly UnknownRow[];
  readonly remedies: readonly RemedyRow[];
  /** What limits can take from the margin at worst, mm: nothing or less. */
  readonly bandMinus: number;
  /** For the picture. */
  readonly shown: ShownVerdict;
}

/** Names that a place or an amount of a form may hold, with what they stand for. */
export interface NameOption {
  readonly id: string;
  readonly name: string;
  readonly aside: string;
  /** Axis of a station. */
  readonly axis: string | undefined;
}

/** One set-up with everything that is said of it. */
export interface SetupModel {
  readonly record: Setup;
  readonly part: string;
  readonly unit: LengthUnit;
  /** Stations of its part, and its dimensions that are lengths. */
  readonly stations: readonly NameOption[];
  readonly sizes: readonly NameOption[];
  readonly operations: readonly NameOption[];
  readonly machines: readonly { readonly id: MachineId; readonly name: string; readonly type: Machine['type'] }[];
  readonly parts: readonly NameOption[];
  /** What cannot be read, by field. */
  readonly problems: Readonly<Record<string, string>>;
  readonly verdicts: readonly VerdictRow[];
  /** What keeps all of it from being judged. */
  readonly unknown: readonly UnknownRow[];
  /** Balance in sentences: what is off its axis, how fast it may turn, what would set it right. */
  readonly balance: readonly { readonly name: string; readonly value: string }[];
  /** What must be known before the balance can be told. */
  readonly balanceUnknown: readonly UnknownRow[];
  readonly scene: SetupScene | undefined;
  /** Where zero of the scene lies along the part's axis, and which way it grows. */
  readonly from: { readonly at: number; readonly sign: 1 | -1 };
  /** Goes up whenever the work may look otherwise. */
  readonly picture: number;
}

/** A machine of the build. */
export interface MachineRow {
  readonly record: Machine;
  /** What says most of its size: `swing 180 mm, 300 mm between centres`. */
  readonly words: string;
  /** Set-ups on it. */
  readonly used: readonly { readonly setup: SetupId; readonly part: PartId; readonly name: string }[];
}

export interface MachinesModel {
  readonly unit: LengthUnit;
  readonly rows: readonly MachineRow[];
}
