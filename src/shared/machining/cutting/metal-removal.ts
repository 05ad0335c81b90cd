/**
 * Metal removed by turning, mm³/min: the mean circumference times depth, feed and speed, π (D − d) d f n.
 *
 * @param diameterMm before the cut; of a bore after it.
 */
export const turningRemoval = (diameterMm: number, depthMm: number, feedMm: number, rpm: number): number =>
  Math.PI * (diameterMm - depthMm) * depthMm * feedMm * rpm;

/** By drilling into the solid, or opening a hole of `fromMm`: mm³/min. */
export const drillingRemoval = (diameterMm: number, fromMm: number, feedMm: number, rpm: number): number =>
  (Math.PI / 4) * (diameterMm ** 2 - fromMm ** 2) * feedMm * rpm;

/** By milling: depth times breadth times table feed, mm³/min. */
export const millingRemoval = (depthMm: number, breadthMm: number, feedMmMin: number): number =>
  depthMm * breadthMm * feedMmMin;
