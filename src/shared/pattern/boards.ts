import type { Casting } from '../build/casting.ts';
import type { Reading } from '../plan/amounts.ts';
import type { PatternUnknown } from './pattern-unknown.ts';

/** Boards of one kind in stock. */
export interface Board {
  /** Place in the casting's list. */
  readonly index: number;
  readonly name: string;
  readonly thicknessMm: number;
  /** The longer side first. */
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly count: number;
}

/** The boards in stock, the thickest first; one whose size is not said, or none of which is left, is not among them. */
export function readBoards(
  { boards }: Pick<Casting, 'boards'>,
  reading: Reading,
): { readonly boards: readonly Board[]; readonly unknown: readonly PatternUnknown[] } {
  const unknown: PatternUnknown[] = [];
  const known = boards.flatMap(({ name, thickness, length, width, count }, index): readonly Board[] => {
    const sizes = Object.entries({ thickness, length, width }).map(([key, text]) => {
      const field = `boards/${index}/${key}`;
      const read = reading.plain(text, field);
      if (!read.ok) unknown.push(read.error);
      else if (read.value === undefined) unknown.push({ is: 'field', field });
      else if (!(read.value > 0)) unknown.push({ is: 'written', field, text });
      else return read.value;
      return undefined;
    });
    const [thicknessMm, a, b] = sizes;
    if (thicknessMm === undefined || a === undefined || b === undefined || count === 0) return [];
    return [{ index, name, thicknessMm, lengthMm: Math.max(a, b), widthMm: Math.min(a, b), count }];
  });
  return { boards: [...known].sort((a, b) => b.thicknessMm - a.thicknessMm || a.index - b.index), unknown };
}
