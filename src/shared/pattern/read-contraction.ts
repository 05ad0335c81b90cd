import { err, ok, type Result } from '../base/result.ts';
import { parseWritten } from '../formula/parse-written.ts';

/** Beyond this, in percent, a text is a slip: no casting alloy contracts half as much. */
const MOST_PERCENT = 10;

const units: readonly (readonly [RegExp, percentPerUnit: number])[] = [
  [/\s*%$/, 1],
  [/\s*mm\s*\/\s*m$/i, 0.1],
  // A pattern-maker's rule: so many inches longer on each foot.
  [/\s*(?:in|"|″)\s*\/\s*(?:ft|foot|'|′)$/i, 100 / 12],
];

/**
 * A linear contraction as written: `1.3`, `1.3 %`, `13 mm/m`, `5/32 in/ft`.
 *
 * @returns percent; undefined where nothing is written; the text where it cannot be read, or lies outside 0 to 10 %.
 */
export function readContraction(text: string): Result<number | undefined, string> {
  const trimmed = text.trim();
  if (trimmed === '') return ok(undefined);
  const unit = units.find(([ending]) => ending.test(trimmed));
  const read = parseWritten(unit ? trimmed.replace(unit[0], '') : trimmed, { kind: 'number', lengthUnit: 'mm' });
  if (!read.ok || read.value.is !== 'quantity') return err(text);
  const percent = read.value.value * (unit?.[1] ?? 1);
  return percent >= 0 && percent <= MOST_PERCENT ? ok(percent) : err(text);
}
