import { allOf, type Pieces } from '../base/pieces.ts';
import { type Axis, axes } from '../build/station.ts';
import type { Kernel, KernelMesh, MeshFault } from '../solid/manifold/kernel.ts';
import type { Vec3 } from '../solid/placed.ts';
import type { Board } from './boards.ts';
import { chooseCuts } from './choose-cuts.ts';
import { cuttingSections, type Section, stepsOf } from './cut-sections.ts';
import { type GlueJoint, glueJoints } from './joints.ts';
import type { PatternPiece } from './pattern-piece.ts';
import { type PiecesSolid, solidOfPieces } from './solid-of-pieces.ts';

/** All that the solid of a pattern and its sections follow from. While it says the same, they are not made anew. */
export interface PatternOrder {
  readonly casting: readonly PatternPiece[];
  /** The same list as `casting` where no core is laid. */
  readonly pattern: readonly PatternPiece[];
  /** From the casting to the pattern along X, Y and Z; undefined while a contraction is not known. */
  readonly factors: Vec3 | undefined;
  /** How it is cut into boards; undefined where it is not, or not said. */
  readonly cut: CutOrder | undefined;
}

export interface CutOrder {
  readonly axis: Axis;
  readonly boards: readonly Board[];
  readonly glueMm: number;
  readonly kerfMm: number;
  readonly leastMm: number;
}

/** A solid in figures. */
export interface SolidFigures {
  readonly volumeMm3: number;
  readonly areaMm2: number;
  readonly min: Vec3;
  readonly max: Vec3;
}

/** What the kernel made of an order. */
export interface MadePattern {
  /** The metal of the casting when it is cold: stock, draft and lugs on, before any machining. */
  readonly casting: SolidFigures | undefined;
  /** Undefined while a contraction is not known. */
  readonly pattern: SolidFigures | undefined;
  readonly sections: readonly Section[];
  readonly joints: readonly GlueJoint[];
  /** In the glue joints between sections, mm³. */
  readonly glueMm3: number;
  /** Of the sections and their joints to the pattern's: 1 but for rounding. */
  readonly addsUpTo: number | undefined;
  /** Bodies that the kernel did not take, by the key of their piece: the solid is without them. */
  readonly refused: readonly { readonly key: string; readonly why: MeshFault }[];
}

const nothing: MadePattern = {
  casting: undefined,
  pattern: undefined,
  sections: [],
  joints: [],
  glueMm3: 0,
  addsUpTo: undefined,
  refused: [],
};

/**
 * Makes the solids of a casting and its pattern, and cuts the pattern up. What the kernel gave up on is thrown (`KernelFault`).
 * Whoever leaves it before the end calls `return` on it: it gives the kernel's memory back.
 */
export function* makingPattern(kernel: Kernel, { casting, pattern, factors, cut }: PatternOrder): Pieces<MadePattern> {
  const poured = solidOfPieces(kernel, casting);
  const same = pattern === casting;
  const shape = same ? poured : solidOfPieces(kernel, pattern);
  try {
    yield;
    if (!poured || !shape) return nothing;
    const refused = [...poured.refused, ...(same ? [] : shape.refused)];
    const base = { ...nothing, casting: figuresOf(poured), refused };
    return factors ? { ...base, ...(yield* contracted(kernel, shape, factors, cut)) } : base;
  } finally {
    if (poured) kernel.release(poured.solid);
    if (shape && !same) kernel.release(shape.solid);
  }
}

/** The same in one go. */
export const makePattern = (kernel: Kernel, order: PatternOrder): MadePattern => allOf(makingPattern(kernel, order));

const figuresOf = ({ volumeMm3, areaMm2, min, max }: PiecesSolid): SolidFigures => ({ volumeMm3, areaMm2, min, max });

function* contracted(
  kernel: Kernel,
  shape: PiecesSolid,
  factors: Vec3,
  cut: CutOrder | undefined,
): Pieces<Pick<MadePattern, 'pattern' | 'sections' | 'joints' | 'glueMm3' | 'addsUpTo'>> {
  const solid = kernel.stretch(shape.solid, factors);
  try {
    const { min, max } = kernel.boxOf(solid);
    const pattern: SolidFigures = {
      volumeMm3: shape.volumeMm3 * factors[0] * factors[1] * factors[2],
      // What round surfaces have more than their facets stays the same share.
      areaMm2: (kernel.areaOf(solid) * shape.areaMm2) / kernel.areaOf(shape.solid),
      min,
      max,
    };
    const none = { pattern, sections: [], joints: [], glueMm3: 0, addsUpTo: undefined };
    if (!cut) return none;
    const k = axes.indexOf(cut.axis);
    const layers = chooseCuts({
      low: min[k]!,
      high: max[k]!,
      steps: stepsOf(kernel, solid, cut.axis),
      thicknesses: cut.boards.map(({ thicknessMm }) => thicknessMm),
      glueMm: cut.glueMm,
      leastMm: cut.leastMm,
    });
    if (layers.length === 0) return none;
    const { sections, glueMm3 } = yield* cuttingSections(kernel, solid, cut.axis, layers, cut.kerfMm);
    const sum = sections.reduce((total, section) => total + section.volumeMm3, glueMm3);
    const addsUpTo = sum / kernel.volumeOf(solid);
    return { pattern, sections, joints: glueJoints(kernel, sections), glueMm3, addsUpTo };
  } finally {
    kernel.release(solid);
  }
}

/** The surface of a pattern at its own size, for showing; undefined where nothing is left of it. */
export function patternMesh(kernel: Kernel, { pattern, factors }: PatternOrder): KernelMesh | undefined {
  const shape = solidOfPieces(kernel, pattern);
  if (!shape) return undefined;
  const solid = kernel.stretch(shape.solid, factors ?? [1, 1, 1]);
  const mesh = kernel.meshOf(solid);
  kernel.release(solid);
  kernel.release(shape.solid);
  return mesh;
}
