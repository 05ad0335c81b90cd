import { ok } from '../base/result.ts';
import type { Kind, ProblemOr } from '../quantity/kind.ts';
import type { Formula, Program } from './written.ts';

export interface LinkOptions {
  /** What the cell measures. */
  readonly want: Kind;
  /** The result must be a whole number (a count). */
  readonly whole?: boolean;
}

/**
 * Checks the units of a formula once its names are tied.
 * @param kinds what each of `formula.references` measures, in the same order.
 */
export function link(formula: Formula, kinds: readonly Kind[], options: LinkOptions): ProblemOr<Program> {
  const { code, constants } = formula;
  return ok({ operands: kinds.length, code, constants, scale: 1, whole: options.whole === true });
}
