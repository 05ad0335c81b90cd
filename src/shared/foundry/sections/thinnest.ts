import type { Thickness } from './thickness.ts';

/** A wall counts when it is as long and as wide as so many of its thicknesses: less is an edge or a neck that metal runs past. */
const LEAST_EXTENT = 3;
/** Thicknesses that differ by no more than this share are one wall. */
const ALIKE = 1.08;

/** The thinnest wall that is more than an edge. */
export interface ThinnestWall {
  readonly thicknessMm: number;
  /** One of the places at which it was measured, about the middle of them by thickness. */
  readonly at: Thickness;
  readonly modulusMm: number;
}

/**
 * @param modulusAt of the metal at a place; what is usual of the wall is told
 * @returns undefined where no two faces look away from one another
 */
export function thinnestWall(
  thicknesses: readonly Thickness[],
  modulusAt: (x: number, y: number, z: number) => number,
): ThinnestWall | undefined {
  const walls = thicknesses
    .flatMap((one) => (one.mm === undefined ? [] : [{ mm: one.mm, one }]))
    .sort((a, b) => a.mm - b.mm);
  let end = 0;
  let area = 0;
  for (let i = 0; i < walls.length; i++) {
    const { mm, one } = walls[i]!;
    for (; end < walls.length && walls[end]!.mm <= ALIKE * mm; end++) area += walls[end]!.one.areaMm2;
    // both of its faces are among the places
    if (area >= 2 * (LEAST_EXTENT * mm) ** 2) {
      const middle = walls[(i + end) >> 1]!;
      const moduli = walls.slice(i, end).map(({ one: { at } }) => modulusAt(...at));
      const usual = moduli.sort((a, b) => a - b)[moduli.length >> 1]!;
      return { thicknessMm: middle.mm, at: middle.one, modulusMm: Math.min(middle.mm / 2, usual) };
    }
    area -= one.areaMm2;
  }
  return undefined;
}
