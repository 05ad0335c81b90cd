import type { RowStatus } from './row.ts';

/** How thin a wall of a metal can be cast in sand. */
export interface MinimumWall {
  /** What the metal is called in a sentence. */
  readonly metal: string;
  readonly leastMm: number;
  /** Where the figure comes from, in words. */
  readonly source: string;
  readonly status: RowStatus;
}

const practice = 'common practice for small sand castings, from memory';

// The lower ends of the ranges that are given; longer runs of metal need more. Order matters: an aluminium bronze is a bronze.
const rows: readonly (MinimumWall & { readonly called: RegExp })[] = [
  {
    metal: 'bronze or brass',
    called: /bronze|gun ?metal|brass|\bCu|\bCC\d{3}|\bC[89]\d{4}\b|\bC36000\b/i,
    leastMm: 2.5,
    source: `${practice}: 2.5 to 5 mm`,
    status: 'from memory',
  },
  {
    metal: 'zinc alloy',
    called: /zinc|\bZA-?\d|\bZP\d|\bZn/i,
    leastMm: 2.5,
    source: `${practice}: 2.5 to 3 mm`,
    status: 'from memory',
  },
  {
    metal: 'cast iron',
    called: /\biron\b|\bGJ[LS]\b|\bGGG?\d/i,
    leastMm: 3,
    source: `${practice}: 3 to 6 mm, and thin iron chills hard`,
    status: 'from memory',
  },
  {
    metal: 'aluminium',
    called: /alumin|\bAl ?Si|\bAC-4\d{4}|\bLM ?\d|^A?(208|242|295|319|35[67])(\.0)?(-T\d)?$|^Al\b/i,
    leastMm: 3,
    source: 'a gravity casting foundry’s design guide: walls of 3 to 8 mm',
    status: 'read',
  },
];

/** @returns undefined for a metal of which nothing is known here, steel among them. */
export function minimumWall(material: string): MinimumWall | undefined {
  const row = rows.find(({ called }) => called.test(material.trim()));
  if (!row) return undefined;
  const { called: _, ...wall } = row;
  return wall;
}
