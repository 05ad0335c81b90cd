import type { BodyId } from '../base/ids.ts';
import type { PlacedBody } from './placed.ts';
import type { PartFaces, PartFigures, PartSolid } from './solids.ts';

/** What is said of a part between a change and its measuring: live figures, and of the surfaces what was measured last. */
export type StandIn = (
  measured: PartSolid | undefined,
  live: PartFigures | undefined,
  bodies: readonly PlacedBody[],
) => PartSolid | undefined;

/** Stand-ins for the solids of one build: the very object of before as long as it stands for the same. */
export function createStandIns(): StandIn {
  const known = new WeakMap<PartSolid, { readonly from: readonly unknown[]; readonly solid: PartSolid }>();
  return (measured, live, bodies) => {
    // Where nothing may be left of the part there is nothing to stand in for.
    if (!measured || !bodies.some(({ shape }) => shape)) return undefined;
    const ids = new Set(bodies.map(({ record }) => record.id));
    const from = [live, ...ids];
    const before = known.get(measured);
    if (before?.from.length === from.length && before.from.every((one, i) => one === from[i])) return before.solid;
    const has = (id: BodyId) => ids.has(id);
    const solid: PartSolid = {
      part: measured.part,
      level: 'live',
      finished: live?.finished ?? measured.finished,
      asCast: live?.asCast ?? measured.asCast,
      idle: measured.idle.filter(has),
      faces: facesOn(measured.faces, has),
    };
    known.set(measured, { from, solid });
    return solid;
  };
}

/** The faces without what concerns bodies that are gone. */
function facesOn({ walls, holes, flats, loose }: PartFaces, has: (id: BodyId) => boolean): PartFaces {
  return {
    walls: walls.filter(({ bodies }) => bodies.every(has)),
    holes: holes.filter(({ body, beside }) => has(body) && has(beside)),
    flats,
    loose: {
      finished: loose.finished.filter((piece) => piece.every(has)),
      'as cast': loose['as cast'].filter((piece) => piece.every(has)),
    },
  };
}
