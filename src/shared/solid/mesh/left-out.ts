import { ACROSS, ALONG, COS_HALF, HAND, MIDDLE, ORIGIN, RADIUS, SLOPE } from './round-table.ts';

/** Places and weights of Gauss's three points from 0 to 1, exact to degree 5. */
export const GAUSS: readonly (readonly [place: number, weight: number])[] = [
  [0.5 - Math.sqrt(0.15), 5 / 18],
  [0.5, 8 / 18],
  [0.5 + Math.sqrt(0.15), 5 / 18],
];

/** Gauss's five points, exact to degree 9: a taper's radius stands below a fraction line. */
const GAUSS_TAPER = [-0.906179845938664, -0.5384693101056831, 0, 0.5384693101056831, 0.906179845938664].map(
  (place, i): readonly [number, number] => [
    (1 + place) / 2,
    [0.23692688505618908, 0.47862867049936647, 0.5688888888888889, 0.47862867049936647, 0.23692688505618908][i]! / 2,
  ],
);

/** Both rules over a triangle: shares of its second and third corner, and weight, three numbers each. */
const overTriangle = (line: readonly (readonly [number, number])[]): Float64Array =>
  Float64Array.from(
    line.flatMap(([out, a]) => line.flatMap(([across, b]) => [out * (1 - across), out * across, a * b * out])),
  );
const PLAIN = overTriangle(GAUSS);
const TAPER = overTriangle(GAUSS_TAPER);

// Indices of sums: first moments, second moments xx, yy, zz, xy, yz, zx, volume, surface.
export const FIRST = 0;
export const SECOND = 3;
export const VOLUME = 9;
export const SURFACE = 10;
export const SUMS = 11;

/**
 * Adds what lies between a triangle on a round facet and the surface beyond it: less than nothing where the metal is outside.
 *
 * @param table @param row the facet in a table of `roundTable`.
 * @param corners nine numbers, the triangle's corners measured from `middle`.
 */
export function addLeftOut(
  sums: Float64Array,
  table: Float64Array,
  row: number,
  [middleX, middleY, middleZ]: readonly [number, number, number],
  corners: Float64Array,
): void {
  const ox = table[row + ORIGIN]! - middleX;
  const oy = table[row + ORIGIN + 1]! - middleY;
  const oz = table[row + ORIGIN + 2]! - middleZ;
  const [lx, ly, lz] = [table[row + ALONG]!, table[row + ALONG + 1]!, table[row + ALONG + 2]!];
  const [mx, my, mz] = [table[row + MIDDLE]!, table[row + MIDDLE + 1]!, table[row + MIDDLE + 2]!];
  const [cx, cy, cz] = [table[row + ACROSS]!, table[row + ACROSS + 1]!, table[row + ACROSS + 2]!];
  const radius = table[row + RADIUS]!;
  const slope = table[row + SLOPE]!;
  const cosHalf = table[row + COS_HALF]!;
  const a = (i: number) => (corners[i]! - ox) * lx + (corners[i + 1]! - oy) * ly + (corners[i + 2]! - oz) * lz;
  const s = (i: number) => (corners[i]! - ox) * cx + (corners[i + 1]! - oy) * cy + (corners[i + 2]! - oz) * cz;
  let first = 0;
  if (slope !== 0) {
    // Seen from the corner nearest to a cone's point, so that the point itself does not harm the sums.
    const sign = Math.sign(slope);
    if (sign * a(3) < sign * a(first)) first = 3;
    if (sign * a(6) < sign * a(first)) first = 6;
  }
  const a0 = a(first);
  const s0 = s(first);
  const a1 = a((first + 3) % 9) - a0;
  const s1 = s((first + 3) % 9) - s0;
  const a2 = a((first + 6) % 9) - a0;
  const s2 = s((first + 6) % 9) - s0;
  const signed = s1 * a2 - s2 * a1;
  const twice = Math.abs(signed);
  const sign = Math.sign(signed) * table[row + HAND]!;
  const slant = Math.sqrt(1 + slope * slope);
  const flatSlant = Math.sqrt(1 + slope * slope * cosHalf * cosHalf);
  const rule = slope === 0 ? PLAIN : TAPER;
  for (let i = 0; i < rule.length; i += 3) {
    const atS = s0 + rule[i]! * s1 + rule[i + 1]! * s2;
    const atA = a0 + rule[i]! * a1 + rule[i + 1]! * a2;
    const weight = rule[i + 2]! * twice;
    const round = radius + slope * atA;
    const flat = round * cosHalf;
    const square = flat * flat + atS * atS;
    // The angle that a step ds of the facet spans, seen from the axis.
    const angle = flat / square;
    const volume = (sign * weight * (round * round - square) * angle) / 2;
    // Half-way between the facet and the surface, in the direction of the point on the facet.
    const half = 0.5 + round / (2 * Math.sqrt(square));
    const m = flat * half;
    const c = atS * half;
    const x = ox + mx * m + cx * c + lx * atA;
    const y = oy + my * m + cy * c + ly * atA;
    const z = oz + mz * m + cz * c + lz * atA;
    sums[FIRST]! += volume * x;
    sums[FIRST + 1]! += volume * y;
    sums[FIRST + 2]! += volume * z;
    sums[SECOND]! += volume * x * x;
    sums[SECOND + 1]! += volume * y * y;
    sums[SECOND + 2]! += volume * z * z;
    sums[SECOND + 3]! += volume * x * y;
    sums[SECOND + 4]! += volume * y * z;
    sums[SECOND + 5]! += volume * z * x;
    sums[VOLUME]! += volume;
    sums[SURFACE]! += weight * (round * slant * angle - flatSlant);
  }
}

/** From a point on a facet straight away from the axis to the true surface, into `gap`; nothing for a flat one. */
export function gapAt(table: Float64Array, row: number, x: number, y: number, z: number, gap: Float64Array): void {
  gap.fill(0);
  if (Number.isNaN(table[row + RADIUS]!)) return;
  const [px, py, pz] = [x - table[row + ORIGIN]!, y - table[row + ORIGIN + 1]!, z - table[row + ORIGIN + 2]!];
  const a = px * table[row + ALONG]! + py * table[row + ALONG + 1]! + pz * table[row + ALONG + 2]!;
  const s = px * table[row + ACROSS]! + py * table[row + ACROSS + 1]! + pz * table[row + ACROSS + 2]!;
  const round = table[row + RADIUS]! + table[row + SLOPE]! * a;
  const flat = round * table[row + COS_HALF]!;
  const facet = Math.hypot(flat, s);
  if (facet === 0) return;
  const [m, c] = [(flat * round) / facet, (s * round) / facet];
  for (let k = 0; k < 3; k++) {
    const to =
      table[row + ORIGIN + k]! +
      table[row + MIDDLE + k]! * m +
      table[row + ACROSS + k]! * c +
      table[row + ALONG + k]! * a;
    gap[k] = to - (k === 0 ? x : k === 1 ? y : z);
  }
}
