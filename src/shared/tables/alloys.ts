import { nameKey } from '../formula/name-key.ts';

/**
 * How far a figure may be trusted: written by the founder in a row of the build's own, read on a page, worked out from read
 * figures, remembered from a book that was not at hand, or a mere starting value of the trade, to be replaced by the founder's own.
 */
export type FigureStatus = 'written' | 'read' | 'derived' | 'from memory' | 'starting value';

/** A figure of an alloy with where it comes from. */
export interface AlloyFigure {
  readonly value: number;
  readonly status: FigureStatus;
  readonly source: string;
}

/** What can be known of an alloy in the foundry; what is not known is absent, and asked for where it is needed. */
export const alloyKeys = [
  'solidusC',
  'liquidusC',
  /** Latent heat of fusion, kJ/kg. */
  'latentKJKg',
  /** Mean heat capacity of the solid, kJ/(kg·K). */
  'solidHeatKJKgK',
  /** Of the liquid, kJ/(kg·K). */
  'liquidHeatKJKgK',
  /** kg/m³ at room temperature. */
  'solidDensityKgM3',
  /** kg/m³ at the melting point. */
  'liquidDensityKgM3',
  /** Patternmaker's linear contraction in percent: the least and the most that the sources give, and the usual one. */
  'contractionLeast',
  'contractionUsual',
  'contractionMost',
  /** Volume lost while it freezes, percent. */
  'freezingShrinkage',
  /** Where pouring usually begins and ends, °C, in a sand mould without foam. */
  'pourLeastC',
  'pourMostC',
  /** Melting loss of clean ingot, percent. */
  'meltLoss',
] as const;
export type AlloyKey = (typeof alloyKeys)[number];

export type AlloyFamily = 'aluminium' | 'zinc' | 'copper' | 'iron';

export interface Alloy {
  readonly name: string;
  readonly family: AlloyFamily;
  readonly figures: Readonly<Partial<Record<AlloyKey, AlloyFigure>>>;
}

/** A row of the table below. */
export interface AlloyRow extends Alloy {
  /** What it is called besides; upper and lower case alike. */
  readonly also: readonly string[];
}

const read = (value: number, source: string): AlloyFigure => ({ value, status: 'read', source });
const derived = (value: number, source: string): AlloyFigure => ({ value, status: 'derived', source });
const memory = (value: number, source: string): AlloyFigure => ({ value, status: 'from memory', source });
const start = (value: number, source: string): AlloyFigure => ({ value, status: 'starting value', source });

const westermann = 'Westermann Tables for the Metal Trade, shrinkage';
const lecture = 'foundry lecture text, table of pattern allowances';
const dooley = 'Dooley, Applied Science for Metal Workers, ch. XXXI';
const groover = 'Groover, Fundamentals of Modern Manufacturing, table of volumetric contraction';
const sheet356 = 'data sheet of cast alloy 356.0';
const sheetZa = 'data sheet of the sand-cast zinc-aluminium alloy';
const practice = 'common practice, no source';

const aluminium = {
  liquidDensityKgM3: memory(2400, 'liquid aluminium: 2375 kg/m³ at its melting point'),
  contractionLeast: read(1.25, westermann),
  contractionUsual: read(1.3, 'data sheets of cast alloys 355.0 and 356.0'),
  contractionMost: read(1.82, `${dooley}: 7/32 in per foot`),
  freezingShrinkage: memory(7, groover),
  pourLeastC: memory(690, 'green sand, general foundry texts'),
  pourMostC: memory(760, 'green sand, general foundry texts; molten metal is handled from 704 to 788 °C'),
  meltLoss: start(2, practice),
} as const;
const copper = {
  contractionLeast: read(1.05, lecture),
  contractionUsual: read(1.5, westermann),
  contractionMost: read(2.1, lecture),
  freezingShrinkage: memory(5.5, groover),
  meltLoss: start(3, practice),
} as const;
const iron = {
  contractionLeast: read(0.55, lecture),
  contractionUsual: read(1, westermann),
  contractionMost: read(1, lecture),
  freezingShrinkage: memory(1.8, groover),
  meltLoss: start(5, practice),
} as const;

