import type { Band } from '../../shared/drawing/drawing.ts';
import { formatQuantity } from '../../shared/quantity/format.ts';
import type { Kind, LengthUnit } from '../../shared/quantity/kind.ts';

/** A value with its unit in the build's own system, e.g. `12.7 mm`. */
export const show = (value: number, kind: Kind, unit: LengthUnit): string => formatQuantity(value, kind, { unit });

/** A length in inches, bare. */
export const bareInch = (valueMm: number): string => formatQuantity(valueMm, 'length', { unit: 'in', bare: true });

/** A length of a drawing, bare, in mm. */
export const bareMm = (valueMm: number): string => formatQuantity(valueMm, 'length', { unit: 'mm', bare: true });

const signed = (value: number, unit: LengthUnit): string =>
  `${value < 0 ? '−' : '+'}${formatQuantity(Math.abs(value), 'length', { unit, bare: true })}`;

/** A worst-case band as its two deviations: `±0.3 mm` or `+0.2/−0.1 mm`. */
export function showBand(band: Pick<Band, 'minus' | 'plus'>, unit: LengthUnit): string {
  if (Math.abs(band.minus + band.plus) < 1e-9) return `±${formatQuantity(band.plus, 'length', { unit })}`;
  return `${signed(band.plus, unit)}/${signed(band.minus, unit)} ${unit}`;
}
