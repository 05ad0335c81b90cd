import type { Generated, Kysely, Transaction } from 'kysely';
import type { Acceptance } from '../../shared/build/acceptance.ts';
import type { OwnAlloy } from '../../shared/build/alloy.ts';
import type { Body } from '../../shared/build/body.ts';
import type { Casting } from '../../shared/build/casting.ts';
import type { Dimension, SizeForm } from '../../shared/build/dimension.ts';
import type { Machine } from '../../shared/build/machine.ts';
import type { OwnMaterial } from '../../shared/build/material.ts';
import type { Operation } from '../../shared/build/operation.ts';
import type { Part } from '../../shared/build/part.ts';
import type { Pattern } from '../../shared/build/pattern.ts';
import type { Pour } from '../../shared/build/pour.ts';
import type { Settings } from '../../shared/build/settings.ts';
import type { Setup } from '../../shared/build/setup.ts';
import type { Solid } from '../../shared/build/solid.ts';
import type { Station } from '../../shared/build/station.ts';

/** The tables of a build file as the newest migration leaves them. */
export interface StoreSchema {
  readonly meta: MetaRow;
  readonly settings: SettingsRow;
  readonly material: MaterialRow;
  readonly alloy: AlloyRow;
  readonly machine: MachineRow;
  readonly part: PartRow;
  readonly station: StationRow;
  readonly dimension: DimensionRow;
  readonly solid: SolidRow;
  readonly body: BodyRow;
  readonly body_use: BodyUseRow;
  readonly setup: SetupRow;
  readonly setup_use: SetupUseRow;
  readonly operation: OperationRow;
  readonly operation_use: OperationUseRow;
  readonly casting: CastingRow;
  readonly casting_use: CastingUseRow;
  readonly pattern: PatternRow;
  readonly pour: PourRow;
  readonly pour_use: PourUseRow;
  readonly acceptance: AcceptanceRow;
  readonly journal: JournalRow;
  readonly drawing_issue: DrawingIssueRow;
}

export type StoreDb = Kysely<StoreSchema>;
/** The database, or a transaction on it. */
export type StoreExecutor = StoreDb | Transaction<StoreSchema>;

/** One row only, with `id` 1. */
export interface MetaRow {
  id: 1;
  /** Grows by one with every commit, undo and redo. */
  revision: number;
  created_at: string;
}

export interface SettingsRow {
  id: Settings['id'];
  name: string;
  note: string;
  length_unit: Settings['lengthUnit'];
  machined_tolerance: Settings['machinedTolerance'];
  casting_grade: number;
}

export interface PartRow {
  id: Part['id'];
  name: string;
  number: string;
  sheet: string;
  make: Part['make'];
  material: string;
  quantity: number;
  note: string;
  /** A decimal number as text, so that it comes back bit for bit. */
  place: string;
}

export interface StationRow {
  id: Station['id'];
  part: Part['id'];
  axis: Station['axis'];
  name: string;
  form: Station['form'];
  datum: 0 | 1;
  note: string;
  place: string;
}

export interface DimensionRow {
  id: Dimension['id'];
  part: Part['id'];
  name: string;
  from_station: Station['id'] | null;
  to_station: Station['id'] | null;
  /** Set for a size, NULL for a dimension between stations. */
  size_form: SizeForm | null;
  value: string;
  limits: string;
  source: Dimension['source'];
  finish: Dimension['finish'];
  sheet: string;
  note: string;
  place: string;
}

export interface MaterialRow {
  id: OwnMaterial['id'];
  name: string;
  /** What is known of it, as JSON. */
  known: string;
  source: string;
}

export interface AlloyRow {
  id: OwnAlloy['id'];
  name: string;
  family: OwnAlloy['family'];
  /** Its own figures by key, as JSON. */
  figures: string;
  source: string;
}

export interface MachineRow {
  id: Machine['id'];
  name: string;
  type: Machine['type'];
  /** Texts by key, as JSON. */
  figures: string;
  /** Points of the bed's outline, as JSON. */
  bed: string;
  generic: 0 | 1;
  note: string;
  place: string;
}

export interface SolidRow {
  id: Solid['id'];
  name: string;
  file_name: string;
  unit: Solid['unit'];
  vertices: string;
  triangles: string;
  note: string;
}

export interface BodyRow {
  id: Body['id'];
  part: Part['id'];
  name: string;
  adds: 0 | 1;
  finish: Body['finish'];
  /** A `Shape` as JSON. */
  shape: string;
  /** A list of `Repeat` as JSON. */
  repeats: string;
  note: string;
  place: string;
}

/** What a body hangs on, one row each; kept by triggers, so that it can point at nothing that is not there. */
export interface BodyUseRow {
  body: Body['id'];
  station: Station['id'] | null;
  dimension: Dimension['id'] | null;
  solid: Solid['id'] | null;
}

