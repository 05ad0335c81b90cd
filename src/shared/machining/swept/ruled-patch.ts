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

// The three straight lines of a six-cornered body, six numbers each: x, y, z of one end and of the other.
const rulings = new Float64Array(18);

/** The greatest squared distance over the six-cornered body within the stretch; −1 where it has nothing there. */
function boundAbout(patch: RuledPatch, middle: number, half: number, from: number, to: number): number {
  putRuling(patch, middle - half, 1, rulings, 0);
  putRuling(patch, middle, 1 / Math.cos(half), rulings, 6);
  putRuling(patch, middle + half, 1, rulings, 12);
  let most = -1;
  for (let i = 0; i < 18; i += 6) {
    // Along the line itself, and to the next one at both ends.
    const j = (i + 6) % 18;
    most = Math.max(
      most,
      edgeOf(rulings, i, i + 3, from, to),
      edgeOf(rulings, i, j, from, to),
      edgeOf(rulings, i + 3, j + 3, from, to),
    );
  }
  return most;
}

/** However little of a cut lies within the stretch, it counts: a round surface may climb steeply there. */
const TOUCHING = -1e-12;

const edgeOf = (p: Float64Array, i: number, j: number, from: number, to: number): number =>
  edgeWithin(p[i]!, p[i + 1]!, p[i + 2]!, p[j]!, p[j + 1]!, p[j + 2]!, from, to, TOUCHING);

/** Both ends of the straight line at θ, radii taken `times`. */
function putRuling(patch: RuledPatch, theta: number, times: number, to: Float64Array, at: number): void {
  const { c0, r0, c1, r1, e, f } = patch;
  const cos = Math.cos(theta) * times;
  const sin = Math.sin(theta) * times;
  for (let k = 0; k < 3; k++) {
    const out = e[k]! * cos + f[k]! * sin;
    to[at + k] = c0[k]! + r0 * out;
    to[at + 3 + k] = c1[k]! + r1 * out;
  }
}

const one = new Float64Array(6);

/** The squared distance of the farthest point of the straight line at θ within the stretch; −1 without one. */
export function rulingWithin(patch: RuledPatch, theta: number, from: number, to: number): number {
  putRuling(patch, theta, 1, one, 0);
  return edgeOf(one, 0, 3, from, to);
}

function takeRuling(patch: RuledPatch, theta: number, from: number, to: number, found: Found): void {
  const squared = rulingWithin(patch, theta, from, to);
  if (squared < 0 || squared <= found.least * Math.abs(found.least)) return;
  const [x, y, z] = farthestOnEdge(one[0]!, one[1]!, one[2]!, one[3]!, one[4]!, one[5]!, from, to);
  takePoint(found, away(y, z), x, y, z);
}
