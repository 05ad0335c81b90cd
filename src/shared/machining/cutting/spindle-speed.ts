/**
 * Turns per minute at which an edge on a diameter runs at a cutting speed: n = 1000 v / (π D).
 *
 * @param speedMMin m/min.
 * @param diameterMm mm; of the work when it turns, of the tool when that does.
 */
export const spindleSpeed = (speedMMin: number, diameterMm: number): number =>
  (1000 * speedMMin) / (Math.PI * diameterMm);

/** The same in inches: n = 12 V / (π D), with V in feet per minute and D in inches. The shop says 4 V / D, 5 % more. */
export const spindleSpeedInch = (feetPerMinute: number, diameterInch: number): number =>
  (12 * feetPerMinute) / (Math.PI * diameterInch);

/** Cutting speed in m/min at a diameter in mm. */
export const surfaceSpeed = (rpm: number, diameterMm: number): number => (Math.PI * diameterMm * rpm) / 1000;

/** Feed speed in mm/min: of a drill or a lathe tool the feed in one turn, of a cutter that of a tooth times the teeth. */
export const feedSpeed = (rpm: number, feedMm: number, teeth = 1): number => rpm * feedMm * teeth;

/**
 * Double strokes per minute at which a tool cuts at a speed, when only a share of the time is spent cutting:
 * N = 1000 v share / L.
 */
export const strokesPerMinute = (speedMMin: number, strokeMm: number, cuttingShare: number): number =>
  (1000 * speedMMin * cuttingShare) / strokeMm;

/** Mean cutting speed in m/min of a stroke at so many double strokes per minute: v = N L / (1000 share). */
export const strokeSpeed = (perMinute: number, strokeMm: number, cuttingShare: number): number =>
  (perMinute * strokeMm) / (1000 * cuttingShare);
