import { nameKey } from '../formula/name-key.ts';
import { type CuttingGroup, type CuttingMetal, cuttingMetalRows } from './cutting-metals.ts';
import type { RowStatus } from './row.ts';

/** What is known of a material. A value that is not known is absent: whoever needs it asks for it. */
export interface Material {
  readonly name: string;
  readonly densityKgM3?: number | undefined;
  /** Mean coefficient of thermal expansion from 20 to 100 °C. */
  readonly expansionPerK?: number | undefined;
  /** Modulus of elasticity; of grey irons, whose modulus falls with the load, the middle of the standard's range. */
  readonly modulusGPa?: number | undefined;
  readonly cuttingGroup?: CuttingGroup | undefined;
  /** Where the values come from, in words; ends in "(from memory)" when they were not read on a page. */
  readonly source: string;
}

/** A row of the table below. */
export interface MaterialRow extends Material {
  readonly status: RowStatus;
  /** What it is taken as in the tables of cutting speeds, feeds and forces. */
  readonly cuttingMetal: CuttingMetal;
  /** What it is called besides; the same in upper and lower case. */
  readonly also: readonly string[];
}

/** Density in g/cm³, expansion in 10⁻⁶/K, modulus in GPa: as the sources give them. */
type Values = readonly [density: number | undefined, expansion: number | undefined, modulus: number | undefined];

function row(
  status: RowStatus,
  cuttingMetal: CuttingMetal,
  names: readonly [string, ...string[]],
  [density, expansion, modulus]: Values,
  from: string,
): MaterialRow {
  const [name, ...also] = names;
  return {
    name,
    also,
    // Whole kilograms and whole parts of 10⁻⁹: what the sources say, without the dust of the conversion.
    densityKgM3: density && Math.round(density * 1e3),
    expansionPerK: expansion && Math.round(expansion * 1e3) / 1e9,
    modulusGPa: modulus,
    cuttingGroup: cuttingMetalRows[cuttingMetal].group,
    cuttingMetal,
    source: status === 'read' ? from : `${from} (from memory)`,
    status,
  };
}

const none = undefined;
const zinc = 'zinc casting alloys, die caster’s table of properties';
const pages = 'published page of material properties';
const castAluminium = 'table of physical properties of cast aluminium alloys';
/** Their table gives millionths per °F. */
const perF = (value: number): number => Math.round(value * 1.8 * 10) / 10;

