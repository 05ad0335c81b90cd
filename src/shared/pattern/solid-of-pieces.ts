import { err, ok, type Result } from '../base/result.ts';
import { type Axis, axes } from '../build/station.ts';
import { boundsOfCopy } from '../solid/bounds.ts';
import type { Kernel, KernelSolid, MeshFault } from '../solid/manifold/kernel.ts';
import { measure } from '../solid/measure.ts';
import { type Acting, runsOf } from '../solid/order.ts';
import type { Move, Vec3 } from '../solid/placed.ts';
import { type Leaf, makeLeaf } from '../solid/solid-leaf.ts';
import { createStepTree, type Step } from '../solid/tree.ts';
import { growthOf, type PatternPiece, type Taper } from './pattern-piece.ts';

/** A solid made of pieces, with its figures. Whoever asks for it releases `solid`. */
export interface PiecesSolid {
  readonly solid: KernelSolid;
  /** With what flat facets leave out of round surfaces; of tapered pieces with flat facets alone. */
  readonly volumeMm3: number;
  readonly areaMm2: number;
  readonly min: Vec3;
  readonly max: Vec3;
  /** Pieces that the kernel did not take. */
  readonly refused: readonly { readonly key: string; readonly why: MeshFault }[];
}

/** @returns undefined when the pieces leave nothing. */
export function solidOfPieces(kernel: Kernel, pieces: readonly PatternPiece[]): PiecesSolid | undefined {
  const tree = createStepTree(kernel);
  const owned: KernelSolid[] = [];
  const sources = new Map<number, Leaf>();
  const refused: { key: string; why: MeshFault }[] = [];
  try {
    const placed: (Acting & { readonly step: Step })[] = [];
    for (const piece of pieces) {
      const made = leafOf(kernel, piece);
      if (!made.ok) {
        refused.push({ key: piece.key, why: made.error });
        continue;
      }
      const { solid, leaf } = made.value;
      owned.push(solid);
      if (leaf) for (const source of leaf.sources) sources.set(source, leaf);
      placed.push({ step: tree.leaf(solid, piece.adds), adds: piece.adds, ...kernel.boxOf(solid) });
    }
    const made = tree.solidOf(runsOf(placed).map((run) => run.map(({ step }) => step)));
    const solid = made && kernel.unite([made]);
    if (!solid) return undefined;
    const { volumeMm3, areaMm2 } = pieces.some(({ taper }) => taper)
      ? { volumeMm3: kernel.volumeOf(solid), areaMm2: kernel.areaOf(solid) }
      : measure(kernel, solid, kernel.meshOf(solid), (source) => sources.get(source)!);
    return { solid, volumeMm3, areaMm2, ...kernel.boxOf(solid), refused };
  } finally {
    tree.drop();
    for (const solid of owned) kernel.release(solid);
  }
}

type Made = Result<{ readonly solid: KernelSolid; readonly leaf: Leaf | undefined }, MeshFault>;

function leafOf(kernel: Kernel, { shape, moves, taper }: PatternPiece): Made {
  if (!taper) {
    const leaf = makeLeaf(kernel, shape, moves, 'fine');
    return leaf.ok ? ok({ solid: leaf.value.solid, leaf: leaf.value }) : leaf;
  }
  const copies: KernelSolid[] = [];
  try {
    for (const move of moves) {
      const leaf = makeLeaf(kernel, shape, [move], 'fine');
      if (!leaf.ok) return leaf;
      copies.push(leaf.value.solid, ...widened(kernel, leaf.value.solid, shape, move, taper));
    }
    const solid = kernel.unite(copies);
    return solid ? ok({ solid, leaf: undefined }) : err('no triangles');
  } finally {
    for (const copy of copies) kernel.release(copy);
  }
}

/** The body widened about its own middle, so that the outermost of its sides lean by the draft; in halves about the parting. */
function widened(
  kernel: Kernel,
  solid: KernelSolid,
  shape: PatternPiece['shape'],
  move: Move,
  { draw, partingMm, slope }: Taper,
): readonly KernelSolid[] {
  const { min, max } = boundsOfCopy(shape, move);
  const k = axes.indexOf(draw);
  const growth = growthOf(min[k]!, max[k]!, partingMm, slope);
  const halves =
    growth.breaks === undefined
      ? [kernel.unite([solid])]
      : [kernel.between(solid, draw, min[k]! - 1, partingMm), kernel.between(solid, draw, partingMm, max[k]! + 1)];
  return halves.flatMap((half) => {
    if (!half) return [];
    const bent = kernel.bend(half, (point) => {
      const by = growth.at(point[k]!);
      return point.map((place, i) => {
        const reach = (max[i]! - min[i]!) / 2;
        const middle = (max[i]! + min[i]!) / 2;
        return i === k ? place : middle + (place - middle) * (1 + by / reach);
      }) as unknown as Vec3;
    });
    kernel.release(half);
    return bent ? [bent] : [];
  });
}

/** Factors from the casting to its pattern along X, Y and Z. */
export const factorsOf = (percents: readonly number[]): Vec3 =>
  axes.map((_: Axis, i) => 1 + percents[i]! / 100) as unknown as Vec3;
