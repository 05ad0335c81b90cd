import { nameKey } from './name-key.ts';

/**
 * The known name most like a mistyped one, upper and lower case alike; undefined when none is near.
 *
 * Near means few slips of the keyboard (a letter too many, too few, wrong, or two swapped: Damerau-Levenshtein, each pair
 * swapped at most once): one for names up to three letters, two up to seven, else three. Failing that, the shortest known
 * name that begins with what was typed. Of equally near names the first by spelling is taken, whatever the order given.
 */
export function nearestName(name: string, names: Iterable<string>): string | undefined {
  const wanted = nameKey(name);
  if (wanted === '') return undefined;
  let best: string | undefined;
  let bestDistance = wanted.length <= 3 ? 1 : wanted.length <= 7 ? 2 : 3;
  let extended: string | undefined;
  for (const known of names) {
    const candidate = nameKey(known);
    const distance = editDistance(wanted, candidate, bestDistance);
    const isNearer = distance < bestDistance || (distance === bestDistance && (best === undefined || known < best));
    if (distance <= bestDistance && isNearer) {
      best = known;
      bestDistance = distance;
    }
    if (wanted.length >= 3 && candidate.startsWith(wanted) && isShorter(known, extended)) extended = known;
  }
  // Every letter replaced is no likeness.
  return best !== undefined && bestDistance < wanted.length ? best : extended;
}

const isShorter = (name: string, than: string | undefined): boolean =>
  than === undefined || name.length < than.length || (name.length === than.length && name < than);

// Three rows of the table of distances, wide enough for every name; longer texts are not compared.
const WIDEST = 256;
let previous = new Uint16Array(WIDEST + 1);
let current = new Uint16Array(WIDEST + 1);
let beforePrevious = new Uint16Array(WIDEST + 1);

/** @returns the number of slips between two texts, or `most + 1` as soon as it is sure to be more than `most`. */
export function editDistance(a: string, b: string, most: number): number {
  if (a === b) return 0;
  if (Math.abs(a.length - b.length) > most || a.length > WIDEST || b.length > WIDEST) return most + 1;
  for (let j = 0; j <= b.length; j++) previous[j] = j;
  for (let i = 1; i <= a.length; i++) {
    // Only a band about the diagonal can hold distances up to `most`.
    const first = Math.max(1, i - most);
    const last = Math.min(b.length, i + most);
    current[0] = i;
    if (first > 1) current[first - 1] = most + 1;
    let least = first === 1 ? i : most + 1;
    for (let j = first; j <= last; j++) {
      const cost = a.charCodeAt(i - 1) === b.charCodeAt(j - 1) ? 0 : 1;
      const above = j === i + most ? most + 1 : previous[j]! + 1;
      let distance = Math.min(above, current[j - 1]! + 1, previous[j - 1]! + cost);
      const isSwap =
        i > 1 && j > 1 && a.charCodeAt(i - 1) === b.charCodeAt(j - 2) && a.charCodeAt(i - 2) === b.charCodeAt(j - 1);
      if (isSwap) distance = Math.min(distance, beforePrevious[j - 2]! + 1);
      current[j] = distance;
      if (distance < least) least = distance;
    }
    if (least > most) return most + 1;
    [beforePrevious, previous, current] = [previous, current, beforePrevious];
  }
  return Math.min(previous[b.length]!, most + 1);
}
