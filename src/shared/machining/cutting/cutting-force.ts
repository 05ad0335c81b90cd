import type { SpecificForce } from '../../tables/cutting-force.ts';

/** What an edge takes off at one moment, mm: thickness h across the edge and breadth b along it. */
export interface Chip {
  readonly thicknessMm: number;
  readonly breadthMm: number;
}

const inRadians = (degrees: number): number => (degrees * Math.PI) / 180;

/**
 * The chip of a turning tool: h = f sin κ, b = ap / sin κ.
 *
 * @param angleDeg κ, between the edge and the way of the feed; 90 for a knife tool.
 */
export function turningChip(depthMm: number, feedMm: number, angleDeg: number): Chip {
  const sine = Math.sin(inRadians(angleDeg));
  return { thicknessMm: feedMm * sine, breadthMm: depthMm / sine };
}

/**
 * Specific cutting force in N/mm²: by Kienzle kc = kc1.1 h^(−mc). Chips thinner than the table's own, of 0.05 mm and
 * less, ask for more than this says.
 */
export const specificForceOf = (force: SpecificForce, thicknessMm: number): number =>
  force.is === 'kienzle' ? force.kc11 * thicknessMm ** -force.mc : force.kc;

/** Main cutting force on a chip in N: Fc = kc b h; by Kienzle kc1.1 b h^(1 − mc). */
export const cuttingForce = (force: SpecificForce, { thicknessMm, breadthMm }: Chip): number =>
  specificForceOf(force, thicknessMm) * breadthMm * thicknessMm;

/** Power at the edge in kW of a force in N at a speed in m/min: P = F v / 60 000. */
export const cuttingPower = (forceN: number, speedMMin: number): number => (forceN * speedMMin) / 60_000;

/** Power in kW to remove metal, mm³/min, at a specific force in N/mm²: P = kc Q / 60 000 000. */
export const removalPower = (kc: number, removalMm3Min: number): number => (kc * removalMm3Min) / 60_000_000;

/** Torque in Nm of a power in kW at so many turns per minute. */
export const torqueNm = (powerKw: number, rpm: number): number => (powerKw * 60_000) / (2 * Math.PI * rpm);

/** Thickness of the chip of each of a drill's two lips, mm: f / 2 · sin(point angle / 2). */
export const drillChip = (feedMm: number, pointDeg: number): number => (feedMm / 2) * Math.sin(inRadians(pointDeg / 2));

/**
 * Mean thickness of a milling chip in mm: the feed of a tooth times the breadth of cut, spread over the arc in which the
 * tooth is at work, 2 fz ae / (D φ), where the cutter enters or leaves at the edge of the work.
 */
export function millingChip(toothFeedMm: number, breadthMm: number, cutterMm: number): number {
  const breadth = Math.min(breadthMm, cutterMm);
  const arc = Math.acos(1 - (2 * breadth) / cutterMm);
  return (2 * toothFeedMm * breadth) / (cutterMm * arc);
}

/** What the motor must give, kW, for a power at the edge: drives lose some of it on the way. */
export const motorPower = (powerKw: number, efficiency: number): number => powerKw / efficiency;
