// Classes of characters by code unit. Written out by hand: reading is the larger part of opening a big build.

/**
 * The code unit at a place, -1 behind the end. The engine makes the fastest code for reads that stay inside a text, and
 * throws it away at the first that does not.
 */
export const codeAt = (text: string, at: number): number => (at < text.length ? text.charCodeAt(at) : -1);

export const isDigit = (c: number): boolean => c >= 48 && c <= 57;

/** Spaces of any kind that people and spreadsheets put into numbers: plain, no-break, thin, tab, line end. */
export const isSpace = (c: number): boolean =>
  c === 32 || (c >= 9 && c <= 13) || c === 0xa0 || (c >= 0x2000 && c <= 0x200a) || c === 0x202f || c === 0xfeff;

const otherLetter = /^\p{L}$/u;

/** A letter of any script. A lone half of a surrogate pair is none: such names are written in quotation marks. */
export const isLetter = (c: number): boolean =>
  (c >= 97 && c <= 122) || (c >= 65 && c <= 90) || (c > 127 && otherLetter.test(String.fromCharCode(c)));

/** May stand inside a bare name after its first letter. */
export const isNamePart = (c: number): boolean => isLetter(c) || isDigit(c) || c === 95;

export function skipSpaces(text: string, from: number): number {
  let i = from;
  while (i < text.length && isSpace(text.charCodeAt(i))) i++;
  return i;
}

/** End of the bare name that begins at `from`. */
export function skipName(text: string, from: number): number {
  let i = from;
  while (i < text.length && isNamePart(text.charCodeAt(i))) i++;
  return i;
}

/** Inch mark or second mark: `"`, `″`, `”`. */
export const isDoubleMark = (c: number): boolean => c === 34 || c === 0x2033 || c === 0x201d;

/** Minute mark: `'`, `′`, `’`. */
export const isSingleMark = (c: number): boolean => c === 39 || c === 0x2032 || c === 0x2019;

/** `-`, the minus sign, and the en dash that word processors put in its place. */
export const isMinus = (c: number): boolean => c === 45 || c === 0x2212 || c === 0x2013;
