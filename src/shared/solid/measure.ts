import type { Kernel, KernelMesh, KernelSolid } from './manifold/kernel.ts';
import { NONE, neighboursOf, nextSide } from './mesh/neighbours.ts';
import { countPieces } from './mesh/pieces.ts';
import { facetIn, type RoundView, roundViewOf, type Source } from './mesh/source.ts';
import { createSums } from './mesh/sums.ts';
import type { MassProperties, Vec3 } from './placed.ts';

/** Places and weights of Gauss's three points from 0 to 1, exact to degree 5. */
const GAUSS = [
  [0.5 - Math.sqrt(0.15), 5 / 18],
  [0.5, 8 / 18],
  [0.5 + Math.sqrt(0.15), 5 / 18],
] as const;

/** Gauss's five points, exact to degree 9: a taper's radius stands below a fraction line. */
const GAUSS_TAPER = [-0.906179845938664, -0.5384693101056831, 0, 0.5384693101056831, 0.906179845938664].map(
  (place, i): readonly [number, number] => [
    (1 + place) / 2,
    [0.23692688505618908, 0.47862867049936647, 0.5688888888888889, 0.47862867049936647, 0.23692688505618908][i]! / 2,
  ],
);

/** Faces that meet at less than this (sine) run into one another; their border is left where the mesh has it. */
const TANGENT = 0.1;

// Indices of the sums: first moments, second moments xx, yy, zz, xy, yz, zx, volume, surface.
const FIRST = 0;
const SECOND = 3;
const VOLUME = 9;
const SURFACE = 10;
const SUMS = 11;

/**
 * Mass properties of a solid that the kernel holds.
 *
 * The kernel's solid has flat facets with their corners on the true surfaces. Volume and surface of that are the kernel's, in
 * float64; its moments are sums over signed tetrahedra. To each is added, facet by facet, what lies between the facet and the
 * round surface that it stands for, integrated over what is left of the facet after all cutting. That is exact for whole
 * cylinders and cones, and leaves errors of the fourth order of a facet's angle where round surfaces cut one another.
 * The box is that of the corners.
 *
 * @param sourceOf the body whose mesh the kernel knows by that number.
 */
export function measure(
  kernel: Kernel,
  solid: KernelSolid,
  mesh: KernelMesh,
  sourceOf: (source: number) => Source,
): MassProperties {
  const { vertices, triangles } = mesh;
  const { min: boxMin, max: boxMax } = kernel.boxOf(solid);
  const middle: Vec3 = [0, 1, 2].map((k) => (boxMin[k]! + boxMax[k]!) / 2) as unknown as Vec3;
  const flat = createSums(SUMS);
  const left = createSums(SUMS);
  const rounds = roundsOf(mesh, sourceOf);
  const at = (t: number, k: number): Vec3 => {
    const i = 3 * triangles[3 * t + k]!;
    return [vertices[i]!, vertices[i + 1]!, vertices[i + 2]!];
  };
  const count = triangles.length / 3;
  for (let t = 0; t < count; t++) {
    const corners = [at(t, 0), at(t, 1), at(t, 2)] as const;
    addTetrahedron(flat.add, middle, corners);
    const view = rounds.views[rounds.viewOf[t]!];
    if (view) addLeftOut(left.add, view, middle, corners);
  }
  addBorders(mesh, rounds, at, (area) => left.add(SURFACE, area));
  const exact = kernel.volumeOf(solid);
  const volume = exact + left.of(VOLUME);
  // The mesh came rounded to 24 bits, which thin walls far from the origin feel; its moments follow the volume.
  const scale = exact / flat.of(VOLUME);
  const offset = [0, 1, 2].map((k) => (scale * flat.of(FIRST + k) + left.of(FIRST + k)) / volume);
  const second = (k: number, i: number, j: number) =>
    scale * flat.of(SECOND + k) + left.of(SECOND + k) - volume * offset[i]! * offset[j]!;
  const [xx, yy, zz] = [second(0, 0, 0), second(1, 1, 1), second(2, 2, 2)];
  return {
    volumeMm3: volume,
    areaMm2: kernel.areaOf(solid) + left.of(SURFACE),
    centre: [middle[0] + offset[0]!, middle[1] + offset[1]!, middle[2] + offset[2]!],
    boxMin,
    boxMax,
    inertia: [yy + zz, zz + xx, xx + yy, second(3, 0, 1), second(4, 1, 2), second(5, 2, 0)],
    pieces: countPieces(vertices, triangles),
  };
}

