import { err, ok } from '../base/result.ts';
import { codeAt, isLetter, isMinus, isSpace, skipName, skipSpaces } from '../quantity/characters.ts';
import type { Kind, LengthUnit, ProblemOr, TextProblem } from '../quantity/kind.ts';
import { literal, type Place, scanLiteral, startsLiteral } from '../quantity/scan-literal.ts';
import { toCanonical } from '../quantity/units.ts';
import { kinds } from './kinds.ts';
import { nameKey } from './name-key.ts';
import { nearestName } from './nearest-name.ts';
import {
  ADD,
  CONSTANT,
  DIVIDE,
  functions,
  MAX_DEPTH,
  MAX_LENGTH,
  MULTIPLY,
  NEGATE,
  OP_BITS,
  OP_MASK,
  OPERAND,
  POWER,
  packRange,
  rangeOfInstruction,
  STRIDE,
  SUBTRACT,
} from './op.ts';
import { isQuote, readQuoted } from './quoted.ts';
import type { Formula, Reference } from './written.ts';

/** One place in the text where a dimension is named. */
export interface Mention {
  readonly reference: Reference;
  readonly nameStart: number;
  readonly nameEnd: number;
  /** The part's name alone; both equal to `nameEnd` when no part is named. */
  readonly partStart: number;
  readonly partEnd: number;
}

// One reader at a time, so its state is kept here and its scratch space is used again: a new object, closure or array
// per formula would cost more than the reading itself.
let text = '';
let at = 0;
let lastEnd = 0;
let depth = 0;
let calls = 0;
let problem: TextProblem | undefined;
const references: Reference[] = [];
let referenceCount = 0;
let mentions: Mention[] | undefined;
const code: number[] = [];
let codeLength = 0;
// Begun with a number that is no integer, so that the engine keeps doubles in it, and in its slices.
const constants: number[] = [0.5];
let constantCount = 0;
const none: readonly never[] = [];

// How tightly each operation binds.
const SUM = 1;
const PRODUCT = 2;
const SIGN = 3;
const EXPONENT = 4;

/**
 * Reads a formula by operator precedence: `^` (to the right) before signs, before `*` and `/`, before `+` and `-`.
 *
 * @param collect filled with every mention of a dimension in order of the text, if given.
 */
export function parseFormula(written: string, lengthUnit: LengthUnit, collect?: Mention[]): ProblemOr<Formula> {
  if (written.length > MAX_LENGTH) {
    return err({ code: 'too-long', start: MAX_LENGTH, end: written.length, data: { most: MAX_LENGTH } });
  }
  text = written;
  at = 0;
  lastEnd = 0;
  depth = 0;
  calls = 0;
  problem = undefined;
  referenceCount = 0;
  mentions = collect;
  codeLength = 0;
  constantCount = 0;
  if (expression(0, 'free') && skipSpaces(text, at) < text.length) failAtRest();
  text = '';
  mentions = undefined;
  if (problem !== undefined) return err(problem);
  return ok({
    references: referenceCount === 0 ? none : references.slice(0, referenceCount),
    code: code.slice(0, codeLength),
    constants: constantCount === 0 ? none : constants.slice(0, constantCount),
    lengthUnit,
  });
}

function expression(least: number, place: Place): boolean {
  if (++depth > MAX_DEPTH) return fail('too-deep', at, text.length, { most: MAX_DEPTH });
  at = skipSpaces(text, at);
  const start = at;
  if (!operand(place)) return false;
  for (;;) {
    at = skipSpaces(text, at);
    let operation: number;
    let binding: number;
    let next: Place;
    switch (codeAt(text, at)) {
      case 43: // +
        operation = ADD;
        binding = SUM;
        next = 'free';
        break;
      case 45: // -
      case 0x2212: // minus sign
      case 0x2013: // en dash
        operation = SUBTRACT;
        binding = SUM;
        next = 'free';
        break;
      case 42: // *
      case 0xd7: // ×
      case 0xb7: // ·
        operation = MULTIPLY;
        binding = PRODUCT;
        next = 'times';
        break;
      case 47: // /
      case 0xf7: // ÷
        operation = DIVIDE;
        binding = PRODUCT;
        next = 'divide';
        break;
      case 94: // ^
        operation = POWER;
        binding = EXPONENT;
        next = 'power';
        break;
      default:
        depth--;
        return true;
    }
    if (binding <= least) {
      depth--;
      return true;
    }
    at++;
    // To the right for powers: 2^3^2 is 2^9. A sign may stand in an exponent: 2^-1.
    if (!expression(operation === POWER ? SIGN : binding, next)) return false;
    emit(operation, start, lastEnd);
  }
}

