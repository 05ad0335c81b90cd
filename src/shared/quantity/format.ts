import type { Kind, LengthUnit } from './kind.ts';

export interface FormatOptions {
  /** System that lengths are shown in; other kinds ignore it. */
  readonly unit: LengthUnit;
  /** Most decimals shown; the kind's usual number when left out (see `usualDecimals`). */
  readonly decimals?: number;
  /** Show the number alone, without its unit. */
  readonly bare?: boolean;
}

/** A quantity as the screen and the paper show it: `12.7 mm`, `0.5 in`, `30°`, `4`. */
export function formatQuantity(value: number, kind: Kind, options: FormatOptions): string {
  return `${value} ${kind}${options.unit}`;
}
