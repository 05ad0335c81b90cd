import { away, type Found, takePoint } from './reach.ts';
import { edgeWithin, farthestOnEdge } from './straight-edge.ts';

/** How closely the farthest point of a round surface askew is closed in upon, mm. */
const CLOSE_MM = 1e-5;
/** Pieces that a patch is cut into at the most for one stretch. */
const MOST_CUTS = 4000;

type Vec = readonly [x: number, y: number, z: number];

/**
 * Part of a cylinder or cone in any direction, seen from the line: straight from `c0` + r0 · e(θ) to `c1` + r1 · e(θ), with e(θ) =
 * e · cos θ + f · sin θ, for θ from `start` on by `sweep` > 0, at most a whole turn.
 */
export interface RuledPatch {
  readonly c0: Vec;
  readonly r0: number;
  readonly c1: Vec;
  readonly r1: number;
  readonly e: Vec;
  readonly f: Vec;
  readonly start: number;
  readonly sweep: number;
}

/**
 * The farthest point of the patch within the stretch, from both sides. Between θ − h and θ + h the patch lies within the straight-sided
 * body on six corners: its own four, and the points at θ with radii r / cos h where the tangents of its ends meet.
 * A body with straight edges is farthest where one of them is, or where one leaves the stretch. Halving h again and again
 * closes in; what cannot reach beyond the best so far is let go.
 */
export function patchWithin(patch: RuledPatch, from: number, to: number, found: Found): void {
  const count = Math.max(1, Math.ceil(patch.sweep / (Math.PI / 4)));
  const h = patch.sweep / count / 2;
  let open = Array.from({ length: count }, (_, i) => patch.start + (2 * i + 1) * h);
  let half = h;
  for (let spent = 0; open.length > 0; half /= 2) {
    const next: number[] = [];
    for (const middle of open) {
      const squared = boundAbout(patch, middle, half, from, to);
      if (squared < 0) continue;
      const upper = Math.sqrt(squared);
      takeRuling(patch, middle, from, to, found);
      if (half === h) {
        takeRuling(patch, middle - half, from, to, found);
        takeRuling(patch, middle + half, from, to, found);
      }
      spent++;
      const least = Math.max(found.least + CLOSE_MM, found.floor);
      if (upper <= least || spent > MOST_CUTS) found.most = Math.max(found.most, upper);
      else next.push(middle - half / 2, middle + half / 2);
    }
    open = next;
  }
}

/** The greatest squared distance over the six-cornered body within the stretch; −1 where it has nothing there. */
function boundAbout(patch: RuledPatch, middle: number, half: number, from: number, to: number): number {
  const stretch = 1 / Math.cos(half);
  const [a, b, c] = [
    rulingAt(patch, middle - half, 1),
    rulingAt(patch, middle, stretch),
    rulingAt(patch, middle + half, 1),
  ];
  let most = -1;
  const take = (p: Ruling, i: 0 | 3, q: Ruling, j: 0 | 3) => {
    const r = edgeWithin(p[i], p[i + 1]!, p[i + 2]!, q[j], q[j + 1]!, q[j + 2]!, from, to);
    if (r > most) most = r;
  };
  for (const one of [a, b, c]) take(one, 0, one, 3);
  for (const end of [0, 3] as const) {
    take(a, end, b, end);
    take(b, end, c, end);
    take(c, end, a, end);
  }
  return most;
}

type Ruling = readonly [number, number, number, number, number, number];

/** Both ends of the straight line at θ, radii taken `times`. */
function rulingAt({ c0, r0, c1, r1, e, f }: RuledPatch, theta: number, times: number): Ruling {
  const cos = Math.cos(theta) * times;
  const sin = Math.sin(theta) * times;
  const [ex, ey, ez] = [e[0] * cos + f[0] * sin, e[1] * cos + f[1] * sin, e[2] * cos + f[2] * sin];
  return [c0[0] + r0 * ex, c0[1] + r0 * ey, c0[2] + r0 * ez, c1[0] + r1 * ex, c1[1] + r1 * ey, c1[2] + r1 * ez];
}

function takeRuling(patch: RuledPatch, theta: number, from: number, to: number, found: Found): void {
  const ends = rulingAt(patch, theta, 1);
  const squared = edgeWithin(...ends, from, to);
  if (squared < 0 || squared <= found.least * Math.abs(found.least)) return;
  const [x, y, z] = farthestOnEdge(...ends, from, to);
  takePoint(found, away(y, z), x, y, z);
}