function operand(place: Place): boolean {
  const c = codeAt(text, at);
  if (startsLiteral(text, at)) return number(place);
  if (isLetter(c) || c === 95) return word();
  if (c === 40) return bracket();
  if (isQuote(c)) return quotedReference();
  if (c === 43 || isMinus(c)) return signed(place);
  if (at >= text.length) return fail('unfinished', lastEnd, text.length);
  return fail('unexpected', at, at + 1, { text: String.fromCodePoint(text.codePointAt(at)!) });
}

/** A row of signs, taken in a loop so that a thousand of them cost no depth. */
function signed(place: Place): boolean {
  const start = at;
  let isNegative = false;
  for (let c = codeAt(text, at); c === 43 || isMinus(c); c = codeAt(text, at)) {
    if (c !== 43) isNegative = !isNegative;
    at = skipSpaces(text, at + 1);
  }
  if (!expression(SIGN, place)) return false;
  if (isNegative) emit(NEGATE, start, lastEnd);
  return true;
}

function bracket(): boolean {
  const start = at;
  at++;
  const outerCalls = calls;
  calls = 0;
  if (!expression(0, 'free')) return false;
  calls = outerCalls;
  at = skipSpaces(text, at);
  if (codeAt(text, at) !== 41) return at >= text.length ? fail('unclosed-bracket', start, start + 1) : failAtRest();
  lastEnd = ++at;
  return true;
}

function number(place: Place): boolean {
  const start = at;
  const end = scanLiteral(text, at, place, calls > 0);
  if (end < 0) {
    problem = literal.problem;
    return false;
  }
  const { unit } = literal;
  // °F and K have another zero than °C: added or doubled they would give nonsense.
  if (unit !== undefined && unit.zero !== 0)
    return fail('scale-in-formula', start, end, { text: text.slice(start, end) });
  at = end;
  lastEnd = end;
  const value = unit === undefined ? literal.number : toCanonical(literal.number, unit);
  emitConstant(value, unit === undefined ? 'number' : unit.kind, start, end);
  return Number.isFinite(value) || fail('too-large', start, end);
}

/** A bare word: a function, `pi`, or the name of a dimension. */
function word(): boolean {
  const start = at;
  const end = skipName(text, at);
  const next = isSpace(codeAt(text, end)) ? skipSpaces(text, end) : end;
  if (codeAt(text, next) === 40) return call(start, end, next);
  if (end - start === 2 && text.slice(start, end).toLowerCase() === 'pi') {
    at = end;
    lastEnd = end;
    emitConstant(Math.PI, 'number', start, end);
    return true;
  }
  at = end;
  return reference(start, text.slice(start, end));
}

function call(start: number, nameEnd: number, open: number): boolean {
  const name = text.slice(start, nameEnd).toLowerCase();
  const shape = functions.get(name);
  if (shape === undefined) {
    const nearest = nearestName(name, functions.keys()) ?? '';
    return fail('unknown-function', start, nameEnd, { name: text.slice(start, nameEnd), nearest });
  }
  at = open + 1;
  const outerCalls = calls;
  calls = 1;
  let count = 0;
  let separator = 0;
  for (;;) {
    if (!expression(0, 'free')) return false;
    if (++count > 1 && shape.pair >= 0) emit(shape.pair, start, lastEnd);
    at = skipSpaces(text, at);
    const c = codeAt(text, at);
    if (c === 41) break;
    if (at >= text.length) return fail('unclosed-bracket', open, open + 1);
    if (c !== 44 && c !== 59) return failAtRest();
    // A comma beside a semicolon is most likely meant as a decimal comma.
    if (separator !== 0 && separator !== c) return fail('mixed-separators', start, at + 1);
    separator = c;
    at++;
  }
  lastEnd = ++at;
  calls = outerCalls;
  if (count < shape.least || count > shape.most) {
    return fail('argument-count', start, at, { name, least: shape.least, most: shape.most, count });
  }
  if (count === 1 && shape.single >= 0) emit(shape.single, start, at);
  if (count > 1) code[codeLength - 1] = packRange(start, at);
  return true;
}

