/** mm/s². */
const GRAVITY = 9806.65;
/** Liquid that forms a film must not enter faster, mm/s (from memory: Runyoro, Boutorabi, Campbell 1992, about 0.5 m/s). */
export const GATE_SPEED_LIMIT = 500;
/** Losses of a tapered sprue (from memory: 0.8 to 0.9). */
export const SPRUE_DISCHARGE = 0.88;

/** Speed after a free fall, mm/s: v = √(2 g h). */
export const fallSpeed = (heightMm: number): number => Math.sqrt(2 * GRAVITY * heightMm);

/** Flow through a section, mm³/s. */
export const flow = (speedMmS: number, areaMm2: number): number => speedMmS * areaMm2;

/** A sprue that stays full tapers: A₂ = A₁ √(h₁/h₂), heights from the level of the metal in the cup. */
export const sprueFoot = (topMm2: number, topHeadMm: number, footHeadMm: number): number =>
  topMm2 * Math.sqrt(topHeadMm / footHeadMm);

export type GatePlace = 'top' | 'parting' | 'bottom';

/**
 * Effective head: H (top gate), H − p²/(2C) (at the parting, p of the casting's height C above the gate), H − C/2 (bottom)
 * (from memory: Heine, Loper and Rosenthal; Rao).
 */
export function effectiveHead(place: GatePlace, sprueMm: number, castingMm: number, aboveGateMm: number): number {
  if (place === 'top' || castingMm === 0) return sprueMm;
  return place === 'bottom' ? sprueMm - castingMm / 2 : sprueMm - aboveGateMm ** 2 / (2 * castingMm);
}

/** Choke area: A = m / (ρ t C_d √(2 g H)), mm². */
export const chokeArea = (
  massKg: number,
  densityKgM3: number,
  seconds: number,
  headMm: number,
  discharge = SPRUE_DISCHARGE,
): number => ((massKg / densityKgM3) * 1e9) / (seconds * discharge * fallSpeed(headMm));

/** Time to fill through a choke, seconds. */
export const fillTime = (volumeMm3: number, chokeMm2: number, headMm: number, discharge = SPRUE_DISCHARGE): number =>
  volumeMm3 / (chokeMm2 * discharge * fallSpeed(headMm));

/** Smallest total gate area that keeps the metal under the speed limit, mm². */
export const leastGateArea = (flowMm3S: number, limitMmS = GATE_SPEED_LIMIT): number => flowMm3S / limitMmS;
