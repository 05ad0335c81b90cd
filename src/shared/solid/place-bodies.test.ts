import { expect, test } from 'vitest';
import { everyShape } from '../../../tests/support/sketch-bodies.ts';
import type { PartId } from '../base/ids.ts';
import { bodiesOf, buildOf } from '../build/look-up.ts';
import type { Build, BuildRecord } from '../build/records.ts';
import { createDrawing } from '../drawing/create-drawing.ts';
import { placeBodies } from './place-bodies.ts';

const recordsIn = (build: Build, part: PartId) => ({
  bodies: bodiesOf(build, part),
  get: (id: BuildRecord['id']) => build.get(id),
});

function placedOf(build: Build, part: PartId) {
  return placeBodies(part, recordsIn(build, part), createDrawing(build));
}

test('every shape is placed', () => {
  const build = buildOf(everyShape());
  const placed = placedOf(build, 'part:b' as PartId);
  expect(placed.map(({ problem }) => problem)).toEqual(placed.map(() => undefined));
  expect(placed.map(({ moves }) => moves.length)).toEqual([1, 1, 1, 1, 1, 1, 12, 1, 1, 1, 1, 1]);
});
