import type { PourCheck } from '../pour-check.ts';

/** Something that is said on every card that it concerns. */
export interface Caution {
  /** Stable. */
  readonly id: string;
  readonly words: string;
  /** Where it is written; common practice where nothing else is said. */
  readonly source: string;
  readonly only?: (check: PourCheck) => boolean;
}

const practice = 'common practice, no source';

/** In the order in which they are needed. They take the place of no training, code or licence. */
export const cautions: readonly Caution[] = [
  {
    id: 'wear',
    words:
      'Face shield over glasses, leather apron, gauntlets and spats; wool or leather, nothing that melts. Boots that come off at a pull.',
    source: 'full protective wear: safety alerts of a national safety authority',
  },
  {
    id: 'dry-tools',
    words:
      'Every tool, skimmer, ingot mould and piece of scrap dry and hot before it touches metal: water under metal explodes.',
    source:
      'an aluminium trade association: wet scrap is a main cause of explosions; water becomes 1700 times its volume of steam',
  },
  {
    id: 'dry-mould',
    words: 'Sand and coating dry. Nothing damp near the pour.',
    source: practice,
  },
  {
    id: 'plaster',
    words:
      'Plaster in the coating still holds bound water that only bakes out near 150 °C. Stand well back, or do not pour.',
    source: 'drying of plaster moulds, foundry forum and chemistry texts',
    only: ({ coatings }) => coatings.some(({ drying }) => drying.plaster),
  },
  {
    id: 'foam-fumes',
    words: 'Foam gives off styrene, benzene and carbon monoxide: outdoors, wind at your back, and flames at the sprue.',
    source: 'fumes of burning polystyrene, from memory',
    only: ({ foam }) => foam !== undefined,
  },
  {
    id: 'zinc-fumes',
    words: 'Brass and zinc alloys give off zinc fume when too hot: outdoors, no hotter than the band.',
    source: practice,
    only: ({ family }) => family === 'zinc' || family === 'copper',
  },
  {
    id: 'fumes',
    words: 'Furnace outdoors or under a draught; carbon monoxide has no smell.',
    source: practice,
    only: ({ foam }) => foam === undefined,
  },
  {
    id: 'floor',
    words:
      'Dry sand under furnace, path and mould, never bare concrete: it bursts under spilled metal. A bed of dry sand for a spill.',
    source: 'concrete spalls under liquid metal, from memory',
  },
  {
    id: 'second-person',
    words:
      'A second person who knows what to do, outside the path of the metal. The path clear, walked once with the crucible cold.',
    source: practice,
  },
  {
    id: 'weight-of-pot',
    words: 'Crucible and metal together are heavy: two to lift, or a hoist, as tried cold.',
    source: practice,
    only: ({ charge }) => (charge.charge?.value ?? 0) > 8,
  },
  {
    id: 'crucible',
    words: 'Look at the crucible, cold: no cracks, and ringing clear. Lift it with tongs that fit below its belly.',
    source: practice,
  },
  {
    id: 'never-stop',
    words: 'Keep the sprue full and never stop the pour; what is left goes into dry, hot ingot moulds.',
    source: practice,
  },
  {
    id: 'codes',
    words:
      'Local codes for fire, gas and fumes hold before this card; where licensed practice is asked for, leave it to those who have it.',
    source: 'a caution of this program',
  },
];
