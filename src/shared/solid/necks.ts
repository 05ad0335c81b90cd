import { isClearWay } from './mesh/clear-way.ts';
import { NONE, neighboursOf, nextSide } from './mesh/neighbours.ts';
import type { FlatPiece, Surface } from './mesh/surface.ts';
import type { Vec3 } from './placed.ts';
import { areNear, cross, dot, lengthOf, minus, plus } from './vectors.ts';

/** A wall between two patches, before the bodies are named. */
export interface WallBetween {
  readonly patches: readonly [number, number];
  readonly thicknessMm: number;
  readonly at: Vec3;
}

/** An inner corner is an edge about which the metal spans more than this beyond half a turn, in degrees. */
const LEAST_TURN_DEG = 15;
/** Edges nearer than this meet, in mm. */
const MEET_MM = 1e-3;
/** Cosine to an edge, 45°, above which a way runs along it. */
const ALONG = Math.SQRT1_2;
/** How far a direction may stand outside the faces of an inner corner, as a share of its length. */
const SLACK = 1e-6;

/** An edge of a hollow: metal lies all round it but for the hollow between its two faces. */
interface InnerEdge {
  readonly from: Vec3;
  readonly to: Vec3;
  readonly along: Vec3;
  readonly normals: readonly [Vec3, Vec3];
  readonly patches: readonly [number, number];
  /** The same for all edges between the same two faces. */
  readonly ring: string;
  readonly min: Vec3;
  readonly max: Vec3;
}

/** A point that a hollow reaches into the metal. */
interface InnerPoint {
  readonly at: Vec3;
  readonly normals: readonly Vec3[];
  readonly patches: readonly number[];
  /** The corners of the mesh around it. */
  readonly ring: readonly Vec3[];
}

/**
 * The thinnest metal between inner corners of hollows, from edge to edge, and from an edge or a point to a face that no face
 * of the hollow looks at squarely; wherever it is thinner than `below` mm.
 *
 * @param facing faces whose normals have a smaller cosine than this are measured face to face elsewhere.
 */
export function necksOf(surface: Surface, below: number, facing: number): readonly WallBetween[] {
  const { edges, points } = innerCorners(surface);
  const thinnest = new Map<string, WallBetween>();
  const take = (a: readonly number[], b: readonly number[], from: Vec3, to: Vec3): void => {
    const way = minus(to, from);
    const apart = lengthOf(way);
    const thicknessMm = Math.max(0, apart - sagittaOf(surface, a) - sagittaOf(surface, b));
    const key = `${a[0]}/${b[0]}`;
    if (thicknessMm >= (thinnest.get(key)?.thicknessMm ?? below)) return;
    const margin = Math.min(0.01, apart / 10) / apart;
    if (!isClearWay(surface, plus(from, way, margin), plus(from, way, 1 - margin))) return;
    thinnest.set(key, { patches: ofTwoBodies(surface, a, b), thicknessMm, at: plus(from, way, 0.5) });
  };
  const wide = wideRings(edges, below);
  edges.forEach((one, i) => {
    for (let k = i + 1; k < edges.length; k++) {
      const other = edges[k]!;
      if (other.min[0] > one.max[0] + below) break;
      if (!areNear(one, other, below) || (one.ring === other.ring && wide.has(one.ring))) continue;
      const [p, q] = nearest(one, other);
      const way = minus(q, p);
      if (lengthOf(way) <= MEET_MM || runsAlong(one, way) || runsAlong(other, way)) continue;
      if (!leadsIntoMetal(one, way) || !leadsIntoMetal(other, minus(p, q))) continue;
      take(one.patches, other.patches, p, q);
    }
  });
  const shut = (normals: readonly Vec3[], normal: Vec3): boolean => normals.some((own) => dot(own, normal) <= facing);
  // Of two faces at less than a right angle and a bit, one looks squarely enough at any face that the edge leads to.
  const open = 2 * facing * facing - 1;
  for (const edge of edges) {
    if (dot(edge.normals[0], edge.normals[1]) >= open) continue;
    forFacesNear(surface, edge, below, (facet) => {
      if (shut(edge.normals, facet.normal) || !leadsIntoMetal(edge, facet.normal)) return;
      for (const end of [edge.from, edge.to, plus(edge.from, minus(edge.to, edge.from), 0.5)]) {
        const foot = footOn(surface, facet, end, below);
        if (foot) take(edge.patches, [facet.patch], end, foot);
      }
    });
  }
  for (const corner of points) {
    if (isBlunt(corner, -facing)) continue;
    forFacesNear(surface, { min: corner.at, max: corner.at }, below, (facet) => {
      if (shut(corner.normals, facet.normal)) return;
      if (corner.ring.some((point) => dot(facet.normal, minus(point, corner.at)) > 0)) return;
      const foot = footOn(surface, facet, corner.at, below);
      if (foot) take(corner.patches, [facet.patch], corner.at, foot);
    });
  }
  return [...thinnest.values()];
}