// Alloys by the names of their standards. Rows that were read come first; all others are from memory and only a start:
// the maker's certificate, or a weighed and measured bar, is better.
export const materials: readonly MaterialRow[] = [
  row('read', 'zinc alloy', ['ZA-8', 'ZA-8 sand'], [6.3, 23.3, 85.5], zinc),
  row('read', 'zinc alloy', ['ZA-12', 'ZA-12 sand'], [6.03, none, 82.7], zinc),
  row('read', 'zinc alloy', ['ZA-27', 'ZA-27 sand'], [5, 26, 78], pages),
  row('read', 'zinc alloy', ['ZP3', 'zinc alloy 3', 'ZP0400'], [6.6, 27.4, none], zinc),
  row(
    'read',
    'cast aluminium',
    ['319.0', '319'],
    [2.9, 22, 72],
    `${pages}, rounded to two figures (2.79 g/cm³ elsewhere, from memory)`,
  ),
  row('read', 'cast aluminium', ['A357.0', 'A357'], [2.6, 21, 70], `${pages}, rounded to two figures`),
  row('read', 'cast aluminium', ['208.0', '208'], [2.79, perF(12.4), none], castAluminium),
  row('read', 'cast aluminium', ['242.0', '242'], [2.81, perF(12.6), none], castAluminium),
  row('read', 'cast aluminium', ['295.0', '295'], [2.81, perF(12.7), none], castAluminium),
  row(
    'from memory',
    'cast aluminium',
    ['EN AC-42100', 'EN AC-42100 AlSi7Mg0.3', 'EN AC-AlSi7Mg0.3', 'AlSi7Mg0.3', 'AlSi7Mg', 'LM25'],
    [2.68, 22, 73],
    'EN 1706, annex',
  ),
  row(
    'from memory',
    'cast aluminium',
    ['EN AC-44200', 'EN AC-44100', 'EN AC-AlSi12', 'AlSi12', 'LM6'],
    [2.65, 20, 75],
    'EN 1706, annex',
  ),
  row(
    'from memory',
    'cast aluminium',
    ['EN AC-46200', 'EN AC-AlSi8Cu3', 'AlSi8Cu3', 'LM24'],
    [2.75, 21, 75],
    'EN 1706, annex',
  ),
  row(
    'from memory',
    'cast aluminium',
    ['EN AC-43000', 'EN AC-AlSi10Mg', 'AlSi10Mg', 'LM9'],
    [2.65, 21, 75],
    'EN 1706, annex',
  ),
  row(
    'from memory',
    'cast aluminium',
    ['A356.0', 'A356', '356'],
    [2.685, 21.5, 72.4],
    'handbook of cast aluminium alloys',
  ),
  row(
    'from memory',
    'wrought aluminium',
    ['6061', 'EN AW-6061', '6061-T6'],
    [2.7, 23.6, 68.9],
    'handbook of wrought aluminium alloys',
  ),
  row(
    'from memory',
    'soft grey iron',
    ['EN-GJL-150', 'GJL-150', 'GG15'],
    [7.1, 11.7, 90.5],
    'EN 1561, annex; modulus 78 to 103 GPa',
  ),
  row(
    'from memory',
    'soft grey iron',
    ['EN-GJL-200', 'GJL-200', 'GG20'],
    [7.15, 11.7, 100.5],
    'EN 1561, annex; modulus 88 to 113 GPa',
  ),
  row(
    'from memory',
    'hard grey iron',
    ['EN-GJL-250', 'GJL-250', 'GG25'],
    [7.2, 11.7, 110.5],
    'EN 1561, annex; modulus 103 to 118 GPa',
  ),
  row(
    'from memory',
    'hard grey iron',
    ['EN-GJL-300', 'GJL-300', 'GG30'],
    [7.25, 11.7, 122.5],
    'EN 1561, annex; modulus 108 to 137 GPa',
  ),
  row(
    'from memory',
    'soft grey iron',
    ['Grey cast iron', 'grey iron', 'gray iron', 'gray cast iron', 'cast iron'],
    [7.15, 11.7, 100.5],
    'taken as EN-GJL-200; EN 1561, annex; modulus 88 to 113 GPa',
  ),
  row('from memory', 'ductile iron', ['EN-GJS-400-15', 'GJS-400-15', 'GGG40'], [7.1, 12.5, 169], 'EN 1563, annex'),
  row(
    'from memory',
    'ductile iron',
    ['EN-GJS-500-7', 'GJS-500-7', 'GGG50', 'ductile iron'],
    [7.1, 12.5, 169],
    'EN 1563, annex',
  ),
  row('from memory', 'bronze', ['C93200', 'bearing bronze', 'SAE 660'], [8.93, 18, 100], 'handbook of copper alloys'),
  row('from memory', 'bronze', ['C90500', 'gun metal', 'gunmetal'], [8.72, 19.8, 103], 'handbook of copper alloys'),
  row('from memory', 'hard bronze', ['C95400', 'aluminium bronze'], [7.45, 16.2, 107], 'handbook of copper alloys'),
  row(
    'from memory',
    'brass',
    ['C36000', 'C36000 brass', 'brass', 'free-cutting brass'],
    [8.5, 20.5, 97],
    'handbook of copper alloys',
  ),
  row(
    'from memory',
    'hard bronze',
    ['CC483K', 'CuSn12', 'CuSn12-C', 'tin bronze'],
    [8.7, 18.5, 95],
    'EN 1982, supplier sheets',
  ),
  row(
    'from memory',
    'mild steel',
    ['Carbon steel', 'steel', 'mild steel', 'silver steel'],
    [7.85, 11.7, 206],
    'handbook of steels',
  ),
  row(
    'from memory',
    'stainless steel',
    ['Stainless steel', '304', '303', '1.4301', '1.4305'],
    [7.93, 17.2, 193],
    'handbook of steels',
  ),
];

const byName = new Map(
  materials.flatMap((material) => [material.name, ...material.also].map((name) => [nameKey(name), material] as const)),
);

/**
 * The material of that name, upper and lower case alike: of the build's own rows first, then of the table.
 *
 * @returns undefined when neither knows it, or the name is empty.
 */
export function materialNamed<M extends Material>(name: string, own: readonly M[] = []): M | MaterialRow | undefined {
  const key = nameKey(name.trim());
  return own.find((material) => nameKey(material.name.trim()) === key) ?? byName.get(key);
}
