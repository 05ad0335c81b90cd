import type { AlloyFamily } from '../../tables/alloys.ts';
import * as by from './causes.ts';

/** A likely cause, and the one change that meets it. Weighed by nothing: the figures of a pour say nothing of it. */
export interface Cause {
  /** Stable. */
  readonly id: string;
  readonly words: string;
  readonly change: string;
  readonly weigh?: by.Weigh;
}

/** A defect of castings. */
export interface Defect {
  /** Stable: journals hold it. */
  readonly id: string;
  readonly name: string;
  /**
   * Codes of the international atlas of casting defects; their classes: A metallic projections, B cavities, C discontinuities, D
   * defective surface, E incomplete casting, F incorrect dimension, G inclusions and structure (read).
   */
  readonly codes: readonly string[];
  /** Of the codes; those of class B 11x and 12x were read in a handbook of quality control. */
  readonly codeStatus: 'read' | 'from memory';
  readonly signs: string;
  /** Only in castings of these; empty = in all. */
  readonly families: readonly AlloyFamily[];
  readonly causes: readonly Cause[];
}

const cause = (id: string, words: string, change: string, weigh?: by.Weigh): Cause => ({
  id,
  words,
  change,
  ...(weigh ? { weigh } : {}),
});

const cold = cause('metal-cold', 'metal too cold', 'Pour 20 to 40 K hotter, within the band.', by.metalCold);
const hot = cause('metal-hot', 'metal too hot', 'Pour cooler, within the band.', by.metalHot);
const slow = cause('filled-slowly', 'filled too slowly', 'A wider choke, or more gates, closer.', by.filledSlowly);
const insert = cause(
  'insert-cold',
  'a cold insert chills the metal',
  'Preheat the insert, or turn the casting over.',
  by.insertCold,
);
const damp = cause('damp', 'damp coating, sand or core', 'Dry to constant mass, and dry the sand.', by.coatingDamp);
const gas = cause('foam-gas', 'gas of heavy foam', 'Lighter foam; a coating that lets more through.', by.foamHeavy);
const foamCools = cause('foam-cools', 'foam takes heat at the front', 'Hotter metal, lighter foam.', by.foamCools);
const unfed = cause('not-fed', 'a thick place is not fed', 'A riser of 1.2 times its modulus, or a chill.', by.notFed);

/**
 * Defects with what they look like, why they come, and what to change: general foundry practice, from memory, but for what is
 * said to be read. What a pour's own figures say to each cause is worked out in `causes.ts`.
 */