/** Whether all faces of a point stand so near to one direction that one of them looks squarely at whatever lies ahead. */
function isBlunt({ normals }: InnerPoint, cosine: number): boolean {
  const sum = normals.reduce<Vec3>((all, normal) => plus(all, normal), [0, 0, 0]);
  const length = lengthOf(sum);
  return length > 0 && normals.every((normal) => dot(normal, sum) >= cosine * length);
}

const sagittaOf = ({ patches }: Surface, ids: readonly number[]): number =>
  Math.max(...ids.map((patch) => patches[patch]!.sagittaMm));

/** One patch of each side of a neck, of two different bodies where there are such. */
function ofTwoBodies({ patches }: Surface, a: readonly number[], b: readonly number[]): readonly [number, number] {
  for (const p of a) for (const q of b) if (patches[p]!.body !== patches[q]!.body) return [p, q];
  return [a[0]!, b[0]!];
}

/** Rings of edges between the same two faces that are too wide for a neck to lie within them. */
function wideRings(edges: readonly InnerEdge[], below: number): ReadonlySet<string> {
  const boxes = new Map<string, { readonly min: number[]; readonly max: number[] }>();
  for (const { ring, min, max } of edges) {
    const box = boxes.get(ring);
    if (!box) boxes.set(ring, { min: [...min], max: [...max] });
    else {
      for (let k = 0; k < 3; k++) {
        box.min[k] = Math.min(box.min[k]!, min[k]!);
        box.max[k] = Math.max(box.max[k]!, max[k]!);
      }
    }
  }
  const wide = new Set<string>();
  for (const [ring, { min, max }] of boxes) {
    const extents = min.map((from, k) => max[k]! - from).sort((a, b) => b - a);
    if (extents[1]! > 2 * below) wide.add(ring);
  }
  return wide;
}

function forFacesNear(
  { patches, facets }: Surface,
  box: { readonly min: Vec3; readonly max: Vec3 },
  reach: number,
  visit: (facet: FlatPiece) => void,
): void {
  for (const patch of patches) {
    if (!areNear(patch, box, reach)) continue;
    for (let f = patch.from; f < patch.to; f++) if (areNear(facets[f]!, box, reach)) visit(facets[f]!);
  }
}

/** Where the way square to a face leads from a point behind it to the face; undefined beside it, or further than `below`. */
function footOn({ vertices, triangles }: Surface, facet: FlatPiece, point: Vec3, below: number): Vec3 | undefined {
  const depth = facet.offset - dot(facet.normal, point);
  if (depth <= MEET_MM || depth >= below) return undefined;
  const foot = plus(point, facet.normal, depth);
  const at = (corner: number): Vec3 => {
    const i = 3 * triangles[corner]!;
    return [vertices[i]!, vertices[i + 1]!, vertices[i + 2]!];
  };
  const within = facet.corners.some((corner) =>
    [0, 1, 2].every((k) => {
      const [a, b] = [at(corner + k), at(corner + ((k + 1) % 3))];
      return dot(cross(minus(b, a), minus(foot, a)), facet.normal) >= 0;
    }),
  );
  return within ? foot : undefined;
}

