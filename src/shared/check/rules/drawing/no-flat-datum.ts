import { isWhole } from '../../is-whole.ts';
import { listed } from '../../listing.ts';
import { partNames } from '../../part-names.ts';
import { definePartRule } from '../../rule.ts';

/** A face with less than this share of the part's surface is too small to stand on. Common practice, no source. */
const LEAST_SHARE = 0.01;
/** Corners of the solid are rounded to 24 bits, in mm at a metre. */
const SAME_PLACE_MM = 1e-4;

export default definePartRule({
  id: 'no-flat-datum',
  title: 'No flat datum face',
  department: 'drawing',
  severity: 'caution',
  shuts: [],
  acceptable: true,
  needs: ['part', 'stations', 'axes', 'bodies', 'solid'],
  ofSurfaces: true,
  messages: {
    none: '{part} has no flat face at any of its datums ({stations}): nothing to hold it by that its dimensions start from.',
  },
  remedies: {
    none: 'Make a station that is a flat face the datum of its axis, or give the part a pad or lug to hold it by.',
  },

  check({ part, stations, axes, bodies, solid }) {
    const datums = axes.flatMap(({ axis, datum }) => (datum === undefined ? [] : [{ axis, datum }]));
    // What is cut from bar or plate is held by what it is cut from.
    if (part.make !== 'cast' || !solid || datums.length === 0 || !isWhole(bodies)) return [];
    const least = LEAST_SHARE * solid.finished.areaMm2;
    const isFlat = datums.some(({ axis }) =>
      solid.faces.flats.some(
        (face) => face.axis === axis && Math.abs(face.atMm) <= SAME_PLACE_MM && face.areaMm2 >= least,
      ),
    );
    if (isFlat) return [];
    const names = listed(datums.map(({ datum }) => partNames({ stations })(datum)));
    return [
      {
        message: 'none',
        at: [part.id, ...datums.map(({ datum }) => datum)],
        data: { part: part.name, stations: names },
      },
    ];
  },
});
