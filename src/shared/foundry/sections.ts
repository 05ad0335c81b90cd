import type { BodyId } from '../base/ids.ts';
import type { Direction } from '../build/casting.ts';
import type { Vec3 } from '../solid/placed.ts';
import type { Shadow } from './sections/shadows.ts';

/** A body of the part, as its metal will freeze. */
export interface BodySection {
  readonly body: BodyId;
  /** Modulus under a tenth, half and nine tenths of its surface, mm. */
  readonly thinMm: number;
  readonly usualMm: number;
  readonly thickMm: number;
  /** Its surface on the casting. */
  readonly areaMm2: number;
  /** The middle of that surface. */
  readonly centre: Vec3;
}

/** Metal that freezes towards one thick place, the last of it to freeze. */
export interface Zone {
  /** Of the thick place: V/A of the metal about it, mm. */
  readonly modulusMm: number;
  /** Radius of the ball that the metal holds there. */
  readonly radiusMm: number;
  readonly at: Vec3;
  /** All metal that freezes towards it: what a riser on it feeds. */
  readonly volumeMm3: number;
  /** Surface by which it cools. */
  readonly areaMm2: number;
  /** Bodies whose surface lies on it, the one with most of it first. */
  readonly bodies: readonly BodyId[];
  /**
   * Modulus of the thickest way to a thicker zone, less than the zone's own: the zone is cut off before it freezes. Undefined of
   * the one that freezes last of all.
   */
  readonly neckMm: number | undefined;
}

/** The way between two zones where it is thinnest. */
export interface Neck {
  /** Places in the list of zones. */
  readonly zones: readonly [number, number];
  readonly modulusMm: number;
  readonly at: Vec3;
}

/** A wall, measured square to its faces. */
export interface ThinSection {
  readonly thicknessMm: number;
  /** Of the metal there: half the thickness in a wide wall, less in a rib. */
  readonly modulusMm: number;
  readonly at: Vec3;
  readonly body: BodyId;
}

/**
 * The sections of a casting. Volumes and surfaces are exact to the mesh; moduli of plates, bars, balls and blocks within 6 %
 * where a wall is five cells thick or more, within 12 % where it is three, less surely below that.
 */
export interface Sections {
  /** The side of the cells that it was worked out in. */
  readonly cellMm: number;
  /** Those that freeze first stand first. */
  readonly bodies: readonly BodySection[];
  /** Those that freeze last stand first. */
  readonly zones: readonly Zone[];
  readonly necks: readonly Neck[];
  /** The thinnest wall that is at least three times as long and wide as thick; undefined where there is none. */
  readonly thinnest: ThinSection | undefined;
  /** What it covers with each direction up. */
  readonly shadows: Readonly<Record<Direction, Shadow>>;
}

/** The sections with what it takes to colour a surface by them: some megabytes, kept as long as it is looked at. */
export interface SectionField {
  readonly sections: Sections;
  /** Modulus of the metal at (or nearest to) a place, mm. */
  modulusAt(x: number, y: number, z: number): number;
}
