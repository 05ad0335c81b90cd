import type { Suspect } from './drawing.ts';

export type Slip = Exclude<Suspect['slip'], undefined>;

const MM_PER_INCH = 25.4;

/**
 * A slip of the pen that turns what is written into what it would have to be, if one is recognised.
 * `inch-for-mm`: an inch figure taken for mm; `mm-for-inch`: the reverse; `diameter-for-radius`: one written for the other.
 * Which slips are common is *common practice, no source*.
 * @param reads the value as written, in mm.
 * @param wouldBe the value that would close everything, in mm.
 * @param perUnit mm per unit in which the number is written: 1 or 25.4.
 * @param nearMm how near is near enough.
 */
export function slipBetween(reads: number, wouldBe: number, perUnit: number, nearMm: number): Slip | undefined {
  const near = (candidate: number): boolean => Math.abs(candidate - wouldBe) <= nearMm;
  // Nothing can be told of figures that are all but the same, or nought.
  if (near(reads) || Math.abs(wouldBe) <= nearMm || reads === 0) return undefined;
  if (near(-reads)) return 'wrong-sign';
  if (near(reads * MM_PER_INCH)) return 'inch-for-mm';
  if (near(reads / MM_PER_INCH)) return 'mm-for-inch';
  if ([10, 0.1, 100, 0.01].some((factor) => near(reads * factor))) return 'decimal-point';
  if (swappedDigits(reads / perUnit).some((number) => near(number * perUnit))) return 'digits-swapped';
  if (near(reads * 2) || near(reads / 2)) return 'diameter-for-radius';
  return undefined;
}

/** The numbers that come of swapping two neighbouring digits of a number as people write it. */
function swappedDigits(number: number): number[] {
  const text = String(Math.round(number * 1e6) / 1e6);
  if (text.includes('e')) return [];
  const places = [...text].flatMap((character, i) => (character >= '0' && character <= '9' ? [i] : []));
  const found: number[] = [];
  for (let i = 1; i < places.length; i++) {
    const digits = [...text];
    const a = places[i - 1]!;
    const b = places[i]!;
    if (digits[a] === digits[b]) continue;
    [digits[a], digits[b]] = [digits[b]!, digits[a]!];
    found.push(Number(digits.join('')));
  }
  return found;
}
