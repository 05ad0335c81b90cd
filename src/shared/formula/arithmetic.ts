/** Largest result in canonical units: beyond it every length is a slip, and the screen would need exponents. */
export const LARGEST_VALUE = 1e12;

/** How far rounding noise may carry a value over a bound (asin of 1) or off a step (floor to 0.1 mm of 0.3 mm). */
const NOISE = 1e-9;

const RADIANS = Math.PI / 180;

/** Sine of an angle in degrees, exact at the multiples of 30° that have an exact sine. */
export function sinDeg(angle: number): number {
  const turned = Math.abs(angle % 360);
  const sign = angle < 0 ? -1 : 1;
  const half = turned > 180 ? -sign : sign;
  const within = turned > 180 ? turned - 180 : turned;
  const acute = within > 90 ? 180 - within : within;
  if (acute === 0) return 0;
  if (acute === 30) return 0.5 * half;
  if (acute === 90) return half;
  // Each half of the quadrant by the function that is accurate there.
  return half * (acute > 45 ? Math.cos((90 - acute) * RADIANS) : Math.sin(acute * RADIANS));
}

/** Cosine of an angle in degrees. */
export const cosDeg = (angle: number): number => sinDeg(90 - Math.abs(angle % 360));

/** Tangent of an angle in degrees; NaN at the right angles, where it has none. */
export function tanDeg(angle: number): number {
  const cosine = cosDeg(angle);
  if (cosine === 0) return Number.NaN;
  return Math.abs(angle % 90) === 45 ? Math.sign(sinDeg(angle)) * Math.sign(cosine) : sinDeg(angle) / cosine;
}

const clampToOne = (x: number): number => (Math.abs(x) > 1 && Math.abs(x) < 1 + NOISE ? Math.sign(x) : x);

/** Angles in degrees. NaN outside -1 to 1. */
export const asinDeg = (x: number): number => Math.asin(clampToOne(x)) / RADIANS;
export const acosDeg = (x: number): number => Math.acos(clampToOne(x)) / RADIANS;
export const atanDeg = (x: number): number => Math.atan(x) / RADIANS;
export const atan2Deg = (y: number, x: number): number =>
  x === 0 && y === 0 ? Number.NaN : Math.atan2(y, x) / RADIANS;

/** To the nearest multiple of the step, halves away from zero. NaN when the step is not above zero. */
export function roundTo(value: number, step: number): number {
  if (!(step > 0)) return Number.NaN;
  const quotient = value / step;
  // Noise may leave a half just short of itself: 0.35 / 0.1 is 3.4999999999999996.
  const steps = Math.floor(Math.abs(quotient) * (1 + 4 * Number.EPSILON) + 0.5);
  return Math.sign(quotient) * steps * step;
}

/** To the multiple of the step at or below; a value within rounding noise of a multiple counts as that multiple. */
export function floorTo(value: number, step: number): number {
  if (!(step > 0)) return Number.NaN;
  const quotient = value / step;
  const nearest = Math.round(quotient);
  return (Math.abs(quotient - nearest) <= NOISE ? nearest : Math.floor(quotient)) * step;
}

export const ceilTo = (value: number, step: number): number => -floorTo(-value, step);

/** @returns the whole number that a count stands for; NaN when it is none. */
export const wholeOrNaN = (value: number): number =>
  Math.abs(value - Math.round(value)) <= NOISE ? Math.round(value) : Number.NaN;