function innerCorners({ vertices, triangles, facets, facetOf }: Surface): {
  readonly edges: readonly InnerEdge[];
  readonly points: readonly InnerPoint[];
} {
  const neighbours = neighboursOf(triangles, vertices.length / 3);
  const least = Math.sin((LEAST_TURN_DEG * Math.PI) / 180);
  const at = (corner: number): Vec3 => {
    const i = 3 * triangles[corner]!;
    return [vertices[i]!, vertices[i + 1]!, vertices[i + 2]!];
  };
  const edges: InnerEdge[] = [];
  // Corners at which some edge sticks out, and those at which all faces lean in.
  const outer = new Uint8Array(vertices.length / 3);
  const leans = new Uint8Array(vertices.length / 3);
  for (let side = 0; side < triangles.length; side++) {
    const t = Math.floor(side / 3);
    const other = neighbours[side]!;
    if (other === NONE || other < t || facetOf[other] === facetOf[t]) continue;
    const [one, two] = [facets[facetOf[t]!]!, facets[facetOf[other]!]!];
    const [m, n] = [one.normal, two.normal];
    const [x, y, z] = [m[1] * n[2] - m[2] * n[1], m[2] * n[0] - m[0] * n[2], m[0] * n[1] - m[1] * n[0]];
    const [p, q] = [3 * triangles[side]!, 3 * triangles[nextSide(side)]!];
    // Seen along the side of the first face, an inner corner turns the normals to the right.
    const turn =
      x * (vertices[q]! - vertices[p]!) +
      y * (vertices[q + 1]! - vertices[p + 1]!) +
      z * (vertices[q + 2]! - vertices[p + 2]!);
    const flags = turn > 0 ? outer : leans;
    flags[p / 3] = 1;
    flags[q / 3] = 1;
    if (turn >= 0 || one.patch === two.patch) continue;
    if (Math.hypot(x, y, z) < least && dot(m, n) > 0) continue;
    const [from, to] = [at(side), at(nextSide(side))];
    const way = minus(to, from);
    const length = lengthOf(way);
    if (length <= MEET_MM) continue;
    edges.push({
      from,
      to,
      along: [way[0] / length, way[1] / length, way[2] / length],
      normals: [m, n],
      patches: [one.patch, two.patch],
      ring: one.patch < two.patch ? `${one.patch}/${two.patch}` : `${two.patch}/${one.patch}`,
      min: [Math.min(from[0], to[0]), Math.min(from[1], to[1]), Math.min(from[2], to[2])],
      max: [Math.max(from[0], to[0]), Math.max(from[1], to[1]), Math.max(from[2], to[2])],
    });
  }
  return { edges: edges.sort((a, b) => a.min[0] - b.min[0]), points: pointsIn() };

  /** The deepest points of hollows: no edge sticks out there, and no two faces go on flat on both sides of them. */
  function pointsIn(): readonly InnerPoint[] {
    const found = new Map<number, { at: Vec3; normals: Vec3[]; patches: Set<number>; ring: Vec3[] }>();
    for (let corner = 0; corner < triangles.length; corner++) {
      const vertex = triangles[corner]!;
      if (outer[vertex] === 1 || leans[vertex] === 0) continue;
      const facet = facets[facetOf[Math.floor(corner / 3)]!]!;
      const point = found.get(vertex) ?? { at: at(corner), normals: [], patches: new Set(), ring: [] };
      found.set(vertex, point);
      point.normals.push(facet.normal);
      point.patches.add(facet.patch);
      point.ring.push(at(nextSide(corner)));
    }
    return [...found.values()].map((point) => ({ ...point, patches: [...point.patches] }));
  }
}

/**
 * Whether a way runs rather along an edge than across it. Between two edges of one curve, such as the foot of a round boss,
 * it is a chord of the curve and no neck: the nearer they are, the shorter it is. Across a neck it is square to both.
 */
const runsAlong = ({ along }: InnerEdge, way: Vec3): boolean => Math.abs(dot(along, way)) > ALONG * lengthOf(way);

/** Whether the edge is the point of its hollow that lies furthest in the direction: between straight into its two faces. */
function leadsIntoMetal({ along, normals: [m, n] }: InnerEdge, way: Vec3): boolean {
  const d = plus(way, along, -dot(way, along));
  const length = lengthOf(d);
  if (length <= SLACK * lengthOf(way)) return false;
  // d = −α m − β n with α, β ≥ 0.
  const mn = dot(m, n);
  const spread = 1 - mn * mn;
  const [dm, dn] = [-dot(d, m), -dot(d, n)];
  if (spread <= 1e-12) return dm >= 0;
  const slack = -SLACK * length * spread;
  return dm - mn * dn >= slack && dn - mn * dm >= slack;
}

/** The two points, one on each edge, that are nearest to one another. */
function nearest(a: InnerEdge, b: InnerEdge): readonly [Vec3, Vec3] {
  const [u, v, w] = [minus(a.to, a.from), minus(b.to, b.from), minus(a.from, b.from)];
  const [uu, uv, vv, uw, vw] = [dot(u, u), dot(u, v), dot(v, v), dot(u, w), dot(v, w)];
  const spread = uu * vv - uv * uv;
  let s = spread > 1e-12 * uu * vv ? clamp((uv * vw - vv * uw) / spread) : 0;
  const t = clamp((uv * s + vw) / vv);
  s = clamp((uv * t - uw) / uu);
  return [plus(a.from, u, s), plus(b.from, v, t)];
}

const clamp = (x: number): number => Math.min(1, Math.max(0, x));
