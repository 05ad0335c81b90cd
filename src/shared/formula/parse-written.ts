import { err, ok } from '../base/result.ts';
import type { ProblemOr } from '../quantity/kind.ts';
import type { Written, WrittenOptions } from './written.ts';

/** Reads a written value: nothing, a plain quantity, or a formula whose names are still to be tied by `link`. */
export function parseWritten(text: string, options: WrittenOptions): ProblemOr<Written> {
  if (text.trim() === '') return ok({ is: 'empty' });
  const value = Number(text);
  if (Number.isNaN(value)) return err({ code: 'unreadable', start: 0, end: text.length });
  const isInch = options.kind === 'length' && options.lengthUnit === 'in';
  return ok({
    is: 'quantity',
    value: isInch ? value * 25.4 : value,
    unit: options.kind === 'length' ? options.lengthUnit : undefined,
  });
}