interface Rounds {
  readonly views: readonly (RoundView | undefined)[];
  /** Per triangle: index into `views`. */
  readonly viewOf: Int32Array;
  /** Per triangle: a number that the triangles of one face of one copy share. */
  readonly faceOf: Int32Array;
}

function roundsOf({ runs, facetOf }: KernelMesh, sourceOf: (source: number) => Source): Rounds {
  const views: (RoundView | undefined)[] = [];
  const viewOf = new Int32Array(facetOf.length);
  const faceOf = new Int32Array(facetOf.length);
  /** One solid may come in several runs. */
  const bases = new Map<Source, number>();
  let faces = 0;
  for (const run of runs) {
    const source = sourceOf(run.source);
    let base = bases.get(source);
    if (base === undefined) {
      base = faces;
      faces += source.body.faces * source.moves.length;
      bases.set(source, base);
    }
    const known = new Map<number, number>();
    for (let t = run.from; t < run.to; t++) {
      const number = facetOf[t]!;
      let index = known.get(number);
      const { facet, move, face } = facetIn(source, number);
      if (index === undefined) {
        index = views.push(roundViewOf(source.body, move, facet)) - 1;
        known.set(number, index);
      }
      viewOf[t] = index;
      faceOf[t] = base + face;
    }
  }
  return { views, viewOf, faceOf };
}

type Add = (index: number, value: number) => void;

function addTetrahedron(add: Add, [x, y, z]: Vec3, [a, b, c]: readonly [Vec3, Vec3, Vec3]): void {
  const [ax, ay, az] = [a[0] - x, a[1] - y, a[2] - z];
  const [bx, by, bz] = [b[0] - x, b[1] - y, b[2] - z];
  const [cx, cy, cz] = [c[0] - x, c[1] - y, c[2] - z];
  const six = ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx);
  const [sx, sy, sz] = [ax + bx + cx, ay + by + cy, az + bz + cz];
  const [first, second] = [six / 24, six / 120];
  add(VOLUME, six / 6);
  add(FIRST, first * sx);
  add(FIRST + 1, first * sy);
  add(FIRST + 2, first * sz);
  add(SECOND, second * (ax * ax + bx * bx + cx * cx + sx * sx));
  add(SECOND + 1, second * (ay * ay + by * by + cy * cy + sy * sy));
  add(SECOND + 2, second * (az * az + bz * bz + cz * cz + sz * sz));
  add(SECOND + 3, second * (ax * ay + bx * by + cx * cy + sx * sy));
  add(SECOND + 4, second * (ay * az + by * bz + cy * cz + sy * sz));
  add(SECOND + 5, second * (az * ax + bz * bx + cz * cx + sz * sx));
}

/** Adds what lies between a triangle on a facet and the round surface beyond it: less than nothing where the metal is outside. */
function addLeftOut(add: Add, view: RoundView, middle: Vec3, corners: readonly [Vec3, Vec3, Vec3]): void {
  const { radius, slope, cosHalf } = view.round;
  const s = corners.map((p) => view.s(...p)) as [number, number, number];
  const a = corners.map((p) => view.a(...p)) as [number, number, number];
  // Seen from the corner nearest to a cone's point, so that the point itself does not harm the sums.
  const first = slope === 0 ? 0 : a.indexOf(slope > 0 ? Math.min(...a) : Math.max(...a));
  const [s0, s1, s2] = [s[first]!, s[(first + 1) % 3]!, s[(first + 2) % 3]!];
  const [a0, a1, a2] = [a[first]!, a[(first + 1) % 3]!, a[(first + 2) % 3]!];
  const signed = (s1 - s0) * (a2 - a0) - (s2 - s0) * (a1 - a0);
  const twice = Math.abs(signed);
  const sign = Math.sign(signed) * view.hand;
  const [slant, flatSlant] = [Math.sqrt(1 + slope ** 2), Math.sqrt(1 + (slope * cosHalf) ** 2)];
  let [surface, left, x, y, z, xx, yy, zz, xy, yz, zx] = [0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0];
  const rule = slope === 0 ? GAUSS : GAUSS_TAPER;
  for (const [out, outWeight] of rule) {
    for (const [across, acrossWeight] of rule) {
      const [w1, w2] = [out * (1 - across), out * across];
      const atS = s0 + w1 * (s1 - s0) + w2 * (s2 - s0);
      const atA = a0 + w1 * (a1 - a0) + w2 * (a2 - a0);
      const weight = outWeight * acrossWeight * out * twice;
      const round = radius + slope * atA;
      const flat = round * cosHalf;
      const facet = Math.hypot(flat, atS);
      // The angle that a step ds of the facet spans, seen from the axis.
      const angle = flat / (facet * facet);
      const volume = (sign * weight * (round * round - facet * facet) * angle) / 2;
      // Half-way between the facet and the surface, in the direction of the point on the facet.
      const half = (round + facet) / (2 * facet);
      const point = view.point(flat * half, atS * half, atA);
      const [p, q, r] = [point[0] - middle[0], point[1] - middle[1], point[2] - middle[2]];
      surface += weight * (round * slant * angle - flatSlant);
      left += volume;
      x += volume * p;
      y += volume * q;
      z += volume * r;
      xx += volume * p * p;
      yy += volume * q * q;
      zz += volume * r * r;
      xy += volume * p * q;
      yz += volume * q * r;
      zx += volume * r * p;
    }
  }
  for (const [i, value] of [x, y, z, xx, yy, zz, xy, yz, zx, left, surface].entries()) add(FIRST + i, value);
}

