import { cosDeg, sinDeg } from '../moves.ts';

/** How closely flat facets follow a round surface: `fine` for what is measured, `coarse` for what must be there at once. */
export type Fineness = 'fine' | 'coarse';

/**
 * How far a flat facet may stand inside the round surface that it stands for, in mm. What is shown may be off by so much;
 * volumes, areas, centres and moments are put right by what each facet leaves out (`measure.ts`), and clearances never
 * come from meshes.
 */
const sagittaMm: Readonly<Record<Fineness, number>> = { fine: 0.05, coarse: 0.4 };

/** Powers of two, so that the corners of a coarse circle are corners of every finer one about the same axis. */
const counts: Readonly<Record<Fineness, readonly [number, ...number[]]>> = {
  fine: [64, 128, 256],
  coarse: [16, 32, 64],
};

/**
 * Number of facets of a whole turn: the least that keeps the sagitta r (1 − cos(π / n)) within bounds, and the greatest
 * allowed where none does. Fine: 64, 128 or 256 for 0.05 mm, up to a radius of about 664 mm; coarse: 16, 32 or 64 for 0.4 mm,
 * up to about 332 mm. All corners lie on the round surface itself, one in each of the four directions of the axes, so that the
 * box about a round body is exact.
 */
export function segmentsFor(radiusMm: number, fineness: Fineness = 'fine'): number {
  const allowed = counts[fineness];
  for (const count of allowed) if (radiusMm * (1 - Math.cos(Math.PI / count)) <= sagittaMm[fineness]) return count;
  return allowed[allowed.length - 1]!;
}

interface Direction {
  readonly cos: number;
  readonly sin: number;
}

const known = new Map<number, readonly Direction[]>();

/** The directions of the corners of a circle, counter-clockwise from the first axis; mirror-symmetric to the last bit. */
export function directionsOf(segments: number): readonly Direction[] {
  const before = known.get(segments);
  if (before) return before;
  const quarter = segments / 4;
  const made = Array.from({ length: segments }, (_, i): Direction => {
    // The first quarter is worked out up to 45° and mirrored, the others are turns of it by exchanging places.
    const within = i % quarter;
    const angle = (within * 360) / segments;
    const [cos, sin] =
      within * 8 <= segments ? [cosDeg(angle), sinDeg(angle)] : [sinDeg(90 - angle), cosDeg(90 - angle)];
    const turned = Math.floor(i / quarter);
    if (turned === 0) return { cos, sin };
    if (turned === 1) return { cos: -sin, sin: cos };
    return turned === 2 ? { cos: -cos, sin: -sin } : { cos: sin, sin: -cos };
  });
  known.set(segments, made);
  return made;
}
