import type { PartId } from '../../base/ids.ts';
import type { Machine } from '../../build/machine.ts';
import type { Operation } from '../../build/operation.ts';
import type { Part } from '../../build/part.ts';
import type { Setup } from '../../build/setup.ts';
import type { Numbers } from '../../plan/numbers.ts';
import type { LengthUnit } from '../../quantity/kind.ts';
import type { PlacedBody } from '../../solid/placed.ts';
import type { PartFigures } from '../../solid/solids.ts';
import type { Material } from '../../tables/materials.ts';

/** A part as a set-up sees it. */
export interface PartInput {
  readonly part: Part;
  /** In list order, as placed. */
  readonly bodies: readonly PlacedBody[];
  /** Its route, in list order. */
  readonly operations: readonly Operation[];
  /** Undefined while its solid is not worked out. */
  readonly figures: PartFigures | undefined;
  /** Undefined when its material is not known by name. */
  readonly material: Material | undefined;
}

/** All that a set-up is worked out from. */
export interface SetupInput {
  readonly setup: Setup;
  readonly numbers: Numbers;
  readonly lengthUnit: LengthUnit;
  /** Of the build, in list order. */
  readonly machines: readonly Machine[];
  partOf(part: PartId): PartInput | undefined;
  materialNamed(name: string): Material | undefined;
}

/** The same for a check that is kept over edits. */
export interface KeptInput extends SetupInput {
  /** Whatever of a part's drawing keeps its identity until it changes: stations, dimensions, axes, operations. Only compared. */
  behindOf(part: PartId): readonly unknown[];
}
