import type { BodyId } from '../base/ids.ts';
import { flatFaces } from './flat-faces.ts';
import { holeEdges } from './hole-edges.ts';
import { piecesOf } from './loose-pieces.ts';
import type { Surface } from './mesh/surface.ts';
import type { MassProperties, PartState, PlacedBody } from './placed.ts';
import type { PartFaces } from './solids.ts';
import { thinWalls } from './thin-walls.ts';

/** Measures on the surfaces of a part in both states; where these are one object, it is measured once. */
export function facesOf(
  surfaces: Readonly<Record<PartState, Surface>>,
  properties: Readonly<Record<PartState, MassProperties>>,
  bodies: readonly PlacedBody[],
): PartFaces {
  const bodyAt = (index: number): BodyId => bodies[index]!.record.id;
  const looseIn = (state: PartState): readonly (readonly BodyId[])[] =>
    properties[state].pieces > 1
      ? piecesOf(surfaces[state])
          .slice(1)
          .map((piece) => piece.map(bodyAt))
      : [];
  return {
    walls: thinWalls(surfaces['as cast'], bodyAt),
    holes: holeEdges(surfaces.finished, bodies, bodyAt),
    flats: flatFaces(surfaces.finished),
    loose: { finished: looseIn('finished'), 'as cast': looseIn('as cast') },
  };
}
