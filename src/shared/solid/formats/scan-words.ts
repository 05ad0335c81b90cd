/** Words of a text that is still in bytes, and the line that each stands on: a large file never becomes one string. */
export interface WordScanner {
  /** The next word, across line ends; undefined at the end. */
  next(): string | undefined;
  /** The next word of this line; undefined when the line has no more. A `\` before a line end joins the two lines. */
  nextOfLine(): string | undefined;
  /** Goes to the beginning of the next line. @returns whether there is one. */
  nextLine(): boolean;
  /** The line that the last word stood on, counted from 1. */
  line(): number;
}

const LINE_FEED = 10;
const RETURN = 13;
const BACKSLASH = 92;
/** No number and no key word is longer; the rest of a longer word is left out. */
const LONGEST_WORD = 64;

const isBlank = (byte: number): boolean => byte === 32 || byte === 9 || byte === 11 || byte === 12;
const isLineEnd = (byte: number): boolean => byte === LINE_FEED || byte === RETURN;

export function scanWords(bytes: Uint8Array): WordScanner {
  // A byte order mark of UTF-8 is no part of the first word.
  let at = bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf ? 3 : 0;
  let line = 1;

  const passLineEnd = (): void => {
    if (bytes[at] === RETURN && bytes[at + 1] === LINE_FEED) at++;
    at++;
    line++;
  };
  const word = (): string => {
    const from = at;
    while (at < bytes.length && !isBlank(bytes[at]!) && !isLineEnd(bytes[at]!)) at++;
    return String.fromCharCode(...bytes.subarray(from, Math.min(at, from + LONGEST_WORD)));
  };
  return {
    next() {
      while (at < bytes.length) {
        if (isBlank(bytes[at]!)) at++;
        else if (isLineEnd(bytes[at]!)) passLineEnd();
        else return word();
      }
      return undefined;
    },
    nextOfLine() {
      while (at < bytes.length) {
        const byte = bytes[at]!;
        if (isBlank(byte)) at++;
        else if (byte === BACKSLASH && at + 1 < bytes.length && isLineEnd(bytes[at + 1]!)) {
          at++;
          passLineEnd();
        } else return isLineEnd(byte) ? undefined : word();
      }
      return undefined;
    },
    nextLine() {
      while (at < bytes.length && !isLineEnd(bytes[at]!)) at++;
      if (at < bytes.length) passLineEnd();
      return at < bytes.length;
    },
    line: () => line,
  };
}

const NUMBER = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?$/;

/** A finite decimal number, or undefined: hexadecimal, commas and words are none. */
export function readNumber(word: string | undefined): number | undefined {
  if (word === undefined || !NUMBER.test(word)) return undefined;
  const value = Number(word);
  return Number.isFinite(value) ? value : undefined;
}
