/** Names that a sentence lists before it only counts the rest. */
const LISTED = 5;

/** `a`, `a and b`, `a, b and c`, `a, b, c, d, e and 7 more`. */
export function listed(names: readonly string[]): string {
  const [first = '', ...rest] = names;
  if (rest.length === 0) return first;
  const shown = names.length > LISTED ? [...names.slice(0, LISTED), `${names.length - LISTED} more`] : names;
  return `${shown.slice(0, -1).join(', ')} and ${shown.at(-1)}`;
}

/** `1 station`, `4 stations`. */
export const counted = (count: number, noun: string): string => `${count} ${noun}${count === 1 ? '' : 's'}`;
