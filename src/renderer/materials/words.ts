import type { CuttingGroup } from '../../shared/tables/cutting-metals.ts';

/** The main groups of ISO 513. */
export const groupWords: Readonly<Record<CuttingGroup, string>> = {
  P: 'steel',
  M: 'stainless steel',
  K: 'cast iron',
  N: 'non-ferrous metal',
};

export const statusWords = { own: 'own', read: 'read', 'from memory': 'from memory' } as const;

const NAMED = 6;

/** `base, ram and yoke`; of many the first few. */
export function listedNames(names: readonly string[]): string {
  if (names.length > NAMED) return `${names.slice(0, NAMED).join(', ')} and ${names.length - NAMED} more`;
  return names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}

/** What becomes of the parts that name a material when the build's own row of it is gone. */
export function removedWords(name: string, usedBy: readonly string[], isInTable: boolean): string {
  if (usedBy.length === 0) return `${name} is removed.`;
  const who = `${listedNames(usedBy)} ${usedBy.length === 1 ? 'is' : 'are'}`;
  return isInTable
    ? `${name} is removed; ${who} held to the row of the table now.`
    : `${name} is removed; ${who} still said to be made of it, and nothing is known of it now.`;
}