function quotedReference(): boolean {
  const start = at;
  const name = readName();
  return name !== undefined && reference(start, name);
}

/** The dimension whose name has just been read, with its part if one is named. */
function reference(start: number, name: string): boolean {
  const nameEnd = at;
  let part: string | undefined;
  let partStart = nameEnd;
  const keyword = skipSpaces(text, at);
  if (isOf(keyword)) {
    at = skipSpaces(text, keyword + 2);
    partStart = at;
    const c = codeAt(text, at);
    if (!isLetter(c) && c !== 95 && !isQuote(c)) return fail('part-missing', keyword, keyword + 2, { name });
    part = readName();
    if (part === undefined) return false;
  }
  lastEnd = at;
  emit(OPERAND + (indexOfReference(name, part, start, at) << OP_BITS), start, at);
  mentions?.push({
    reference: { name, part, start, end: at },
    nameStart: start,
    nameEnd,
    partStart,
    partEnd: part === undefined ? nameEnd : at,
  });
  return true;
}

const isOf = (i: number): boolean =>
  (codeAt(text, i) | 32) === 111 && (codeAt(text, i + 1) | 32) === 102 && skipName(text, i) === i + 2;

/** A name, bare or in quotation marks, at the reading position. */
function readName(): string | undefined {
  if (!isQuote(codeAt(text, at))) {
    const end = skipName(text, at);
    const name = text.slice(at, end);
    at = end;
    return name;
  }
  const quoted = readQuoted(text, at);
  if (quoted === undefined) fail('unclosed-quote', at, text.length);
  else if (quoted.name === '') fail('empty-name', at, quoted.end);
  else {
    at = quoted.end;
    return quoted.name;
  }
  return undefined;
}

function indexOfReference(name: string, part: string | undefined, start: number, end: number): number {
  for (let i = 0; i < referenceCount; i++) {
    const known = references[i]!;
    if (sameName(known.name, name) && (known.part === part || sameName(known.part, part))) return i;
  }
  references[referenceCount] = { name, part, start, end };
  return referenceCount++;
}

const sameName = (a: string | undefined, b: string | undefined): boolean =>
  a === b || (a !== undefined && b !== undefined && nameKey(a) === nameKey(b));

function emit(operation: number, start: number, end: number): void {
  code[codeLength] = operation;
  code[codeLength + 1] = packRange(start, end);
  codeLength += STRIDE;
}

function emitConstant(value: number, kind: Kind, start: number, end: number): void {
  constants[constantCount] = value;
  emit(CONSTANT + (((constantCount << 3) + kinds.indexOf(kind)) << OP_BITS), start, end);
  constantCount++;
}

/** Something stands where an operator, a closing bracket or the end was due. */
function failAtRest(): false {
  at = skipSpaces(text, at);
  const c = codeAt(text, at);
  if (c === 41) return fail('unopened-bracket', at, at + 1);
  if (c === 44 || c === 59) return fail('stray-comma', at, at + 1);
  const last = code[codeLength - STRIDE]!;
  if (isQuote(c) && (last & OP_MASK) === CONSTANT) return fail('mark-apart', lastEnd, at + 1);
  const { start, end: endOfLast } = rangeOfInstruction(code, codeLength - STRIDE);
  if ((isLetter(c) || isQuote(c)) && (last & OP_MASK) === OPERAND && endOfLast === lastEnd) {
    const end = isLetter(c) ? skipName(text, at) : at + 1;
    return fail('name-needs-quotes', start, end, { text: text.slice(start, end) });
  }
  const end = isLetter(c) ? skipName(text, at) : at + 1;
  return fail('operator-expected', at, end, { text: text.slice(at, end) });
}

function fail(codeWord: string, start: number, end: number, data?: TextProblem['data']): false {
  problem = data === undefined ? { code: codeWord, start, end } : { code: codeWord, start, end, data };
  return false;
}
