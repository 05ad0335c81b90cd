import { codeAt, isDigit, isSingleMark } from './characters.ts';
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
  let c = codeAt(text, i);
  let digits = 0;
  while (isDigit(c)) {
    digits = digits * 10 + c - 48;
    c = codeAt(text, ++i);
  }
  const whole = i - from;
  let places = 0;
  let isInteger = true;
  if ((c === POINT || (c === COMMA && !commaSeparates && whole > 0)) && isDigit(codeAt(text, i + 1))) {
    isInteger = false;
    const isComma = c === COMMA;
    c = codeAt(text, ++i);
    while (isDigit(c)) {
      digits = digits * 10 + c - 48;
      places++;
      c = codeAt(text, ++i);
    }
    const another = (c === POINT || (c === COMMA && !commaSeparates)) && isDigit(codeAt(text, i + 1));
    const likeThousands = isComma && places === 3 && whole <= 3 && codeAt(text, from) !== 48;
    if (another || likeThousands) return refuseThousands(text, from, i);
  } else if (c === POINT && whole > 0) {
    isInteger = false;
    c = codeAt(text, ++i);
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
  isDigit(codeAt(text, at)) &&
  isDigit(codeAt(text, at + 1)) &&
  isDigit(codeAt(text, at + 2)) &&
  !isDigit(codeAt(text, at + 3));

function skipExponent(text: string, at: number): number {
  let i = at + 1;
  const sign = codeAt(text, i);
  if (sign === 43 || sign === 45) i++;
  if (!isDigit(codeAt(text, i))) return at;
  while (isDigit(codeAt(text, i))) i++;
  return i;
}

function refuseThousands(text: string, from: number, reached: number): number {
  let end = reached;
  for (let c = codeAt(text, end); isDigit(c) || c === POINT || c === COMMA || isSingleMark(c); ) {
    c = codeAt(text, ++end);
  }
  scanned.problem = thousandsProblem(text, from, end);
  return -1;
}

export function thousandsProblem(text: string, start: number, end: number): TextProblem {
  const written = text.slice(start, end);
  const plain = written.replace(/\D/g, '');
  return { code: 'thousands', start, end, data: { text: written, plain } };
}
