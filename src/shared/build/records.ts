import type { Acceptance } from './acceptance.ts';
import type { OwnAlloy } from './alloy.ts';
import type { Body } from './body.ts';
import type { Casting } from './casting.ts';
import type { Dimension } from './dimension.ts';
import type { Machine } from './machine.ts';
import type { OwnMaterial } from './material.ts';
import type { Operation } from './operation.ts';
import type { Part } from './part.ts';
import type { Pattern } from './pattern.ts';
import type { Pour } from './pour.ts';
import type { Settings } from './settings.ts';
import type { Setup } from './setup.ts';
import type { Solid } from './solid.ts';
import type { Station } from './station.ts';

/** Everything that a build file holds. A new kind is a new file beside these, an entry in `kinds.ts` and a migration. */
export type BuildRecord =
  | Settings
  | OwnMaterial
  | OwnAlloy
  | Machine
  | Part
  | Station
  | Dimension
  | Solid
  | Body
  | Setup
  | Operation
  | Casting
  | Pattern
  | Pour
  | Acceptance;

export type RecordKind = BuildRecord['kind'];
export type RecordId = BuildRecord['id'];
export type RecordOf<K extends RecordKind> = Extract<BuildRecord, { readonly kind: K }>;

/** The whole document: immutable; every change goes through a diff (`diff.ts`). */
export type Build = ReadonlyMap<RecordId, BuildRecord>;
