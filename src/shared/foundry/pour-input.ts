import type { PartId, PatternId } from '../base/ids.ts';
import type { Casting } from '../build/casting.ts';
import type { Machine } from '../build/machine.ts';
import type { Part } from '../build/part.ts';
import type { Pattern } from '../build/pattern.ts';
import type { Pour } from '../build/pour.ts';
import type { Numbers } from '../plan/numbers.ts';
import type { LengthUnit } from '../quantity/kind.ts';
import type { PlacedBody } from '../solid/placed.ts';
import type { Alloy } from '../tables/alloys.ts';
import type { Material } from '../tables/materials.ts';
import type { CastingSolid } from './casting-solid.ts';
import type { Sections } from './sections.ts';

/** A casting as the foundry sees it. */
export interface CastingInput {
  readonly part: Part;
  /** Undefined where nothing says how its pattern is made. */
  readonly casting: Casting | undefined;
  /** What the mould is filled with; undefined while it is not worked out. */
  readonly solid: Pick<CastingSolid, 'volumeMm3' | 'areaMm2' | 'box'> | undefined;
  readonly sections: Sections | undefined;
  /** In list order, as placed. */
  readonly bodies: readonly PlacedBody[];
}

/** A part that is cast in, or laid in as a chill. */
export interface InsertInput {
  readonly part: Part;
  /** Finished: it goes in as it is. Undefined while it is not worked out. */
  readonly solid: Pick<CastingSolid, 'volumeMm3' | 'areaMm2' | 'box'> | undefined;
}

/** All that a pour is worked out from. */
export interface PourInput {
  readonly pour: Pour;
  readonly lengthUnit: LengthUnit;
  /** Of the build, in list order. */
  readonly machines: readonly Machine[];
  /** The build's own alloys, figures they lack taken from the table. */
  readonly alloys: readonly Alloy[];
  /** All pours of the build: melts that were timed tell the furnace's rate. */
  readonly pours: readonly Pour[];
  readonly numbers: Numbers;
  castingOf(part: PartId): CastingInput | undefined;
  insertOf(part: PartId): InsertInput | undefined;
  patternOf(pattern: PatternId): Pattern | undefined;
  materialNamed(name: string): Material | undefined;
}
