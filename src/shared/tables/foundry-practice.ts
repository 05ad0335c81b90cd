import type { AlloyFamily, AlloyFigure } from './alloys.ts';

const start = (value: number, source = 'common practice, no source'): AlloyFigure => ({
  value,
  status: 'starting value',
  source,
});
const memory = (value: number, source: string): AlloyFigure => ({ value, status: 'from memory', source });
const read = (value: number, source: string): AlloyFigure => ({ value, status: 'read', source });
const derived = (value: number, source: string): AlloyFigure => ({ value, status: 'derived', source });

/** What a founder has not said, and what a pour is judged by. Each with how far it may be trusted; the founder's own goes first. */
export const foundryPractice = {
  /** Poured over in aluminium, kg; of other metals the same volume. */
  overflowKg: start(0.5, 'common practice for small aluminium work, no source'),
  /** Left in the crucible, percent of what is poured: a crucible is never planned to be drained. */
  heelPercent: start(5, 'common practice: 5 to 10 % stay in the crucible, no source'),
  ambientC: start(20),
  /** kJ/(kg·K) of a clay-graphite crucible. */
  crucibleHeat: start(1, 'clay-graphite, 0.8 to 1.3 kJ/(kg·K), from memory and no source'),
  /** kg/m³ of sand as it stands in the flask. */
  looseSandKgM3: memory(1650, 'dry silica sand, vibrated: 1600 to 1700 kg/m³'),
  rammedSandKgM3: start(1600, 'green sand, rammed: about 1600 kg/m³, no source'),
  /** kg/m³ of foam that nobody has weighed. */
  foamKgM3: memory(20, 'foam for aluminium: 16 to 27 kg/m³, commonly 20 to 24'),
  /** Metal counts as lying round an insert within so many moduli of it: a wall is two of its moduli thick. */
  insertReach: start(2, 'metal within the thickness of the wall about it, twice its modulus; no source'),
  /** Liquid that still runs past a cold place must have so much over the liquidus, K. */
  superheatToRunK: start(10),
  /** Metal that only fills up round an insert, and runs no further, may be frozen to this share. */
  stillFills: start(0.15, 'dendrites of Al-Si alloys lock at 0.2 to 0.3 solid (from memory); half of that, no source'),
  /** A mould is to be full within this share of the time in which its thinnest section freezes. */
  fillShare: start(0.25),
  /** Metal front in foam, mm/s. */
  foamFrontMmS: memory(30, 'aluminium in foam: 10 to 50 mm/s, by coating and density; studies with X-rays'),
  /** Depth of metal in the pouring cup, mm: decides the taper of the sprue. */
  cupDepthMm: start(40),
  /** Runner by choke, gates by choke: an unpressurised system for light metal. */
  runnerRatio: memory(2, 'light alloys, sprue : runner : gates = 1 : 2 : 2 to 1 : 4 : 4'),
  gateRatio: memory(4, 'light alloys, sprue : runner : gates = 1 : 2 : 2 to 1 : 4 : 4'),
  /** Height of a riser by its diameter. */
  riserSlenderness: start(1.5),
  /** Foam: how much hotter than in green sand, K. */
  foamHotterLeastK: memory(20, 'foam is poured 20 to 50 K hotter than green sand'),
  foamHotterMostK: memory(50, 'foam is poured 20 to 50 K hotter than green sand'),
  /** Sections thinner than this are poured from the upper part of the band; so many kelvin hotter. */
  thinSectionMm: start(6),
  thinHotterK: start(20),
  /** A coating is dry when it loses no more than this of its own mass, percent, in an interval, twice running. */
  dryShare: memory(0.1, 'ASTM C566 and EN 1097-5: 0.1 % between weighings an hour or more apart'),
  /** Hours that an interval has at least. */
  dryHours: start(2, 'two hours or more between weighings; the standards for aggregates ask for one (from memory)'),
  /** A pattern with foam in it must not be warmer, °C. */
  foamStandsC: read(60, 'polystyrene softens near 100 °C; coated foam is dried at 40 to 60 °C'),
  /** Above this an insert is hotter than a small foundry can handle, °C. */
  preheatMostC: start(450),
} as const satisfies Readonly<Record<string, AlloyFigure>>;

/** The hottest that metal is handled, °C. Other families: no figure is known. */
export const handlingLimit: Readonly<Partial<Record<AlloyFamily, AlloyFigure>>> = {
  aluminium: read(788, 'an aluminium trade association: molten metal is handled from 704 to 788 °C'),
};

/** Mean heat capacity of what is cast in, kJ/(kg·K), from cold to red heat, by what its material is called. */
// An aluminium bronze is a bronze: the order matters.
const insertHeats: readonly { readonly called: RegExp; readonly heat: AlloyFigure }[] = [
  { called: /bronze|brass|gun ?metal|copper|\bCu/i, heat: memory(0.4, 'copper alloys, mean to 600 °C') },
  { called: /alumin|\bAl ?Si|AC-4\d{4}|AW-\d{4}/i, heat: memory(0.96, 'aluminium, mean to 600 °C') },
  {
    called: /steel|iron|\bGJ[LS]\b|\bC ?\d\d\b|\b\d{2}Mn|\bEN ?\d+[A-Z]?\b|\bS\d{3}\b|rod|wire/i,
    heat: derived(0.56, 'mild steel: 0.49 cold, 0.6 to 0.7 near 600 °C (from memory); the mean is the safe one'),
  },
];

/** @returns undefined of a material about whose heat nothing is known here. */
export const insertHeatOf = (material: string): AlloyFigure | undefined =>
  insertHeats.find(({ called }) => called.test(material))?.heat;
