import { err, ok, type Result } from '../base/result.ts';
import type { Kind, LengthUnit } from '../quantity/kind.ts';
import { parseLimits } from '../quantity/parse-limits.ts';

/** Limits as two columns of a table hold them. */
export interface LimitColumns {
  readonly plus: string;
  readonly minus: string;
}

const BOTH_WAYS = /^\s*(?:±|\+-|\+\/-)\s*(.+?)\s*$/;
const TWO = /^\s*([+\-−]?[^/]+?)\s*\/\s*([+\-−]?[^/]+?)\s*$/;
const SIGN = /^[+\-−]/;

/**
 * Parts written limits into the larger and the smaller: `±0.1` into `+0.1` and `-0.1`. A text that is neither one figure
 * both ways nor two with a stroke between them stands whole under "plus".
 */
export function limitsToColumns(limits: string): LimitColumns {
  const same = BOTH_WAYS.exec(limits)?.[1];
  if (same) return { plus: `+${same}`, minus: `-${same}` };
  const [, first = '', second = ''] = TWO.exec(limits) ?? [];
  if (first === '' || second === '') return { plus: limits, minus: '' };
  const isTurned = Number.parseFloat(first.replace('−', '-')) < Number.parseFloat(second.replace('−', '-'));
  return isTurned ? { plus: second, minus: first } : { plus: first, minus: second };
}

/**
 * Joins the two columns into limits as one writes them. A figure without a sign is above under "plus" and below under
 * "minus". Limits written whole (`±0.1`, `+0.2/-0`) may stand under "plus" alone.
 * @returns undefined when both are empty; a refusal when one figure stands alone.
 */
export function limitsFromColumns({ plus, minus }: LimitColumns): Result<string | undefined, 'one-limit'> {
  const above = plus.trim();
  const below = minus.trim();
  if (above === '' && below === '') return ok(undefined);
  if (below === '') return /^\s*(?:±|\+-|\+\/-)|\//.test(above) ? ok(above) : err('one-limit');
  if (above === '') return err('one-limit');
  const upper = SIGN.test(above) ? above : `+${above}`;
  const lower = SIGN.test(below) ? below : `-${below}`;
  if (upper.startsWith('+') && !lower.startsWith('+') && upper.slice(1) === lower.slice(1))
    return ok(`±${upper.slice(1)}`);
  return ok(`${upper}/${lower}`);
}

/** Whether two texts of limits allow the same, however they are written. */
export function sameLimits(a: string, b: string, kind: Kind, unit: LengthUnit): boolean {
  if (a.trim() === b.trim()) return true;
  const left = parseLimits(a, { kind, unit });
  const right = parseLimits(b, { kind, unit });
  if (!left.ok || !right.ok) return false;
  return left.value?.minus === right.value?.minus && left.value?.plus === right.value?.plus;
}
