import type { OperationId, PartId } from '../../src/shared/base/ids.ts';
import { type Casting, defaultCasting } from '../../src/shared/build/casting.ts';
import { buildOf } from '../../src/shared/build/look-up.ts';
import { defaultOperation, type Operation, type Process } from '../../src/shared/build/operation.ts';
import type { BuildRecord, RecordId } from '../../src/shared/build/records.ts';
import { createDrawing } from '../../src/shared/drawing/create-drawing.ts';
import { readingOf } from '../../src/shared/plan/amounts.ts';
import { numbersOf } from '../../src/shared/plan/numbers.ts';
import { placeBodies } from '../../src/shared/solid/place-bodies.ts';
import { recordsOfBodies } from './place-sketch.ts';

export const castingOf = (part: PartId, over: Partial<Casting> = {}): Casting => ({
  ...defaultCasting('casting:c' as Casting['id'], part),
  ...over,
});

export const makes = (part: PartId, process: Process, ...ids: Operation['makes']): Operation => ({
  ...defaultOperation(`operation:${process}-${ids.join('+')}` as OperationId, part, process, process, 1),
  makes: ids,
});

/** A part of a build as the pattern shop sees it: its bodies placed, its numbers, written texts read. */
export function patternPart(records: Iterable<BuildRecord>, part: PartId) {
  const build = buildOf(records);
  const drawing = createDrawing(build);
  const numbers = numbersOf(drawing, (id: RecordId) => build.get(id));
  return {
    build,
    numbers,
    bodies: placeBodies(part, recordsOfBodies(build, part), drawing),
    reading: readingOf(numbers, 'mm'),
    castingGrade: 11,
  };
}
