import { isLetter, isNamePart } from '../quantity/characters.ts';
import { parseThread } from '../quantity/parse-thread.ts';
import { type Mention, parseFormula } from './parse-formula.ts';
import { isQuote, quote } from './quoted.ts';
import type { Reference, WrittenOptions } from './written.ts';

/** The new words for a reference. */
export interface NewName {
  readonly name: string;
  readonly part: string | undefined;
}

/**
 * Rewrites the names of dimensions and parts inside a written value; everything else stays to the letter. Names that
 * cannot stand bare are quoted. A text that holds no readable formula comes back as it is.
 *
 * @param rename asked once per mention, in order of the text; undefined leaves the mention as it is.
 * @param options as the value itself is read: in a cell of threads `M8` is no name.
 */
export function renameReferences(
  text: string,
  options: WrittenOptions,
  rename: (reference: Reference) => NewName | undefined,
): string {
  // `M8` names a thread there, even where a dimension has that name.
  if (options.thread === true && parseThread(text) !== undefined) return text;
  const mentions: Mention[] = [];
  if (!parseFormula(text, options.lengthUnit, mentions).ok) return text;
  let renamed = '';
  let kept = 0;
  for (const { reference, nameStart, nameEnd, partStart, partEnd } of mentions) {
    const next = rename(reference);
    if (next === undefined) continue;
    const { name, part } = reference;
    renamed += text.slice(kept, nameStart);
    renamed += next.name === name ? text.slice(nameStart, nameEnd) : write(next.name, text, nameStart);
    kept = nameEnd;
    if (next.part !== part) {
      if (next.part !== undefined) {
        renamed += part === undefined ? ' of ' : text.slice(nameEnd, partStart);
        renamed += write(next.part, text, partStart);
      }
      kept = partEnd;
    }
  }
  return renamed + text.slice(kept);
}

/** The name as it may stand in a formula; in quotation marks too where the old one stood in them. */
const write = (name: string, text: string, oldStart: number): string =>
  isBareName(name) && !isQuote(text.charCodeAt(oldStart)) ? name : quote(name);

/** Whether a name may stand in a formula without quotation marks. */
export function isBareName(name: string): boolean {
  const key = name.toLowerCase();
  if (key === 'pi' || key === 'of') return false;
  const first = name.charCodeAt(0);
  if (!isLetter(first) && first !== 95) return false;
  for (let i = 1; i < name.length; i++) if (!isNamePart(name.charCodeAt(i))) return false;
  return true;
}
