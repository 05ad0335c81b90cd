import { err, ok } from '../base/result.ts';
import { codeAt, isDigit, isMinus, skipSpaces } from './characters.ts';
import { describeKind } from './describe-kind.ts';
import type { Kind, LengthUnit, ProblemOr, TextProblem } from './kind.ts';
import { literal, scanLiteral, startsLiteral } from './scan-literal.ts';
import { bareUnit, differenceToCanonical, inch, type Unit } from './units.ts';

/** What a value may stray by: `minus` ≤ `plus`, signed, in mm, deg, kg, °C or as a number. */
export interface Limits {
  readonly minus: number;
  readonly plus: number;
}

export interface LimitsOptions {
  readonly kind: Kind;
  /** The unit of lengths without one: that in which the value itself is written. */
  readonly unit: LengthUnit;
}

/** One side of the limits as read. */
interface Side {
  readonly number: number;
  readonly unit: Unit | undefined;
  readonly isFraction: boolean;
  readonly start: number;
  readonly end: number;
}

/** A tolerance class of ISO 286, alone or as a pair: `H7`, `js6`, `H7/g6`. */
const toleranceClass = /^\s*[A-Za-z]{1,2}\s?\d{1,2}(?:\s*\/\s*[A-Za-z]{1,2}\s?\d{1,2})?\s*$/;
const PLUS_MINUS = 0xb1;
const PLUS = 43;
const MAX_LENGTH = 200;

/**
 * Reads written limits: `±0.1`, `+-0.1`, `+0.2/-0`, `+0.02/+0.05`, `0/-0.1`, `±5 thou`, `+0.2 -0.1 mm`.
 *
 * A unit at one side only counts for both. The two come sorted.
 *
 * @returns undefined for an empty text: the general tolerance holds.
 */
export function parseLimits(text: string, options: LimitsOptions): ProblemOr<Limits | undefined> {
  const start = skipSpaces(text, 0);
  if (start === text.length) return ok(undefined);
  if (text.length > MAX_LENGTH) return err({ code: 'limits-too-long', start: MAX_LENGTH, end: text.length });
  if (toleranceClass.test(text)) return err({ code: 'class-not-yet', start, end: text.trimEnd().length });
  const symmetric = skipPlusMinus(text, start);
  return symmetric > start ? readSymmetric(text, symmetric, options) : readTwo(text, start, options);
}

/** `±`, `+-`, `+/-`, `-+`; returns `at` when there is none. */
function skipPlusMinus(text: string, at: number): number {
  const c = codeAt(text, at);
  if (c === PLUS_MINUS) return at + 1;
  const next = skipSpaces(text, text[at + 1] === '/' ? at + 2 : at + 1);
  const other = codeAt(text, next);
  return (c === PLUS && isMinus(other)) || (isMinus(c) && other === PLUS) ? next + 1 : at;
}

function readSymmetric(text: string, from: number, options: LimitsOptions): ProblemOr<Limits | undefined> {
  const side = readSide(text, skipSpaces(text, from), false);
  if (!side.ok) return side;
  const rest = skipSpaces(text, side.value.end);
  if (rest < text.length) return problem('limits-rest', rest, text.trimEnd().length, { text: text.slice(rest).trim() });
  const width = convert(side.value, side.value, options);
  return width.ok ? ok({ minus: 0 - width.value, plus: width.value }) : width;
}

function readTwo(text: string, from: number, options: LimitsOptions): ProblemOr<Limits | undefined> {
  const first = readSide(text, from, true);
  if (!first.ok) return first;
  let at = skipSpaces(text, first.value.end);
  if (text[at] === '/' || text[at] === ';' || text[at] === ',') at = skipSpaces(text, at + 1);
  if (at >= text.length) {
    const { start, end, number } = first.value;
    return problem('one-limit', start, end, { text: text.slice(start, end), number: Math.abs(number) });
  }
  const second = readSide(text, at, true);
  if (!second.ok) return second;
  const rest = skipSpaces(text, second.value.end);
  if (rest < text.length) return problem('limits-rest', rest, text.trimEnd().length, { text: text.slice(rest).trim() });
  const a = convert(first.value, second.value, options);
  if (!a.ok) return a;
  const b = convert(second.value, first.value, options);
  if (!b.ok) return b;
  return ok({ minus: Math.min(a.value, b.value), plus: Math.max(a.value, b.value) });
}

/** A number with its sign; only zero may go without. */
function readSide(text: string, from: number, signed: boolean): ProblemOr<Side> {
  let at = from;
  const sign = codeAt(text, at);
  const isNegative = isMinus(sign);
  const hasSign = isNegative || sign === PLUS;
  if (hasSign && signed) at = skipSpaces(text, at + 1);
  if (!startsLiteral(text, at)) {
    const rest = text.slice(from).trim();
    if (rest === '') return problem('limits-unfinished', skipSpaces(text, 0), text.length);
    return problem('limits-unreadable', from, text.trimEnd().length, { text: rest });
  }
  const end = scanLiteral(text, at, startsFraction(text, at) ? 'whole' : 'power', false);
  if (end < 0) return err(literal.problem!);
  if (signed && !hasSign && literal.number !== 0) {
    return problem('sign-missing', at, end, { text: text.slice(at, end) });
  }
  const { number, unit, isFraction } = literal;
  return ok({ number: isNegative ? -number : number, unit, isFraction, start: from, end });
}

/** Tells `1/64` from the stroke between two limits (`0/0.1`): a nought is no numerator, and a part follows no point. */
function startsFraction(text: string, at: number): boolean {
  if (codeAt(text, at) !== 48) return true;
  return isDigit(codeAt(text, at + 1));
}

/** The side in canonical units; where it has no unit it takes that of the other side, else that of the value. */
function convert(side: Side, other: Side, { kind, unit }: LimitsOptions): ProblemOr<number> {
  const own = side.unit ?? other.unit ?? (kind === 'length' && side.isFraction ? inch : bareUnit(kind, unit));
  const has = own === undefined ? 'number' : own.kind;
  if (has !== kind) {
    const data = { has: describeKind(has), want: describeKind(kind) };
    return problem('limits-wrong-kind', side.start, side.end, data);
  }
  const value = (own === undefined ? side.number : differenceToCanonical(side.number, own)) + 0;
  return Number.isFinite(value) && Math.abs(value) <= 1e12
    ? ok(value)
    : problem('limits-too-large', side.start, side.end);
}

const problem = (code: string, start: number, end: number, data?: TextProblem['data']): ProblemOr<never> =>
  err(data === undefined ? { code, start, end } : { code, start, end, data });
