import { formatNumber } from '../quantity/format.ts';
import type { LengthUnit } from '../quantity/kind.ts';

/** A speed of so many m/min as the build's system counts it: `30 m/min`, `98 ft/min`. */
export const speedWords = (speedMMin: number, unit: LengthUnit): string =>
  unit === 'in' ? `${formatNumber(speedMMin / 0.3048, 0)} ft/min` : `${figures(speedMMin)} m/min`;

/** Turns or strokes per minute, as near as a machine can be set. */
export const perMinute = (value: number): number => Math.round(value);

/** `0.55 kW`. */
export const powerWords = (kw: number): string => `${formatNumber(kw, 2)} kW`;

/** Three figures are what such reckoning is good for. */
export const figures = (value: number): string => formatNumber(value, value < 10 ? 1 : 0);
