/** Minutes of one pass along a length: t = (L + run-in + run-out) / (f n). Standard textbook form. */
export const passMinutes = (lengthMm: number, feedMm: number, rpm: number): number => lengthMm / (feedMm * rpm);

/**
 * Minutes to turn or bore a length in so many passes.
 *
 * @param runMm before and behind the cut together.
 */
export const turnMinutes = (lengthMm: number, runMm: number, feedMm: number, rpm: number, passes: number): number =>
  passes * passMinutes(lengthMm + runMm, feedMm, rpm);

/**
 * Minutes to face from one diameter in to another at one spindle speed.
 *
 * @param innerMm 0: to the centre.
 */
export const faceMinutes = (
  outerMm: number,
  innerMm: number,
  runMm: number,
  feedMm: number,
  rpm: number,
  passes: number,
): number => passes * passMinutes((outerMm - innerMm) / 2 + runMm, feedMm, rpm);

/** Height of a drill's point in mm: D / (2 tan(angle / 2)); 0.3 D at 118°. */
export const pointHeight = (diameterMm: number, pointDeg: number): number =>
  diameterMm / 2 / Math.tan((pointDeg * Math.PI) / 360);

/** Minutes to drill one hole to a full depth, with the point beyond it: t = (L + point + run-in) / (f n). */
export const drillMinutes = (
  depthMm: number,
  diameterMm: number,
  pointDeg: number,
  runMm: number,
  feedMm: number,
  rpm: number,
): number => passMinutes(depthMm + pointHeight(diameterMm, pointDeg) + runMm, feedMm, rpm);

/** Minutes to tap one hole, in and out again at the same speed: the feed is the pitch. */
export const tapMinutes = (depthMm: number, runMm: number, pitchMm: number, rpm: number): number =>
  2 * passMinutes(depthMm + runMm, pitchMm, rpm);

/**
 * Minutes to mill a length: the cutter runs in and out by its own diameter, so that all of the face is cut clean; beside
 * one another so many runs as the breadth asks for.
 *
 * @param feedMmMin table feed in mm/min.
 */
export const millMinutes = (
  lengthMm: number,
  cutterMm: number,
  feedMmMin: number,
  runs: number,
  passes: number,
): number => (passes * runs * (lengthMm + cutterMm)) / feedMmMin;

/** Minutes to shape or plane a breadth: t = B / (f N) for each pass, N double strokes per minute. */
export const strokesMinutes = (breadthMm: number, feedMm: number, perMinute: number, passes: number): number =>
  passes * passMinutes(breadthMm, feedMm, perMinute);

/**
 * Minutes to grind flat: the table goes over the length at its speed, and the wheel is fed across at every end.
 *
 * @param speedMMin of the table, m/min.
 * @param feedMm across the length, mm per single stroke.
 */
export const grindMinutes = (
  lengthMm: number,
  breadthMm: number,
  speedMMin: number,
  feedMm: number,
  passes: number,
): number => (passes * Math.ceil(breadthMm / feedMm) * lengthMm) / (1000 * speedMMin);

/** Minutes to saw through a face. */
export const sawMinutes = (areaMm2: number, rateMm2Min: number): number => areaMm2 / rateMm2Min;