export const defects: readonly Defect[] = [
  {
    id: 'cold-shut',
    name: 'Cold shut',
    codes: ['C 311'],
    codeStatus: 'from memory',
    signs: 'A rounded seam that does not close, where two streams met.',
    families: [],
    causes: [
      cold,
      insert,
      slow,
      foamCools,
      cause('streams-meet', 'streams meet far from the gates', 'Gate so that they meet in a riser or flow-off.'),
    ],
  },
  {
    id: 'misrun',
    name: 'Misrun, poured short',
    codes: ['E 111', 'E 121', 'E 122'],
    codeStatus: 'from memory',
    signs: 'An edge or corner is missing, its rim round.',
    families: [],
    causes: [
      cold,
      cause('wall-thin', 'a wall too thin to run full', 'A wall 1 mm thicker.', by.wallThin),
      slow,
      insert,
      cause('metal-short', 'not enough metal', 'Charge more.', by.metalShort),
      cause('head-low', 'the cup too low over the casting', 'A higher sprue.', by.headLow),
      cause(
        'back-pressure',
        'gas in the mould holds the metal back',
        'Vents; a coating that lets more through.',
        by.foamHeavy,
      ),
    ],
  },
  {
    id: 'gas-porosity',
    name: 'Gas porosity',
    codes: ['B 111', 'B 123'],
    codeStatus: 'read',
    signs: 'Smooth, bright, round holes, mostly in the upper part.',
    families: [],
    causes: [
      damp,
      cause('metal-gassed', 'hydrogen taken up by hot metal', 'Less superheat; degas before pouring.', by.metalHot),
      gas,
      cause('charge-wet', 'damp or oily charge, damp tools', 'Dry and preheat all that touches the metal.'),
    ],
  },
  {
    id: 'blow-at-insert',
    name: 'Blow beside an insert, chill or core',
    codes: ['B 112', 'B 121'],
    codeStatus: 'read',
    signs: 'Smooth open holes at the skin near a core or insert.',
    families: [],
    causes: [
      cause(
        'insert-damp',
        'moisture or rust on the insert',
        'Clean it bright, warm it, and pour at once.',
        by.insertCold,
      ),
      damp,
      cause('no-vent', 'no way out for the gas', 'A vent at the insert or through the core.'),
    ],
  },
  {
    id: 'shrinkage',
    name: 'Shrinkage cavity, sink',
    codes: ['B 211', 'B 221'],
    codeStatus: 'from memory',
    signs: 'A rough, dendritic hole, or a sink, at a thick place.',
    families: [],
    causes: [
      unfed,
      cause('riser-small', 'the riser ran dry', 'A larger riser.', by.riserSmall),
      cause(
        'uneven',
        'sections too uneven',
        'Even the sections; smaller fillets; a chill on the thick place.',
        by.sectionsUneven,
      ),
      hot,
    ],
  },
  {
    id: 'fold',
    name: 'Fold',
    codes: ['D 111'],
    codeStatus: 'from memory',
    signs: 'A thin dark crease, not fused inside; in foam where fronts met.',
    families: [],
    causes: [
      cold,
      foamCools,
      cause(
        'residue',
        'residue of foam between the fronts',
        'Lighter foam; a coating that wicks; fronts that meet in a riser.',
        by.foamHeavy,
      ),
      insert,
      cause('film', 'the film of oxide torn up at the gates', 'Larger gates, under 0.5 m/s.', by.gatesFast),
    ],
  },
  {
    id: 'carbon',
    name: 'Carbon film, lustrous carbon',
    codes: ['G 143'],
    codeStatus: 'from memory',
    signs: 'A shiny black film, wrinkles; mostly in iron.',
    families: [],
    causes: [
      cause(
        'foam-carbon',
        'carbon of the foam',
        'Lighter foam, or one with less carbon; vents; a slower fill.',
        by.foamHeavy,
      ),
    ],
  },
  {
    id: 'sand-inclusion',
    name: 'Sand inclusion',
    codes: ['G 131'],
    codeStatus: 'from memory',
    signs: 'Grains in or under the skin; they ruin cutters.',
    families: [],
    causes: [
      cause(
        'washed',
        'the cup or the gates were washed out',
        'Coat joints and cup; slower metal; a filter.',
        by.gatesFast,
      ),
      cause('loose-sand', 'loose sand in the mould', 'Blow the mould out; coat the joints of the pattern.'),
    ],
  },
  {
    id: 'hot-tear',
    name: 'Hot tear',
    codes: ['C 221'],
    codeStatus: 'from memory',
    signs: 'A jagged, dark crack in a heavy corner.',
    families: [],
    causes: [
      cause('uneven', 'thick beside thin', 'Fillets and even sections; feed the thick place.', by.sectionsUneven),
      unfed,
      hot,
      cause('hindered', 'core or mould hinders the contraction', 'A weaker core; knock out in time.'),
    ],
  },
  {
    id: 'collapse',
    name: 'Mould collapsed',
    codes: ['A 221', 'A 224'],
    codeStatus: 'from memory',
    signs: 'A lump, a wall of sand in the casting.',
    families: [],
    causes: [
      cause('cover-short', 'too little sand round the casting', 'A larger flask, deeper cover.', by.coverShort),
      cause('stopped', 'the pour was interrupted, the crucible drained', 'More metal; never stop.', by.crucibleDrained),
      cause('metal-short', 'not enough metal', 'Charge more.', by.metalShort),
      cause('sand-loose', 'sand not settled', 'Vibrate longer; shower the sand in.'),
    ],
  },
  {
    id: 'penetration',
    name: 'Metal penetration, leakers',
    codes: ['D 221', 'D 223'],
    codeStatus: 'from memory',
    signs: 'Sand grown into the skin, pimples on the underside.',
    families: [],
    causes: [
      hot,
      cause('flat-bottom', 'sand loose under flat bottoms', 'Tilt flat faces; vibrate; shower the sand in.'),
      cause('coat-thin', 'coating too thin', 'A second coat.'),
    ],
  },
  {
    id: 'insert-loose',
    name: 'Insert not fused',
    codes: ['C 331'],
    codeStatus: 'from memory',
    signs: 'A gap or a line of oxide round the insert.',
    families: [],
    causes: [
      insert,
      cause(
        'insert-heavy',
        'too much insert for the metal round it',
        'A lighter insert, or more metal round it.',
        by.insertHeavy,
      ),
      cause(
        'no-fusion',
        'the faces never reach the solidus',
        'Undercuts or a knurl that grip; more preheat.',
        by.noFusion,
      ),
      cause('insert-dirty', 'rust, oil or moisture on it', 'Clean it bright and warm it.'),
      cold,
    ],
  },
  {
    id: 'wrong-size',
    name: 'Wrong size',
    codes: ['F 111', 'F 125'],
    codeStatus: 'from memory',
    signs: 'All dimensions off, or swollen.',
    families: [],
    causes: [
      cause('contraction', 'wrong contraction', 'Measure the casting and use its own contraction.'),
      cause(
        'mould-moved',
        'the mould gave way, or the cope lifted',
        'More weight; ram or vibrate harder.',
        by.copeLifted,
      ),
    ],
  },
  {
    id: 'shift',
    name: 'Shift, shifted core',
    codes: ['F 221', 'F 222'],
    codeStatus: 'from memory',
    signs: 'Halves or cored holes stand off from one another.',
    families: [],
    causes: [cause('pins', 'worn pins, short prints', 'New pins; longer prints; wedge the halves.')],
  },
  {
    id: 'hard-spots',
    name: 'Hard spots',
    codes: ['G 144'],
    codeStatus: 'from memory',
    signs: 'Files skid on it: iron chilled white at thin edges.',
    families: ['iron'],
    causes: [cause('chilled', 'thin edges chill', 'Thicker edges; inoculate; anneal.', by.ironChilled), cold],
  },
];

export const defectNamed = (id: string): Defect | undefined => defects.find((one) => one.id === id);
