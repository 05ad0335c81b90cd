import { codeAt, isDigit, isDoubleMark, isLetter, isMinus, isSingleMark, skipName, skipSpaces } from './characters.ts';
import type { TextProblem } from './kind.ts';
import { isThreeDigits, scanNumber, scanned, thousandsProblem } from './scan-number.ts';
import { celsius, degree, fahrenheit, inch, minute, type Unit, unitNamed } from './units.ts';

/**
 * Where a number stands decides how `/` and `-` beside it are read.
 *
 * - `whole`: it is the whole text; `3/8` and `1-3/8` are fractions even without a unit.
 * - `free`: in a formula; `3/8 in` and `1-3/8 in`, written tight, are fractions; without a unit they are sums to do.
 * - `times`: after `*`; as free, but `2-3/8 in` takes three eighths away (`4 * 2-3/8 in`).
 * - `divide`: after `/`; `3/8 in` may mean two things there and is refused.
 * - `power`: after `^`; never a fraction.
 */
export type Place = 'whole' | 'free' | 'times' | 'divide' | 'power';

/** What the last successful scan read. One object for all, like `scanned`. */
export const literal: {
  number: number;
  unit: Unit | undefined;
  isFraction: boolean;
  problem: TextProblem | undefined;
} = { number: 0, unit: undefined, isFraction: false, problem: undefined };

const vulgar: ReadonlyMap<string, number> = new Map([
  ['½', 1 / 2],
  ['¼', 1 / 4],
  ['¾', 3 / 4],
  ['⅛', 1 / 8],
  ['⅜', 3 / 8],
  ['⅝', 5 / 8],
  ['⅞', 7 / 8],
]);

const SLASH = 47;
const POINT = 46;
const DEGREE_SIGN = 0xb0;

/** Does a number begin here? */
export function startsLiteral(text: string, at: number): boolean {
  const c = codeAt(text, at);
  if (isDigit(c)) return true;
  if (c === POINT) return isDigit(codeAt(text, at + 1));
  return c > 127 && vulgar.has(text[at]!);
}

/**
 * Reads a number with its unit, if it has one: `12`, `12.5 mm`, `1-3/8"`, `30°15'20"`.
 *
 * @returns the position after it with `literal` filled, or -1 with `literal.problem` set.
 */
export function scanLiteral(text: string, from: number, place: Place, commaSeparates: boolean): number {
  literal.unit = undefined;
  literal.isFraction = false;
  let end = scanNumber(text, from, commaSeparates);
  if (end < 0) {
    literal.problem = scanned.problem;
    return -1;
  }
  literal.number = end === from ? 0 : scanned.value;
  // The commonest of all: a bare number at the end of the text.
  if (end === text.length) return end;
  if (end === from || scanned.integer) {
    end = scanFraction(text, from, end, place);
    if (end < 0) return -1;
  } else if (isNumberAfterSpace(text, end)) {
    return fail('two-numbers', from, skipNumber(text, skipSpaces(text, end)));
  }
  return scanUnit(text, from, end, place);
}

/** Looks for the rest of `3/8`, `1-3/8`, `1 3/8`, `1½` behind an integer. Returns `end` itself when there is none. */
function scanFraction(text: string, from: number, end: number, place: Place): number {
  const integer = literal.number;
  const spaced = skipSpaces(text, end);
  const sign = codeAt(text, spaced);
  const known = sign > 127 ? vulgar.get(text[spaced]!) : undefined;
  if (known !== undefined) {
    if (place === 'power') return end;
    literal.number = integer + known;
    return finishMixed(text, from, spaced + 1, place);
  }
  if (spaced > end && isDigit(sign)) {
    const last = scanRatio(text, spaced, place);
    if (last > 0 && place !== 'power') {
      if (ratio.denominator === 0) return fail('zero-denominator', from, last);
      if (ratio.numerator >= ratio.denominator) return fail('fraction-improper', from, last);
      literal.number = integer + ratio.numerator / ratio.denominator;
      return finishMixed(text, from, last, place);
    }
    const stop = skipNumber(text, spaced);
    if (!isThreeDigits(text, spaced)) return fail('two-numbers', from, stop);
    literal.problem = thousandsProblem(text, from, stop);
    return -1;
  }
  if (place === 'power') return end;
  if (isMinus(sign) && spaced === end && (place === 'whole' || place === 'free')) {
    const last = scanRatio(text, end + 1, place);
    const isMixed = last > 0 && ratio.numerator > 0 && ratio.numerator < ratio.denominator;
    if (!isMixed || (place === 'free' && !unitFollows(text, last))) return end;
    literal.number = integer + ratio.numerator / ratio.denominator;
    literal.isFraction = true;
    return last;
  }
  if (sign !== SLASH) return end;
  const last = scanRatio(text, from, place);
  if (last < 0 || (place !== 'whole' && !unitFollows(text, last))) return end;
  if (place === 'divide') return fail('ambiguous-fraction', from, last);
  if (ratio.denominator === 0) return fail('zero-denominator', from, last);
  literal.number = ratio.numerator / ratio.denominator;
  literal.isFraction = true;
  return last;
}

