/** Between which masses a part of a make is believed. */
export interface MassLimits {
  readonly leastKg: number;
  readonly mostKg: number;
  /** What the greater figure means, in words that can follow "more than". */
  readonly most: string;
}

// Common practice, no source: they are there to catch a slip of the unit or the point, which is off by ten times and more.
const limits = {
  cast: { leastKg: 0.002, mostKg: 60, most: 'two people pour from one hand-held crucible' },
  stock: { leastKg: 0.0001, mostKg: 200, most: 'a small shop lifts onto its machines' },
} satisfies Readonly<Record<string, MassLimits>>;

/** The limits of what is poured, and of what is cut from stock. */
export const massLimits = (make: 'cast' | 'stock'): MassLimits => limits[make];
