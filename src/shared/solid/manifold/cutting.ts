import type { CrossSection, Manifold, ManifoldToplevel, Mat4 } from 'manifold-3d';
import { assert } from '../../base/assert.ts';
import { type Axis, axes } from '../../build/station.ts';
import type { FlatRegion } from '../flat-region.ts';
import type { Vec3 } from '../placed.ts';
import type { Kernel, KernelSolid } from './kernel.ts';

type Cutting = Pick<
  Kernel,
  'stretch' | 'bend' | 'between' | 'piecesOf' | 'sliceOf' | 'shadowOf' | 'grow' | 'common' | 'without'
>;

/** Turns that bring an axis upright, by columns: exchanges of places only, so that nothing is rounded. */
const upright: Readonly<Record<Axis, Mat4>> = {
  // (x, y, z) ↦ (y, z, x)
  X: [0, 0, 1, 0, 1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 0, 1],
  // (x, y, z) ↦ (z, x, y)
  Y: [0, 1, 0, 0, 0, 0, 1, 0, 1, 0, 0, 0, 0, 0, 0, 1],
  Z: [1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1],
};

const unit: Readonly<Record<Axis, Vec3>> = { X: [1, 0, 0], Y: [0, 1, 0], Z: [0, 0, 1] };

/** How many times the distance a sharp corner may stick out before it is cut square: corners of 20° and more stay sharp. */
const SHARPEST = 6;
/** Sides of a rounded corner's whole turn. */
const ROUND_SIDES = 64;

/** Cutting solids up and working on flat outlines, over the kernel. Whatever is made on the way is given back here. */
export function cutting(
  { CrossSection: Section }: ManifoldToplevel,
  raw: (solid: KernelSolid) => Manifold,
  keep: (made: Manifold) => KernelSolid | undefined,
): Cutting {
  const plain = (section: CrossSection): FlatRegion => {
    try {
      return section.toPolygons().map((loop) => loop.map(([x, y]) => [x, y] as const));
    } finally {
      section.delete();
    }
  };

  function withRegions(
    regions: readonly FlatRegion[],
    work: (...sections: CrossSection[]) => CrossSection,
  ): FlatRegion {
    const sections = regions.map(
      (region) => new Section(region.map((loop) => loop.map(([x, y]): [number, number] => [x, y]))),
    );
    try {
      return plain(work(...sections));
    } finally {
      for (const section of sections) section.delete();
    }
  }

  function turned(solid: KernelSolid, axis: Axis, work: (turned: Manifold) => CrossSection): FlatRegion {
    if (axis === 'Z') return plain(work(raw(solid)));
    const stood = raw(solid).transform(upright[axis]);
    try {
      return plain(work(stood));
    } finally {
      stood.delete();
    }
  }

  /** The kernel parts surfaces, so that hollows come as pieces of their own, inside out, and their walls filled. */
  function piecesOf(solid: KernelSolid): readonly KernelSolid[] {
    const found = raw(solid).decompose();
    const outer = found.filter((piece) => piece.volume() > 0);
    const hollows = found.filter((piece) => piece.volume() <= 0);
    const pieces = outer.map((filled) => {
      if (!hollows.some((hollow) => isAround(filled, hollow))) return filled;
      // Of the whole, what lies in the filled piece: without the pieces that lie loose in its hollows.
      return outer
        .filter((other) => other !== filled && isAround(filled, other))
        .reduce((rest, loose) => replaced(rest, rest.subtract(loose)), raw(solid).intersect(filled));
    });
    for (const piece of found) if (!pieces.includes(piece)) piece.delete();
    return pieces.flatMap((piece) => keep(piece) ?? []);
  }

  return {
    stretch(solid, factors) {
      const made = keep(raw(solid).scale([...factors]));
      assert(made, 'a solid that is stretched is not empty');
      return made;
    },
    bend: (solid, move) =>
      keep(
        raw(solid).warp((vertex) => {
          const [x, y, z] = move([vertex[0], vertex[1], vertex[2]]);
          vertex[0] = x;
          vertex[1] = y;
          vertex[2] = z;
        }),
      ),
    between(solid, axis, low, high) {
      const normal = unit[axis];
      const { min, max } = raw(solid).boundingBox();
      const k = axes.indexOf(axis);
      // A plane that misses the solid is a fault to the kernel, not an answer.
      if (!(low < max[k]! && high > min[k]! && low < high)) return undefined;
      let part = raw(solid).translate([0, 0, 0]);
      if (low > min[k]!) part = replaced(part, part.trimByPlane(normal, low));
      if (high < max[k]!) part = replaced(part, part.trimByPlane([-normal[0], -normal[1], -normal[2]], -high));
      return keep(part);
    },
    piecesOf,
    sliceOf: (solid, axis, at) => turned(solid, axis, (stood) => stood.slice(at)),
    shadowOf: (solid, axis) => turned(solid, axis, (stood) => stood.project()),
    grow: (region, mm, corners) =>
      withRegions([region], (section) =>
        corners === 'sharp' ? section.offset(mm, 'Miter', SHARPEST) : section.offset(mm, 'Round', 2, ROUND_SIDES),
      ),
    common: (a, b) => withRegions([a, b], (first, second) => first.intersect(second)),
    without: (a, b) => withRegions([a, b], (first, second) => first.subtract(second)),
  };
}

function replaced(old: Manifold, now: Manifold): Manifold {
  old.delete();
  return now;
}

function isAround(outer: Manifold, inner: Manifold): boolean {
  const [a, b] = [outer.boundingBox(), inner.boundingBox()];
  return axes.every((_, k) => a.min[k]! <= b.min[k]! && a.max[k]! >= b.max[k]!);
}