/** Inside a formula a mixed number without a unit would be a trap: `1 3/8` is inches in a cell of its own. */
function finishMixed(text: string, from: number, end: number, place: Place): number {
  literal.isFraction = true;
  if (place === 'divide' && unitFollows(text, end)) return end;
  if (place !== 'whole' && !unitFollows(text, end)) {
    return fail('mixed-needs-unit', from, end, { text: text.slice(from, end) });
  }
  return end;
}

const ratio = { numerator: 0, denominator: 0 };

/**
 * Reads `3/8`: two plain integers. Returns -1 when there is something else. Spaces about the stroke make it a division
 * (`2 / 3 mm * bore`), unless the fraction is the whole text.
 */
function scanRatio(text: string, from: number, place: Place): number {
  const slash = skipDigits(text, from);
  if (slash === from) return -1;
  const isAlone = place === 'whole';
  const stroke = isAlone ? skipSpaces(text, slash) : slash;
  if (codeAt(text, stroke) !== SLASH) return -1;
  const below = isAlone ? skipSpaces(text, stroke + 1) : stroke + 1;
  const end = skipDigits(text, below);
  if (end === below || end - from > 60) return -1;
  const next = codeAt(text, end);
  if ((next === POINT || next === 44) && isDigit(codeAt(text, end + 1))) return -1;
  ratio.numerator = Number(text.slice(from, slash));
  ratio.denominator = Number(text.slice(below, end));
  return end;
}

function skipDigits(text: string, from: number): number {
  let i = from;
  while (isDigit(codeAt(text, i))) i++;
  return i;
}

function skipNumber(text: string, from: number): number {
  const i = skipDigits(text, from);
  return codeAt(text, i) === POINT ? skipDigits(text, i + 1) : i;
}

const isNumberAfterSpace = (text: string, end: number): boolean => {
  const next = skipSpaces(text, end);
  return next > end && isDigit(codeAt(text, next));
};

function unitFollows(text: string, end: number): boolean {
  const tight = codeAt(text, end);
  if (isDoubleMark(tight) || isSingleMark(tight)) return true;
  const at = skipSpaces(text, end);
  const c = codeAt(text, at);
  return c === DEGREE_SIGN || (isLetter(c) && unitNamed(text.slice(at, skipName(text, at))) !== undefined);
}

function scanUnit(text: string, from: number, numberEnd: number, place: Place): number {
  const tight = codeAt(text, numberEnd);
  let end: number;
  if (isDoubleMark(tight)) {
    literal.unit = inch;
    end = numberEnd + 1;
  } else if (isSingleMark(tight)) {
    literal.unit = minute;
    end = numberEnd + 1;
  } else {
    const at = skipSpaces(text, numberEnd);
    const c = codeAt(text, at);
    if (c === DEGREE_SIGN) {
      end = scanDegreeSign(text, at);
    } else if (isLetter(c)) {
      end = skipName(text, at);
      literal.unit = unitNamed(text.slice(at, end));
      if (literal.unit === undefined) {
        return fail('unknown-unit', at, end, { text: text.slice(at, end), number: text.slice(from, numberEnd) });
      }
      // "in." as an abbreviation, but not the point of a following number.
      if (literal.unit === inch && codeAt(text, end) === POINT && !isDigit(codeAt(text, end + 1))) end++;
    } else {
      return numberEnd;
    }
  }
  if (literal.unit === degree) {
    end = scanMinutes(text, end);
    if (end < 0) return -1;
  }
  const power = codeAt(text, skipSpaces(text, end));
  if (place !== 'whole' && (power === 94 || power === 0xb2 || power === 0xb3)) {
    return fail('power-of-unit', from, end + 1, { text: text.slice(from, end) });
  }
  return end;
}

/** `°`, `°C` or `°F`. */
function scanDegreeSign(text: string, at: number): number {
  const letter = codeAt(text, at + 1) & ~32;
  const isWord = isLetter(codeAt(text, at + 2)) || isDigit(codeAt(text, at + 2));
  const scale = letter === 67 ? celsius : letter === 70 ? fahrenheit : undefined;
  literal.unit = scale !== undefined && !isWord ? scale : degree;
  return literal.unit === degree ? at + 1 : at + 2;
}

/** The minutes and seconds behind degrees. */
function scanMinutes(text: string, degreesEnd: number): number {
  let end = degreesEnd;
  const degrees = literal.number;
  let per = 60;
  for (let at = skipSpaces(text, end); isDigit(codeAt(text, at)); at = skipSpaces(text, end)) {
    const numberEnd = skipNumber(text, at);
    const mark = codeAt(text, numberEnd);
    const isSeconds = isDoubleMark(mark) || (isSingleMark(mark) && isSingleMark(codeAt(text, numberEnd + 1)));
    if (isSeconds) per = 3600;
    else if (!isSingleMark(mark) || per !== 60) return end;
    const part = Number(text.slice(at, numberEnd));
    if (part >= 60) return fail('sixty', at, numberEnd + 1, { value: part });
    literal.number += part / per;
    end = numberEnd + (isDoubleMark(mark) || !isSeconds ? 1 : 2);
    if (isSeconds) break;
    per = 3600;
  }
  if (end > degreesEnd && degrees !== Math.trunc(degrees)) return fail('degrees-not-whole', degreesEnd, end);
  return end;
}

function fail(code: string, start: number, end: number, data?: TextProblem['data']): number {
  literal.problem = data === undefined ? { code, start, end } : { code, start, end, data };
  return -1;
}
