import type { PartId } from '../../src/shared/base/ids.ts';
import { bodiesOf, buildOf } from '../../src/shared/build/look-up.ts';
import type { Build, BuildRecord } from '../../src/shared/build/records.ts';
import { createDrawing } from '../../src/shared/drawing/create-drawing.ts';
import { type BodyRecords, placeBodies } from '../../src/shared/solid/place-bodies.ts';
import type { PlacedBody } from '../../src/shared/solid/placed.ts';
import type { BodySketch } from './sketch-bodies.ts';

/** What placing reads of a build. */
export const recordsOfBodies = (build: Build, part: PartId): BodyRecords => ({
  bodies: bodiesOf(build, part),
  get: (id: BuildRecord['id']) => build.get(id),
});

/** The bodies of a sketch, placed. */
export function placeSketch(sketch: BodySketch): readonly PlacedBody[] {
  const build = buildOf(sketch.records());
  return placeBodies(sketch.part.id, recordsOfBodies(build, sketch.part.id), createDrawing(build));
}
