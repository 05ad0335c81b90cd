import { nameKey } from '../formula/name-key.ts';

/** Main groups of work materials for cutting, ISO 513: steel, stainless steel, cast iron, non-ferrous metal. */
export const cuttingGroups = ['P', 'M', 'K', 'N'] as const;
export type CuttingGroup = (typeof cuttingGroups)[number];

/** Metals as the tables of cutting speeds, feeds and forces tell them apart. */
export const cuttingMetals = [
  'cast aluminium',
  'wrought aluminium',
  'magnesium',
  'zinc alloy',
  'brass',
  'bronze',
  'hard bronze',
  'copper',
  'soft grey iron',
  'hard grey iron',
  'ductile iron',
  'chilled iron',
  'mild steel',
  'medium steel',
  'alloy steel',
  'tool steel',
  'cast steel',
  'stainless steel',
] as const;
export type CuttingMetal = (typeof cuttingMetals)[number];

/** What is known of a metal as a group of the tables. */
export interface CuttingMetalRow {
  readonly group: CuttingGroup;
  /** What belongs to it, in words. */
  readonly what: string;
  /** Tables tell to take the lower end of their feeds. */
  readonly isHard: boolean;
  /** What to mind at the machine; common practice, no source. */
  readonly care?: string;
}

export const cuttingMetalRows: Readonly<Record<CuttingMetal, CuttingMetalRow>> = {
  'cast aluminium': { group: 'N', what: 'sand and die cast alloys up to 12 % silicon', isHard: false },
  'wrought aluminium': { group: 'N', what: 'bar, plate and sections', isHard: false },
  magnesium: {
    group: 'N',
    what: 'magnesium alloys',
    isHard: false,
    care: 'Its chips burn, and water feeds the fire: sharp tools, coarse chips, dry sand at hand.',
  },
  'zinc alloy': { group: 'N', what: 'zinc casting alloys', isHard: false },
  brass: {
    group: 'N',
    what: 'free-cutting and ordinary brass',
    isHard: false,
    care: 'A drill snatches in brass: take the rake off its lips, and clamp the work.',
  },
  bronze: { group: 'N', what: 'leaded bronze and gun metal', isHard: false },
  'hard bronze': { group: 'N', what: 'phosphor, tin, manganese and aluminium bronze', isHard: true },
  copper: { group: 'N', what: 'pure copper', isHard: false },
  'soft grey iron': { group: 'K', what: 'grey iron up to about 200 Brinell', isHard: false },
  'hard grey iron': {
    group: 'K',
    what: 'grey iron above about 200 Brinell',
    isHard: true,
    care: 'Go under the skin of the casting with the first cut: sand in it takes the edge off the tool.',
  },
  'ductile iron': { group: 'K', what: 'ductile and malleable iron', isHard: false },
  'chilled iron': { group: 'K', what: 'white or chilled iron', isHard: true },
  'mild steel': { group: 'P', what: 'steel of less than 0.3 % carbon', isHard: false },
  'medium steel': { group: 'P', what: 'steel of 0.3 to 0.5 % carbon', isHard: false },
  'alloy steel': { group: 'P', what: 'alloyed steel, hardened and tempered', isHard: true },
  'tool steel': { group: 'P', what: 'tool steel and silver steel, soft', isHard: true },
  'cast steel': { group: 'P', what: 'steel castings', isHard: true },
  'stainless steel': {
    group: 'M',
    what: 'austenitic stainless steel',
    isHard: true,
    care: 'It hardens where a tool rubs: keep the feed up, and never let the edge dwell.',
  },
};

/** Order matters: an aluminium bronze is a bronze, silver steel is no mild steel. */
const words: readonly (readonly [called: RegExp, metal: CuttingMetal])[] = [
  [/(phosphor|tin|mangan\w*|alumin\w*|high.tensile)[\s-]*bronze|\bCuSn1\d|\bC95\d{3}\b/i, 'hard bronze'],
  [/bronze|gun ?metal|\bC9[0-4]\d{3}\b/i, 'bronze'],
  [/brass|\bCuZn|\bC36\d{3}\b/i, 'brass'],
  [/\bzinc\b|\bZA-?\d|\bZP\d/i, 'zinc alloy'],
  [/\bcopper\b/i, 'copper'],
  [/magnesium/i, 'magnesium'],
  [
    /\bEN AW\b|\b[267]0\d\d(-T\d+)?\b|(bar|plate|wrought)\W+alumin|alumin\w*\W+(bar|plate)|duralumin/i,
    'wrought aluminium',
  ],
  [/alumin|\bAl ?Si|\bAC-4\d{4}|\bLM ?\d|^A?(208|242|295|319|35[67])(\.0)?(-T\d)?$/i, 'cast aluminium'],
  [/(chilled|white)\W+(cast )?iron/i, 'chilled iron'],
  [/(ductile|nodular|malleable|s\.?g\.?)\W+(cast )?iron|\bGJ[SM]\b|\bGGG/i, 'ductile iron'],
  [/\bGJL-?(25|30|35)|\bGG ?-?(25|30|35)|hard\W+(grey |gray |cast )*iron/i, 'hard grey iron'],
  [/wrought iron/i, 'mild steel'],
  [/\biron\b|\bGJL\b|\bGG ?-?\d/i, 'soft grey iron'],
  [/stainless|\b1\.43\d\d\b|^30[34]$/i, 'stainless steel'],
  [/(tool|silver|gauge|high.carbon)\W+(plate|steel)|\bO1\b|\bW1\b/i, 'tool steel'],
  [/cast steel|steel casting/i, 'cast steel'],
  [/alloy(ed)? steel|\b(41[34]0|4340)\b|\bEN ?(16|19|24)T?\b/i, 'alloy steel'],
  [/(medium|carbon 0\.[45])\W*(carbon )?steel|\bC45\b|\b104[05]\b|\bEN ?8\b/i, 'medium steel'],
  [/\bsteel\b|\b10[12]\d\b|\bEN ?(1A|3)\b|\bS235|\bC15\b/i, 'mild steel'],
];

/** A group's row where no more is known of the metal: the slower of the common ones of the group. */
const ofGroup: Readonly<Record<CuttingGroup, CuttingMetal>> = {
  P: 'medium steel',
  M: 'stainless steel',
  K: 'hard grey iron',
  N: 'bronze',
};

/** The row of the tables that a material is taken as. */
export interface FoundMetal {
  readonly metal: CuttingMetal;
  /** By what: the words of its name, its row in the table of materials, or only its group of ISO 513. */
  readonly by: 'name' | 'table' | 'group';
}

/** The metal that the words of a name tell; undefined when they tell none. */
export const metalNamed = (name: string): CuttingMetal | undefined =>
  words.find(([called]) => called.test(nameKey(name.trim())))?.[1];

/**
 * Which row of the cutting tables a material is taken as: what its name says, where that agrees with its group; else the
 * row of the table of materials; else a cautious row of its group.
 *
 * @param table the metal of the material's own row in the table of materials.
 * @returns undefined when nothing tells.
 */
export function findMetal(
  name: string,
  group: CuttingGroup | undefined,
  table: CuttingMetal | undefined,
): FoundMetal | undefined {
  const named = metalNamed(name);
  if (named !== undefined && (group === undefined || cuttingMetalRows[named].group === group)) {
    return { metal: named, by: named === table ? 'table' : 'name' };
  }
  if (table !== undefined && (group === undefined || cuttingMetalRows[table].group === group)) {
    return { metal: table, by: 'table' };
  }
  return group === undefined ? undefined : { metal: ofGroup[group], by: 'group' };
}
