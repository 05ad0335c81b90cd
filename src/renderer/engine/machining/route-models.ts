import type { OperationId, PartId, SetupId } from '../../../shared/base/ids.ts';
import type { Operation } from '../../../shared/build/operation.ts';
import type { LengthUnit } from '../../../shared/quantity/kind.ts';
import type { FindingLine } from '../views/findings.ts';
import type { NameOption, UnknownRow } from './models.ts';

/** A figure to work by, with where it comes from. */
export interface FigureWords {
  readonly name: string;
  readonly value: string;
  /** `chosen`, `from the table: …`, `as fast as the machine goes`. */
  readonly from: string;
}

/** One operation as the route shows it. */
export interface OperationRow {
  readonly record: Operation;
  readonly step: number;
  /** Undefined at the bench. */
  readonly setup: { readonly id: SetupId; readonly name: string; readonly machine: string | undefined } | undefined;
  /** It is the first that is done in its holding; minutes to set that up. */
  readonly begins: { readonly words: string; readonly minutes: string } | undefined;
  readonly makes: string;
  readonly tool: string;
  readonly toolMore: string;
  readonly speed: string | undefined;
  readonly rpm: string | undefined;
  readonly feed: string | undefined;
  readonly cuts: string | undefined;
  /** Of the motor, and what there is. */
  readonly power: string | undefined;
  readonly powerOf: string | undefined;
  readonly time: string | undefined;
  /** All figures with their sources. */
  readonly figures: readonly FigureWords[];
  /** Figures that would hold where nothing is chosen, by field of `chosen`. */
  readonly proposed: Readonly<Partial<Record<keyof Operation['chosen'], string>>>;
  /** What cannot be read, by field. */
  readonly problems: Readonly<Record<string, string>>;
  readonly unknown: readonly UnknownRow[];
  /** What the rules say of it. */
  readonly findings: readonly FindingLine[];
}

export interface RouteTotal {
  readonly name: string;
  readonly value: string;
  /** What it is reckoned from, where it is less than all. */
  readonly note: string | undefined;
}

/** One line of the hole schedule: holes of a part that are all alike, or of one size throughout the build. */
export interface HoleRow {
  readonly key: string;
  readonly size: string;
  readonly count: number;
  readonly depth: string;
  /** What it is opened with: `drill 6.8 mm`, `drill 11.7 mm, then ream`, `cored`. */
  readonly opened: string;
  /** The drill of the other system of sizes that comes next to it. */
  readonly instead: string;
  readonly more: string;
  /** Where the drill, or the fit, comes from. */
  readonly source: string;
  /** Bodies, or parts. */
  readonly where: string;
}

export interface HolesModel {
  readonly ofPart: readonly HoleRow[];
  readonly ofBuild: readonly HoleRow[];
  /** Holes of the part whose size is not known. */
  readonly unknown: readonly UnknownRow[];
}

/** The route of a part. */
export interface RouteModel {
  readonly part: PartId;
  readonly name: string;
  readonly unit: LengthUnit;
  readonly rows: readonly OperationRow[];
  readonly totals: readonly RouteTotal[];
  /** Machined bodies that no operation makes. */
  readonly unmade: readonly { readonly id: string; readonly name: string }[];
  readonly stations: readonly NameOption[];
  readonly sizes: readonly NameOption[];
  readonly bodies: readonly NameOption[];
  readonly setups: readonly { readonly id: SetupId; readonly name: string }[];
}

/** A place of a proposed order. */
export interface ProposedRow {
  readonly id: OperationId;
  readonly name: string;
  readonly setup: string;
  /** Where it stands now, from 1. */
  readonly now: number;
  /** Why it stands where it does: what has to come before it. */
  readonly reasons: readonly string[];
}

export type OrderAnswer =
  | {
      readonly is: 'order';
      readonly rows: readonly ProposedRow[];
      readonly isSame: boolean;
      readonly holdings: number;
      readonly holdingsNow: number;
      /** Whether no order at all needs fewer holdings. */
      readonly fewest: boolean;
      /** Good practice that it cannot have. */
      readonly dropped: readonly string[];
    }
  | { readonly is: 'ring'; readonly reasons: readonly string[] };
