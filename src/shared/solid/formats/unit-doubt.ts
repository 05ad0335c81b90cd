import type { MeshUnit } from '../../build/solid.ts';

/** Millimetres to one of the unit; the inch is 25.4 mm exactly (international yard and pound agreement, 1959). */
export const mmPer: Readonly<Record<MeshUnit, number>> = { mm: 1, cm: 10, m: 1000, in: 25.4, ft: 304.8 };

/**
 * A solid may be a detail of its part, or stand a little over what is drawn of it so far, but beyond these the unit is
 * more likely to be wrong. Common practice, no source: the usual mistakes are factors of 10, 25.4 and 1000.
 */
const LARGEST_OF_PART = 4;
const SMALLEST_OF_PART = 1 / 20;

/** Where nothing of the part is drawn: what a home foundry makes lies well between. Common practice, no source. */
const SMALLEST_MM = 2;
const LARGEST_MM = 3000;

/** Units by how many files of parts are drawn in them. Common practice, no source. */
const likeliest: readonly MeshUnit[] = ['mm', 'in', 'cm', 'm', 'ft'];

/** Why a unit is doubted: the size that it gives, what that was held against, and a unit that would fit. */
export interface UnitDoubt {
  readonly sizeMm: number;
  /** The part's own greatest size; undefined when none is known. */
  readonly partMm: number | undefined;
  readonly better: MeshUnit | undefined;
}

/**
 * Holds the greatest size of a solid against the part that it is to be a body of.
 *
 * @param size the greatest size in the file's own numbers
 * @param unit what these are taken as
 * @param partMm the part's own greatest size, undefined when nothing of it is known
 * @returns undefined when the unit is plausible
 */
export function unitDoubt(size: number, unit: MeshUnit, partMm: number | undefined): UnitDoubt | undefined {
  const plausible = (mm: number): boolean =>
    partMm === undefined
      ? mm >= SMALLEST_MM && mm <= LARGEST_MM
      : mm <= partMm * LARGEST_OF_PART && mm >= partMm * SMALLEST_OF_PART;
  const sizeMm = size * mmPer[unit];
  if (plausible(sizeMm)) return undefined;
  const better = likeliest.find((candidate) => plausible(size * mmPer[candidate]));
  return { sizeMm, partMm, better };
}
