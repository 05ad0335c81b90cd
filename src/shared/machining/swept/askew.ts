import { isOnArc, sidesOf } from '../../solid/outline.ts';
import type { Extrusion, Turned } from '../../solid/placed.ts';
import type { Pose } from './pose.ts';
import { away, type Found, type Reach, takeEven, takeExact } from './reach.ts';
import { patchWithin, type RuledPatch, rulingWithin } from './ruled-patch.ts';
import { edgeWithin, farthestOnEdge } from './straight-edge.ts';
import { SLIVER_MM } from './sweep-piece.ts';

type Vec = readonly [x: number, y: number, z: number];
type Edge = readonly [from: Vec, to: Vec];

const placeOf =
  ({ ox, oy, oz, ux, uy, uz, vx, vy, vz, ax, ay, az }: Pose) =>
  (u: number, v: number, a: number): Vec => [
    ox + ux * u + vx * v + ax * a,
    oy + uy * u + vy * v + ay * a,
    oz + uz * u + vz * v + az * a,
  ];

/**
 * An outline drawn out neither along the line nor square to it. Its flat faces are farthest at their edges; its round ones are
 * closed in upon (`ruled-patch.ts`).
 */
export function extrusionAskew({ a0, a1, outline }: Extrusion, pose: Pose): Reach {
  const place = placeOf(pose);
  const [e, f]: [Vec, Vec] = [
    [pose.ux, pose.uy, pose.uz],
    [pose.vx, pose.vy, pose.vz],
  ];
  const edges: Edge[] = [];
  const patches: RuledPatch[] = [];
  for (const { from, to, arc } of sidesOf(outline)) {
    edges.push([place(from.u, from.v, a0), place(from.u, from.v, a1)]);
    if (arc) {
      const { centre, radius, start, sweep } = arc;
      patches.push({
        c0: place(centre.u, centre.v, a0),
        r0: radius,
        c1: place(centre.u, centre.v, a1),
        r1: radius,
        e,
        f,
        start: sweep > 0 ? start : start + sweep,
        sweep: Math.abs(sweep),
      });
    } else {
      edges.push(
        [place(from.u, from.v, a0), place(to.u, to.v, a0)],
        [place(from.u, from.v, a1), place(to.u, to.v, a1)],
      );
    }
  }
  return reachOver(edges, patches);
}

/** Turned about an axis that is neither parallel nor square to the line: a whole turn of cone for each side of its outline. */
export function turnedAskew({ u, v, outline }: Turned, pose: Pose): Reach {
  const place = placeOf(pose);
  const patches: RuledPatch[] = [];
  outline.forEach((one, i) => {
    const other = outline[(i + 1) % outline.length]!;
    // The rim of a flat end belongs to the side that meets it there.
    if (one.a === other.a || (one.r === 0 && other.r === 0)) return;
    patches.push({
      c0: place(u, v, one.a),
      r0: one.r,
      c1: place(u, v, other.a),
      r1: other.r,
      e: [pose.ux, pose.uy, pose.uz],
      f: [pose.vx, pose.vy, pose.vz],
      start: 0,
      sweep: 2 * Math.PI,
    });
  });
  return reachOver([], patches);
}

function reachOver(edges: readonly Edge[], all: readonly RuledPatch[]): Reach {
  const patches = all.map((patch) => {
    const places = placesOf(patch);
    return { patch, places, lo: Math.min(...places), hi: Math.max(...places) };
  });
  const breaks = [...edges.flatMap(([from, to]) => [from[0], to[0]]), ...patches.flatMap(({ places }) => places)];
  return {
    lo: Math.min(...breaks),
    hi: Math.max(...breaks),
    breaks,
    within(from, to, found) {
      for (const [a, b] of edges) {
        const squared = edgeWithin(a[0], a[1], a[2], b[0], b[1], b[2], from, to);
        if (squared < 0 || squared <= found.least * Math.abs(found.least)) continue;
        const [x, y, z] = farthestOnEdge(a[0], a[1], a[2], b[0], b[1], b[2], from, to);
        takeExact(found, away(y, z), x, y, z);
      }
      for (const { patch, lo, hi } of patches) {
        if (hi - from > SLIVER_MM && to - lo > SLIVER_MM) patchWithin(patch, from, to, found);
      }
      if (found.most > found.floor) evenly(found, edges, all, from, to);
    },
  };
}

/**
 * Where along the line a patch has its corners, and where its two circles reach farthest: R √(e² + f²) from their middles,
 * where they have a point in that direction.
 */
function placesOf({ c0, r0, c1, r1, e, f, start, sweep }: RuledPatch): readonly number[] {
  const places: number[] = [];
  const put = (out: number) => {
    places.push(c0[0] + r0 * out, c1[0] + r1 * out);
  };
  const sine = Math.sqrt(e[0] * e[0] + f[0] * f[0]);
  const forwards = Math.atan2(f[0], e[0]);
  if (isOnArc({ start, sweep }, forwards)) put(sine);
  if (isOnArc({ start, sweep }, forwards + Math.PI)) put(-sine);
  if (sweep >= 2 * Math.PI) return places;
  for (const theta of [start, start + sweep]) put(e[0] * Math.cos(theta) + f[0] * Math.sin(theta));
  return places;
}

/** Rulings of a patch that are looked at for how far it reaches at the ends of a stretch. */
const FEW = 8;

/** How far it reaches at both ends of the stretch, whichever is less: a few rulings say it well enough. */
function evenly(found: Found, edges: readonly Edge[], patches: readonly RuledPatch[], from: number, to: number): void {
  const width = (to - from) * 1e-3;
  let least = Infinity;
  for (const start of [from, to - width]) {
    let most = -1;
    for (const [a, b] of edges) {
      most = Math.max(most, edgeWithin(a[0], a[1], a[2], b[0], b[1], b[2], start, start + width));
    }
    for (const patch of patches) {
      for (let i = 0; i <= FEW; i++) {
        most = Math.max(most, rulingWithin(patch, patch.start + (patch.sweep * i) / FEW, start, start + width));
      }
    }
    least = Math.min(least, most);
  }
  if (least >= 0) takeEven(found, Math.sqrt(least));
}
