import type { Offer } from './column.ts';

/** The name that is being written at the caret of a formula: a quoted one that is still open, or a run of name characters. */
export function nameAtCaret(
  text: string,
  caret: number,
): { readonly start: number; readonly typed: string } | undefined {
  const before = text.slice(0, caret);
  const quoted = openQuote(before);
  if (quoted !== undefined) return { start: quoted, typed: before.slice(quoted) };
  const word = /[A-Za-z][A-Za-z0-9_]*$/.exec(before);
  if (word === null) return undefined;
  const start = word.index;
  // `2 in` is a unit, not a name: a word straight after a number is left alone.
  return /\d\s*$/.test(before.slice(0, start)) ? undefined : { start, typed: word[0] };
}

/** Where a quotation mark stands that opens a name and is not closed; a mark straight after a digit is an inch mark. */
function openQuote(before: string): number | undefined {
  let open: number | undefined;
  for (let i = 0; i < before.length; i++) {
    if (before[i] !== '"') continue;
    if (open !== undefined) open = undefined;
    else if (!/\d/.test(before[i - 1] ?? '')) open = i;
  }
  return open;
}

/** Puts an offered name in the place of what is typed of it. */
export function takeName(text: string, caret: number, offer: Offer): { readonly text: string; readonly caret: number } {
  const name = nameAtCaret(text, caret);
  const start = name?.start ?? caret;
  const rest = text.slice(caret);
  return { text: text.slice(0, start) + offer.text + rest, caret: start + offer.text.length };
}
