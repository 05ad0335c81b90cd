import type { Axis } from '../../build/station.ts';
import type { ExactShape, Move, Vec3 } from '../../solid/placed.ts';
import type { Piece } from '../setup-check.ts';

/**
 * The line that something turns about, or moves along: parallel to `axis`, through `u` and `v` on the axes across it in the
 * order of the alphabet; mm from the datums of the first part.
 */
export interface SweepLine {
  readonly axis: Axis;
  readonly u: number;
  readonly v: number;
}

/**
 * One body, or fixture, of what is swept. Shape and moves are in the first part's frame. Pieces stand in the order in which
 * they act: one that takes away acts upon the bodies of its part that stand before it, and upon no other part or fixture.
 */
export interface SweepPiece {
  /** Which copy the first of `moves` is; the others count on from it. */
  readonly piece: Piece;
  readonly shape: ExactShape;
  readonly moves: readonly Move[];
  readonly adds: boolean;
  /** Stock all round it, mm: every surface stands out by so much (`grown-shape.ts`). 0 = as drawn. */
  readonly grow: number;
}

/** From and to along the line, mm. */
export type Stretch = readonly [from: number, to: number];

/** The farthest from the line that something reaches within a stretch. */
export interface Farthest {
  /** Never less than the truth, mm. */
  readonly most: number;
  /** Distance of `point`, mm: equal to `most` where the shape allows an exact answer. */
  readonly least: number;
  /** Where along the line `point` lies. */
  readonly at: number;
  /** A point of the solid, X, Y, Z of the first part. */
  readonly point: Vec3;
  /** Which of the piece's moves carries it. */
  readonly copy: number;
}

/**
 * What is thinner than this along the line is taken for nothing, and places nearer than this for one place, mm. So a flange
 * that ends where a stretch begins does not count within it.
 */
export const SLIVER_MM = 1e-7;
