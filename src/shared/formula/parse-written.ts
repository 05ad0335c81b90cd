import { err, ok } from '../base/result.ts';
import { codeAt, isMinus, skipSpaces } from '../quantity/characters.ts';
import { describeKind } from '../quantity/describe-kind.ts';
import type { LengthUnit, ProblemOr, TextProblem } from '../quantity/kind.ts';
import { parseThread } from '../quantity/parse-thread.ts';
import { literal, scanLiteral, startsLiteral } from '../quantity/scan-literal.ts';
import { bareUnit, inch, toCanonical, type Unit } from '../quantity/units.ts';
import { LARGEST_VALUE, wholeOrNaN } from './arithmetic.ts';
import { parseFormula } from './parse-formula.ts';
import type { Formula, Written, WrittenOptions } from './written.ts';

const empty: ProblemOr<Written> = ok({ is: 'empty' });

/**
 * Reads a written value: nothing, a plain quantity, or a formula whose names are still to be tied by `link`.
 *
 * A number without a unit takes the cell's own (mm or in, degrees, kg, °C); a fraction without a unit, alone in a cell of
 * lengths, is inches.
 *
 * @param known formulas by their text, read from and added to: a caller who reads many texts reads a formula once.
 */
export function parseWritten(text: string, options: WrittenOptions, known?: Map<string, Formula>): ProblemOr<Written> {
  const start = skipSpaces(text, 0);
  if (start === text.length) return empty;
  const thread = options.thread === true ? parseThread(text) : undefined;
  if (thread !== undefined) {
    return thread.ok ? ok({ is: 'quantity', value: thread.value.majorMm, unit: thread.value.system }) : thread;
  }
  return readPlain(text, start, options) ?? readFormula(text, options, known);
}

/** What the last successful {@link scanQuantity} read. One object for all, like `literal`. */
export const quantity: { value: number; unit: LengthUnit | undefined } = { value: 0, unit: undefined };

/**
 * Reads a plain quantity into `quantity`, and makes nothing else: of a large build most texts are such.
 * @returns false for any other text, threads and quantities of the wrong kind included: `parseWritten` tells about those.
 */
export function scanQuantity(text: string, options: WrittenOptions): boolean {
  if (options.thread === true) return false;
  const start = skipSpaces(text, 0);
  const end = start < text.length ? scanWhole(text, start) : -1;
  if (end < 0) return false;
  const unit = literal.unit ?? bareUnitOf(options);
  if ((unit === undefined ? 'number' : unit.kind) !== options.kind) return false;
  takeQuantity(unit, options);
  return checkValue(quantity.value, start, end, options) === undefined;
}

let isNegative = false;

/** Scans a literal with its sign, if it fills the whole text. @returns its end, or -1 when there is something else. */
function scanWhole(text: string, start: number): number {
  const first = codeAt(text, start);
  isNegative = isMinus(first);
  const at = isNegative || first === 43 ? skipSpaces(text, start + 1) : start;
  if (!startsLiteral(text, at)) return -1;
  const end = scanLiteral(text, at, 'whole', false);
  return end < text.length && (end < 0 || skipSpaces(text, end) < text.length) ? -1 : end;
}

function takeQuantity(unit: Unit | undefined, options: WrittenOptions): void {
  const number = isNegative ? -literal.number : literal.number;
  // Adding 0 turns -0 into 0.
  const value = (unit === undefined ? number : toCanonical(number, unit)) + 0;
  const whole = options.whole === true ? wholeOrNaN(value) : value;
  quantity.value = Number.isNaN(whole) ? value : whole;
  quantity.unit = unit?.system;
}

/** A quantity that fills the whole text; undefined when there is more to it. */
function readPlain(text: string, start: number, options: WrittenOptions): ProblemOr<Written> | undefined {
  const end = scanWhole(text, start);
  if (end < 0) return undefined;
  if (options.thread === true) return err({ code: 'thread-without-pitch', start, end, data: { text: text.trim() } });
  const unit = literal.unit ?? bareUnitOf(options);
  const kind = unit === undefined ? 'number' : unit.kind;
  if (kind !== options.kind) {
    return err({
      code: 'wrong-kind',
      start,
      end,
      data: { has: describeKind(kind), want: describeKind(options.kind), text: text.slice(start, end) },
    });
  }
  takeQuantity(unit, options);
  const problem = checkValue(quantity.value, start, end, options);
  if (problem !== undefined) return err(problem);
  return ok({ is: 'quantity', value: quantity.value, unit: quantity.unit });
}

const bareUnitOf = ({ kind, lengthUnit }: WrittenOptions) =>
  kind === 'length' && literal.isFraction ? inch : bareUnit(kind, lengthUnit);

function checkValue(value: number, start: number, end: number, options: WrittenOptions): TextProblem | undefined {
  if (!(Math.abs(value) <= LARGEST_VALUE)) return { code: 'too-large', start, end };
  if (options.whole === true && Number.isNaN(wholeOrNaN(value))) {
    return { code: 'not-whole', start, end, data: { value } };
  }
  return undefined;
}

function readFormula(text: string, { lengthUnit }: WrittenOptions, known?: Map<string, Formula>): ProblemOr<Written> {
  const before = known?.get(text);
  if (before !== undefined && before.lengthUnit === lengthUnit) return ok({ is: 'formula', formula: before });
  const formula = parseFormula(text, lengthUnit);
  if (!formula.ok) return formula;
  known?.set(text, formula.value);
  return ok({ is: 'formula', formula: formula.value });
}
