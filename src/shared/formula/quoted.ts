import { codeAt } from '../quantity/characters.ts';

const DOUBLE = 34;
const SINGLE = 39;
const CURLY_DOUBLE = 0x201c;
const CURLY_SINGLE = 0x2018;

/** Opens a quoted name: `"`, `'`, or the curly marks of word processors. */
export const isQuote = (c: number): boolean => c === DOUBLE || c === SINGLE || c === CURLY_DOUBLE || c === CURLY_SINGLE;

/**
 * Reads the quoted name that begins at `from`. The mark itself, doubled, stands for one of it.
 * @returns the name without spaces at its ends and the position after the closing mark; undefined when it is not closed.
 */
export function readQuoted(text: string, from: number): { readonly name: string; readonly end: number } | undefined {
  const open = codeAt(text, from);
  const close = open === CURLY_DOUBLE ? '\u201d' : open === CURLY_SINGLE ? '\u2019' : text[from]!;
  let name = '';
  let start = from + 1;
  for (;;) {
    const mark = text.indexOf(close, start);
    if (mark < 0) return undefined;
    name += text.slice(start, mark);
    if (text[mark + 1] !== close) return { name: name.trim(), end: mark + 1 };
    name += close;
    start = mark + 2;
  }
}

/** The name in quotation marks, so that {@link readQuoted} gives it back. */
export function quote(name: string): string {
  if (!name.includes('"')) return `"${name}"`;
  if (!name.includes("'")) return `'${name}'`;
  return `"${name.replaceAll('"', '""')}"`;
}