export interface SetupRow {
  id: Setup['id'];
  part: Part['id'];
  name: string;
  machine: Machine['id'] | null;
  /** JSON, as are `fellows`, `fixtures`, `line` and `holding`. */
  state: string;
  allowance: string;
  fellows: string;
  fixtures: string;
  line: string;
  head_end: Setup['headEnd'];
  holding: string;
  minutes: string;
  note: string;
  place: string;
}

/** What a set-up names within its JSON, one row each; kept by triggers. */
export interface SetupUseRow {
  setup: Setup['id'];
  part: Part['id'] | null;
  station: Station['id'] | null;
  dimension: Dimension['id'] | null;
  operation: Operation['id'] | null;
}

export interface OperationRow {
  id: Operation['id'];
  part: Part['id'];
  name: string;
  process: Operation['process'];
  setup: Setup['id'] | null;
  /** JSON lists of ids: what it makes, what it needs true before it (`from`), operations that come before it. */
  makes: string;
  needs: string;
  after: string;
  leaves: string;
  /** JSON, as are `tool` and `chosen`. */
  cut: string | null;
  tool: string;
  chosen: string;
  note: string;
  place: string;
}

/** What an operation names within its JSON, one row each; kept by triggers. */
export interface OperationUseRow {
  operation: Operation['id'];
  station: Station['id'] | null;
  dimension: Dimension['id'] | null;
  body: Body['id'] | null;
  earlier: Operation['id'] | null;
}

export interface CastingRow {
  id: Casting['id'];
  part: Part['id'];
  moulding: Casting['moulding'];
  /** JSON, as are `stock`, `size_stock`, `parting`, `prints`, `lugs` and `boards`. */
  contraction: string;
  stock_grade: Casting['stockGrade'];
  stock: string;
  size_stock: string;
  cope_extra: string;
  up: NonNullable<Casting['up']> | null;
  parting: string | null;
  draft: string;
  close_under: string;
  coating: string;
  glue_joint: string;
  prints: string;
  lugs: string;
  boards: string;
  foam_density: string;
  section_axis: NonNullable<Casting['sectionAxis']> | null;
  bow: Machine['id'] | null;
  flask: Machine['id'] | null;
  note: string;
}

/** What a casting names within its JSON, one row each; kept by triggers. */
export interface CastingUseRow {
  casting: Casting['id'];
  station: Station['id'] | null;
  dimension: Dimension['id'] | null;
  body: Body['id'] | null;
}

export interface PatternRow {
  id: Pattern['id'];
  part: Part['id'];
  name: string;
  /** JSON, as are `on_casting` (the same lines measured on the casting), `trials`, `rule` and `weighings`. */
  measured: string;
  on_casting: string;
  trials: string;
  bare: string;
  scale_step: string;
  rule: string;
  plaster: 0 | 1;
  weighings: string;
  taken_on: string;
  note: string;
  place: string;
}

export interface PourRow {
  id: Pour['id'];
  name: string;
  /** JSON, as are `gating`, `risers`, `inserts` and `journal`. */
  castings: string;
  alloy: string;
  furnace: Machine['id'] | null;
  crucible: Machine['id'] | null;
  flask: Machine['id'] | null;
  temperature: string;
  ambient: string;
  gating: string;
  risers: string;
  inserts: string;
  overflow: string;
  loss: string;
  heel: string;
  cope_weight: string;
  cover_above: string;
  cover_around: string;
  sand_density: string;
  /** The attempt that it comes after. */
  earlier: Pour['id'] | null;
  journal: string | null;
  note: string;
  place: string;
}

/** What a pour names within its JSON, one row each; kept by triggers. */
export interface PourUseRow {
  pour: Pour['id'];
  part: Part['id'] | null;
  pattern: Pattern['id'] | null;
  body: Body['id'] | null;
}

export interface AcceptanceRow {
  id: Acceptance['id'];
  rule: string;
  finding: string;
  figures: string;
  reason: string;
  accepted_at: string;
}

/**
 * `first`: the records that the file began with, as one diff on the empty build; never undone.
 * `done`: in force. `undone`: can be redone. `abandoned`: undone, then edited past; kept, never in force again.
 * First and done rows in order of `seq` always replay to the document.
 */
export type JournalState = 'first' | 'done' | 'undone' | 'abandoned';

export interface JournalRow {
  seq: Generated<number>;
  state: JournalState;
  label: string;
  /** A `BuildDiff` as JSON. */
  diff: string;
  at: string;
}

export interface DrawingIssueRow {
  letter: string;
  title: string;
  note: string;
  issued_at: string;
  revision: number;
  /** All records of that moment as a JSON array. */
  content: string;
}
