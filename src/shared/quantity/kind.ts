import type { Result } from '../base/result.ts';

/** What a written value measures. Computed in mm, degrees, kg, °C, or as a bare number. */
export type Kind = 'length' | 'angle' | 'mass' | 'temperature' | 'number';

/** The two systems lengths are written and shown in. */
export type LengthUnit = 'mm' | 'in';

/** What went wrong in a written text, and where. `code` is stable; wording lives in `messages.ts` of the room. */
export interface TextProblem {
  readonly code: string;
  /** Zero-based character range in the written text that the problem points at. */
  readonly start: number;
  readonly end: number;
  readonly data?: Readonly<Record<string, string | number>>;
}

/** An expected outcome of reading a text: a value, or what is wrong with it and where. */
export type ProblemOr<T> = Result<T, TextProblem>;
