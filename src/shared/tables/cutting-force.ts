import type { CuttingMetal } from './cutting-metals.ts';
import { PRACTICE, type Sourced } from './cutting-row.ts';

/**
 * What a metal resists the edge with. By Kienzle: kc = kc11 · h^(−mc), N/mm² for a chip h mm thick; kc11 is that of a
 * chip 1 mm thick. Where no such row is known, one figure for all chips.
 */
export type SpecificForce = Sourced &
  (
    | { readonly is: 'kienzle'; readonly kc11: number; readonly mc: number }
    | { readonly is: 'constant'; readonly kc: number }
  );

/**
 * The groups of VDI 3323 in a tool maker's catalogue of 2022. The edition of 2017 prints grey and ductile iron (groups 15
 * to 18) the other way round.
 */
const vdi = (kc11: number, mc: number, group: string): SpecificForce => ({
  is: 'kienzle',
  kc11,
  mc,
  source: `VDI 3323 ${group}, a tool maker’s catalogue`,
  status: 'read',
});

/**
 * Carvill, Mechanical Engineer's Data Handbook, 5.7.2: k of turning in N/mm². Its constants of drilling (kD) and milling
 * (kM) stand in the tests, held against the rows here.
 */
const carvill = (kc: number): SpecificForce => ({
  is: 'constant',
  kc,
  source: 'Carvill, Mechanical Engineer’s Data Handbook, 5.7.2',
  status: 'read',
});

const forces: Readonly<Partial<Record<CuttingMetal, SpecificForce>>> = {
  'cast aluminium': vdi(700, 0.25, 'groups 23 and 24, cast aluminium up to 12 % silicon'),
  'wrought aluminium': vdi(800, 0.25, 'group 22, wrought aluminium, cured'),
  brass: vdi(700, 0.27, 'group 27, brass'),
  bronze: vdi(700, 0.27, 'group 26, free-cutting copper alloys'),
  copper: vdi(700, 0.27, 'group 28, electrolytic copper'),
  'soft grey iron': vdi(1150, 0.2, 'group 15, grey iron, 180 Brinell'),
  'hard grey iron': vdi(1350, 0.28, 'group 16, grey iron, 260 Brinell'),
  'ductile iron': vdi(1225, 0.25, 'group 17, ductile iron, 160 Brinell'),
  'mild steel': vdi(1350, 0.21, 'group 1, steel below 0.25 % carbon'),
  'medium steel': vdi(1500, 0.22, 'group 2, steel of 0.25 to 0.55 % carbon'),
  'alloy steel': vdi(1725, 0.24, 'group 8, low-alloyed steel, 300 Brinell'),
  'cast steel': vdi(1500, 0.22, 'group 2, steel and cast steel'),
  'tool steel': carvill(3000),
  'stainless steel': vdi(2150, 0.2, 'group 14, austenitic stainless steel'),
};

/** @returns undefined for magnesium, zinc, hard bronze and chilled iron, of which no row was found. */
export const specificForce = (metal: CuttingMetal): SpecificForce | undefined => forces[metal];

/** What of the motor's power reaches the edge: a belt and a train of wheels take the rest. Best machines keep 0.8. */
export const SPINDLE_EFFICIENCY: Sourced & { readonly value: number } = { value: 0.7, ...PRACTICE };