/** From a point on a facet straight away from the axis to the true surface. */
function gapAt(view: RoundView | undefined, [x, y, z]: Vec3): Vec3 {
  if (!view) return [0, 0, 0];
  const { radius, slope, cosHalf } = view.round;
  const [s, a] = [view.s(x, y, z), view.a(x, y, z)];
  const round = radius + slope * a;
  const flat = round * cosHalf;
  const facet = Math.hypot(flat, s);
  if (facet === 0) return [0, 0, 0];
  const [px, py, pz] = view.point((flat * round) / facet, (s * round) / facet, a);
  return [px - x, py - y, pz - z];
}

/**
 * Where two faces meet and the true surfaces lie off their facets, the border lies off the side that the facets share; each
 * face gains or loses the strip between.
 */
function addBorders(
  { triangles, vertices }: KernelMesh,
  { views, viewOf, faceOf }: Rounds,
  at: (t: number, k: number) => Vec3,
  addArea: (area: number) => void,
): void {
  if (!views.some((view) => view)) return;
  const neighbours = neighboursOf(triangles, vertices.length / 3);
  for (let side = 0; side < triangles.length; side++) {
    const t = Math.floor(side / 3);
    const other = neighbours[side]!;
    if (other === NONE || faceOf[t] === faceOf[other]) continue;
    const [mine, theirs] = [views[viewOf[t]!], views[viewOf[other]!]];
    if (!mine && !theirs) continue;
    const normal = normalOf(at(t, 0), at(t, 1), at(t, 2));
    const beyond = normalOf(at(other, 0), at(other, 1), at(other, 2));
    if (!normal || !beyond) continue;
    const [from, to] = [at(t, side % 3), at(t, nextSide(side) % 3)];
    const [ex, ey, ez] = [to[0] - from[0], to[1] - from[1], to[2] - from[2]];
    // Length of the side times the sine between the faces: positive where the metal is on the inner side of the angle.
    const lean =
      (ey * normal[2] - ez * normal[1]) * beyond[0] +
      (ez * normal[0] - ex * normal[2]) * beyond[1] +
      (ex * normal[1] - ey * normal[0]) * beyond[2];
    const length = Math.hypot(ex, ey, ez);
    if (Math.abs(lean) <= TANGENT * length) continue;
    for (const [w, weight] of GAUSS) {
      const point: Vec3 = [from[0] + w * ex, from[1] + w * ey, from[2] + w * ez];
      const [there, here] = [gapAt(theirs, point), gapAt(mine, point)];
      const shift =
        (there[0] - here[0]) * beyond[0] + (there[1] - here[1]) * beyond[1] + (there[2] - here[2]) * beyond[2];
      addArea((weight * length * length * shift) / lean);
    }
  }
}

function normalOf(a: Vec3, b: Vec3, c: Vec3): Vec3 | undefined {
  const [ex, ey, ez] = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
  const [fx, fy, fz] = [c[0] - a[0], c[1] - a[1], c[2] - a[2]];
  const [x, y, z] = [ey * fz - ez * fy, ez * fx - ex * fz, ex * fy - ey * fx];
  const length = Math.hypot(x, y, z);
  return length === 0 ? undefined : [x / length, y / length, z / length];
}
