import { expect, test } from 'vitest';
import { partId, sketch } from '../../../../tests/support/sketch-build.ts';
import { createWorks } from '../../../shared/check/create-works.ts';
import { createBuildIndex } from '../build-index.ts';
import type { Scene } from '../view.ts';
import { partView } from './part.ts';

test.each([
  { unit: 'mm', written: '31.75', value: '31.75 mm', other: '1.25' },
  { unit: 'in', written: '1.25', value: '1.25 in', other: '31.75' },
] as const)('in a build of $unit a length comes to that unit first, and to the other beside it', (given) => {
  const build = sketch()
    .settings({ lengthUnit: given.unit })
    .part('column')
    .size('bore', 'diameter', given.written)
    .size('lean', 'angle', '30')
    .build();
  const scene = { works: createWorks(build), index: createBuildIndex(build) } as Scene;
  const sheet = partView.open('part')(scene, { part: partId('column') }, undefined);
  expect(sheet?.dimensions).toMatchObject([
    { value: given.value, other: given.other },
    { value: '30°', other: undefined },
  ]);
});