/** Casting alloys that home foundries pour. */
export const alloys: readonly AlloyRow[] = [
  {
    name: '356 (AlSi7Mg)',
    also: [
      'EN AC-42100',
      'EN AC-42100 AlSi7Mg0.3',
      'EN AC-AlSi7Mg0.3',
      'AlSi7Mg0.3',
      'AlSi7Mg',
      'LM25',
      'A356',
      'A356.0',
      '356',
    ],
    family: 'aluminium',
    figures: {
      ...aluminium,
      solidusC: read(557, sheet356),
      liquidusC: read(613, sheet356),
      latentKJKg: read(389, `${sheet356}; another sheet gives 500`),
      solidHeatKJKgK: read(0.963, sheet356),
      liquidHeatKJKgK: derived(0.963, `${sheet356}: the figure of the solid`),
      solidDensityKgM3: read(2680, sheet356),
    },
  },
  {
    name: 'AlSi12',
    also: ['EN AC-44200', 'EN AC-44100', 'EN AC-AlSi12', 'LM6'],
    family: 'aluminium',
    figures: {
      ...aluminium,
      solidusC: memory(570, 'handbook of cast aluminium alloys'),
      liquidusC: memory(580, 'handbook of cast aluminium alloys'),
      latentKJKg: start(389, 'taken as for 356'),
      solidHeatKJKgK: start(0.963, 'taken as for 356'),
      liquidHeatKJKgK: start(0.963, 'taken as for 356'),
      solidDensityKgM3: memory(2650, 'EN 1706, annex'),
    },
  },
  {
    name: 'AlSi8Cu3',
    also: ['EN AC-46200', 'EN AC-AlSi8Cu3', 'LM24'],
    family: 'aluminium',
    figures: {
      ...aluminium,
      solidusC: memory(520, 'handbook of cast aluminium alloys'),
      liquidusC: memory(595, 'handbook of cast aluminium alloys'),
      latentKJKg: start(389, 'taken as for 356'),
      solidHeatKJKgK: start(0.963, 'taken as for 356'),
      liquidHeatKJKgK: start(0.963, 'taken as for 356'),
      solidDensityKgM3: memory(2750, 'EN 1706, annex'),
    },
  },
  {
    name: 'AlSi10Mg',
    also: ['EN AC-43000', 'EN AC-AlSi10Mg', 'LM9'],
    family: 'aluminium',
    figures: {
      ...aluminium,
      solidusC: memory(557, 'handbook of cast aluminium alloys'),
      liquidusC: memory(596, 'handbook of cast aluminium alloys'),
      latentKJKg: start(389, 'taken as for 356'),
      solidHeatKJKgK: start(0.963, 'taken as for 356'),
      liquidHeatKJKgK: start(0.963, 'taken as for 356'),
      solidDensityKgM3: memory(2650, 'EN 1706, annex'),
    },
  },
  {
    name: 'Aluminium',
    also: ['pure aluminium', 'Al'],
    family: 'aluminium',
    figures: {
      ...aluminium,
      solidusC: read(660, 'worked heating problem, pure aluminium'),
      liquidusC: read(660, 'worked heating problem, pure aluminium'),
      latentKJKg: read(398, 'worked heating problem, pure aluminium; Groover prints 389.3 (from memory)'),
      solidHeatKJKgK: read(0.9, 'worked heating problem, pure aluminium'),
      liquidHeatKJKgK: derived(0.9, 'worked heating problem: the figure of the solid'),
      solidDensityKgM3: read(2700, 'worked heating problem, pure aluminium'),
      contractionUsual: read(1.65, lecture),
    },
  },
  {
    name: 'ZA-12',
    also: ['ZA-12 sand', 'ZA12', 'zinc alloy'],
    family: 'zinc',
    figures: {
      solidusC: read(380, sheetZa),
      liquidusC: read(430, sheetZa),
      latentKJKg: read(120, sheetZa),
      solidHeatKJKgK: read(0.45, sheetZa),
      liquidHeatKJKgK: derived(0.45, `${sheetZa}: the figure of the solid`),
      solidDensityKgM3: read(6000, sheetZa),
      liquidDensityKgM3: start(5600, 'between 5500 and 5700, no source'),
      contractionLeast: read(1.3, sheetZa),
      contractionUsual: read(1.3, sheetZa),
      contractionMost: read(2.6, lecture),
      pourLeastC: start(500, practice),
      pourMostC: start(560, practice),
      meltLoss: start(2, practice),
    },
  },
  {
    name: 'ZA-27',
    also: ['ZA-27 sand', 'ZA27'],
    family: 'zinc',
    figures: {
      solidusC: read(380, sheetZa),
      liquidusC: read(480, sheetZa),
      latentKJKg: read(130, sheetZa),
      solidHeatKJKgK: read(0.53, sheetZa),
      liquidHeatKJKgK: derived(0.53, `${sheetZa}: the figure of the solid`),
      solidDensityKgM3: read(5000, sheetZa),
      contractionLeast: read(1.3, sheetZa),
      contractionUsual: read(1.3, sheetZa),
      contractionMost: read(2.6, lecture),
      pourLeastC: start(550, practice),
      pourMostC: start(610, practice),
      meltLoss: start(2, practice),
    },
  },
  {
    name: 'Tin bronze',
    also: ['CC483K', 'CuSn12', 'CuSn12-C', 'C90500', 'gun metal', 'gunmetal', 'CuSn10', 'bronze'],
    family: 'copper',
    figures: {
      ...copper,
      solidusC: memory(854, 'handbook of copper alloys'),
      liquidusC: memory(1000, 'handbook of copper alloys'),
      latentKJKg: memory(195, 'handbook of copper alloys: 190 to 200'),
      solidHeatKJKgK: memory(0.38, 'handbook of copper alloys'),
      liquidHeatKJKgK: start(0.45, practice),
      solidDensityKgM3: memory(8720, 'handbook of copper alloys'),
      liquidDensityKgM3: memory(7900, 'copper alloys: 7.8 to 8.0'),
      pourLeastC: start(1080, practice),
      pourMostC: start(1180, practice),
    },
  },
  {
    name: 'Leaded red brass',
    also: ['C83600', 'red brass', 'LG2'],
    family: 'copper',
    figures: {
      ...copper,
      solidusC: memory(855, 'handbook of copper alloys'),
      liquidusC: memory(1010, 'handbook of copper alloys'),
      latentKJKg: memory(200, 'handbook of copper alloys'),
      solidHeatKJKgK: memory(0.38, 'handbook of copper alloys'),
      liquidHeatKJKgK: start(0.45, practice),
      solidDensityKgM3: memory(8830, 'handbook of copper alloys'),
      liquidDensityKgM3: memory(7900, 'copper alloys: 7.8 to 8.0'),
      contractionLeast: read(1.3, lecture),
      contractionMost: read(1.56, `${dooley}: 3/16 in per foot`),
      pourLeastC: start(1080, practice),
      pourMostC: start(1180, practice),
    },
  },
  {
    name: 'Grey cast iron',
    also: [
      'grey iron',
      'gray iron',
      'gray cast iron',
      'cast iron',
      'EN-GJL-150',
      'EN-GJL-200',
      'EN-GJL-250',
      'EN-GJL-300',
      'GG20',
      'GG25',
    ],
    family: 'iron',
    figures: {
      ...iron,
      solidusC: memory(1130, 'handbook of cast irons: 1120 to 1140'),
      liquidusC: memory(1200, 'handbook of cast irons; Westermann Tables print melting at 1150 to 1250'),
      latentKJKg: memory(250, 'handbook of cast irons: 230 to 270'),
      solidHeatKJKgK: memory(0.49, 'handbook of cast irons'),
      liquidHeatKJKgK: memory(0.84, 'handbook of cast irons'),
      solidDensityKgM3: read(7200, 'Westermann Tables for the Metal Trade'),
      liquidDensityKgM3: memory(6950, 'grey iron: 6.9 to 7.0'),
      pourLeastC: start(1320, practice),
      pourMostC: start(1400, practice),
    },
  },
];

const byName = new Map(
  alloys.flatMap((alloy) => [alloy.name, ...alloy.also].map((name) => [nameKey(name), alloy] as const)),
);

/**
 * The alloy of that name, upper and lower case alike: of the build's own rows first, then of the table.
 *
 * @returns undefined when neither knows it, or the name is empty.
 */
export function alloyNamed<A extends Alloy>(name: string, own: readonly A[] = []): A | AlloyRow | undefined {
  const key = nameKey(name.trim());
  return own.find((alloy) => nameKey(alloy.name.trim()) === key) ?? byName.get(key);
}

/** `1.3 (read: data sheet…)`: the trust that a figure deserves, in words. */
export const trustInWords = ({ status, source }: AlloyFigure): string =>
  status === 'read' || status === 'written' ? source : `${source} (${status})`;
