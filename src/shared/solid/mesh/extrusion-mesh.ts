import { type Arc, type Point, type Side, sidesOf } from '../outline.ts';
import type { Extrusion, OutlineCorner } from '../placed.ts';
import { type BodyMesh, type Facet, meshDraft, type Round } from './body-mesh.ts';
import { capOf } from './cap.ts';
import { directionsOf, type Fineness, segmentsFor } from './segments.ts';

/** Corners of the whole circle nearer to an arc's end than this are left out, in radians. */
const NEAR_END = 1e-4;

/** The mesh of an outline drawn out along its axis. Face i is side i; the two after the last side are the ends at a0 and a1. */
export function extrusionMesh({ axis, a0, a1, outline }: Extrusion, fineness: Fineness): BodyMesh {
  const draft = meshDraft(axis);
  const sides = sidesOf(outline);
  const points: Point[] = [];
  const facets: Facet[] = [];
  sides.forEach((side, face) => {
    const { arc } = side;
    const inner = arc ? pointsOn(arc, fineness) : [];
    const ends = [side.from, ...inner, side.to];
    for (let i = 1; i < ends.length; i++) {
      points.push(ends[i - 1]!);
      facets.push({ face, round: arc && roundOf(arc, ends[i - 1]!, ends[i]!) });
    }
  });
  const low = points.map(({ u, v }) => draft.vertex(u, v, a0));
  const high = points.map(({ u, v }) => draft.vertex(u, v, a1));
  for (let i = 0; i < points.length; i++) {
    const j = (i + 1) % points.length;
    draft.triangle(low[i]!, low[j]!, high[j]!, i);
    draft.triangle(low[i]!, high[j]!, high[i]!, i);
  }
  const bottom = facets.push({ face: sides.length, round: undefined }) - 1;
  const top = facets.push({ face: sides.length + 1, round: undefined }) - 1;
  for (const [a, b, c] of capOf(points)) {
    draft.triangle(low[a]!, low[c]!, low[b]!, bottom);
    draft.triangle(high[a]!, high[b]!, high[c]!, top);
  }
  return { mesh: draft.done(), facets, axis, faces: sides.length + 2 };
}

/** The corners of an outline with points on its arcs between them, as near as the facets of its mesh. */
export const facetedOutline = (outline: readonly OutlineCorner[], fineness: Fineness): readonly Point[] =>
  sidesOf(outline).flatMap(({ from, arc }) => [from, ...(arc ? pointsOn(arc, fineness) : [])]);

/** Corners of the whole circle that lie on the arc, in the order of its way. */
function pointsOn({ centre, radius, start, sweep }: Arc, fineness: Fineness): readonly Side['from'][] {
  const segments = segmentsFor(radius, fineness);
  const directions = directionsOf(segments);
  const step = (2 * Math.PI) / segments;
  const forwards = sweep > 0;
  const found: Point[] = [];
  const end = start + sweep;
  let i = forwards ? Math.ceil((start + NEAR_END) / step) : Math.floor((start - NEAR_END) / step);
  while (forwards ? i * step < end - NEAR_END : i * step > end + NEAR_END) {
    const { cos, sin } = directions[((i % segments) + segments) % segments]!;
    found.push({ u: centre.u + radius * cos, v: centre.v + radius * sin });
    i += forwards ? 1 : -1;
  }
  return found;
}

function roundOf({ centre, radius }: Arc, from: Point, to: Point): Round {
  const u = (from.u + to.u) / 2 - centre.u;
  const v = (from.v + to.v) / 2 - centre.v;
  const half = Math.hypot(to.u - from.u, to.v - from.v) / 2;
  const away = Math.hypot(u, v);
  const cosHalf = Math.sqrt(Math.max(0, 1 - (half / radius) ** 2));
  return { u: centre.u, v: centre.v, radius, slope: 0, middleU: u / away, middleV: v / away, cosHalf };
}
