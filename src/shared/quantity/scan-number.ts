import { isDigit, isSingleMark } from './characters.ts';
import type { TextProblem } from './kind.ts';

/** What the last successful scan read. One object for all: a large build scans hundreds of thousands of numbers. */
export const scanned: { value: number; integer: boolean; problem: TextProblem | undefined } = {
  value: 0,
  integer: false,
  problem: undefined,
};

// Every power of ten up to 10^22 is exact in float64, so digits / power is correctly rounded for up to 15 digits.
const powersOfTen = Array.from({ length: 16 }, (_, i) => 10 ** i);

const E_LOWER = 101;
const E_UPPER = 69;
const POINT = 46;
const COMMA = 44;

/**
 * Reads digits with a decimal point or comma, and an exponent as spreadsheets write it.
 *
 * @param commaSeparates true inside the brackets of a function, where a comma stands between values.
 * @returns the position after the number; `from` when none begins there; -1 with `scanned.problem` set when the number
 * could mean two things (a separator of thousands).
 */
export function scanNumber(text: string, from: number, commaSeparates: boolean): number {
  let i = from;
  let c = text.charCodeAt(i);
  let digits = 0;
  while (isDigit(c)) {
    digits = digits * 10 + c - 48;
    c = text.charCodeAt(++i);
  }
  const whole = i - from;
  let places = 0;
  let isInteger = true;
  if ((c === POINT || (c === COMMA && !commaSeparates && whole > 0)) && isDigit(text.charCodeAt(i + 1))) {
    isInteger = false;
    const isComma = c === COMMA;
    c = text.charCodeAt(++i);
    while (isDigit(c)) {
      digits = digits * 10 + c - 48;
      places++;
      c = text.charCodeAt(++i);
    }
    const another = (c === POINT || (c === COMMA && !commaSeparates)) && isDigit(text.charCodeAt(i + 1));
    const likeThousands = isComma && places === 3 && whole <= 3 && text.charCodeAt(from) !== 48;
    if (another || likeThousands) return refuseThousands(text, from, i);
  } else if (c === POINT && whole > 0) {
    isInteger = false;
    c = text.charCodeAt(++i);
  }
  if (i === from) return from;
  if (isSingleMark(c) && whole > 0 && isThreeDigits(text, i + 1)) return refuseThousands(text, from, i);
  const end = c === E_LOWER || c === E_UPPER ? skipExponent(text, i) : i;
  if (end > i) isInteger = false;
  scanned.value =
    end === i && whole + places <= 15 ? digits / powersOfTen[places]! : Number(text.slice(from, end).replace(',', '.'));
  scanned.integer = isInteger;
  return end;
}

/** Three digits and no fourth: the group of thousands. */
export const isThreeDigits = (text: string, at: number): boolean =>
  isDigit(text.charCodeAt(at)) &&
  isDigit(text.charCodeAt(at + 1)) &&
  isDigit(text.charCodeAt(at + 2)) &&
  !isDigit(text.charCodeAt(at + 3));

function skipExponent(text: string, at: number): number {
  let i = at + 1;
  const sign = text.charCodeAt(i);
  if (sign === 43 || sign === 45) i++;
  if (!isDigit(text.charCodeAt(i))) return at;
  while (isDigit(text.charCodeAt(i))) i++;
  return i;
}

function refuseThousands(text: string, from: number, reached: number): number {
  let end = reached;
  for (let c = text.charCodeAt(end); isDigit(c) || c === POINT || c === COMMA || isSingleMark(c); ) {
    c = text.charCodeAt(++end);
  }
  scanned.problem = thousandsProblem(text, from, end);
  return -1;
}

export function thousandsProblem(text: string, start: number, end: number): TextProblem {
  const written = text.slice(start, end);
  const plain = written.replace(/\D/g, '');
  return { code: 'thousands', start, end, data: { text: written, plain } };
}
