import { beforeAll, expect, test } from 'vitest';
import type { BodyId, MaterialId, PartId } from '../base/ids.ts';
import type { Body } from '../build/body.ts';
import type { BuildDiff } from '../build/diff.ts';
import { defaultDimension } from '../build/dimension.ts';
import { buildOf } from '../build/look-up.ts';
import { defaultPart } from '../build/part.ts';
import type { BuildRecord } from '../build/records.ts';
import { defaultSettings } from '../build/settings.ts';
import { defaultStation } from '../build/station.ts';
import type { Kernel } from '../solid/manifold/kernel.ts';
import { loadKernel } from '../solid/manifold/load-kernel.ts';
import { createWorks } from './create-works.ts';

let kernel: Kernel;
beforeAll(async () => {
  kernel = await loadKernel();
});

const partId = 'part:a' as PartId;
const part = defaultPart(partId, 'plate', 1);
const stations = (['X', 'Y', 'Z'] as const).flatMap((axis) =>
  [0, 1].map((n) => ({
    ...defaultStation(`station:${axis}${n}` as never, partId, axis, `${axis}${n}`, n),
    datum: n === 0,
  })),
);
const lengths = (['X', 'Y', 'Z'] as const).map((axis, n) => ({
  ...defaultDimension(
    `dimension:${axis}` as never,
    partId,
    `along ${axis}`,
    { type: 'between', from: `station:${axis}0` as never, to: `station:${axis}1` as never },
    n,
  ),
  value: String(10 * (n + 1)),
}));
const ends = (axis: string) => [`station:${axis}0`, `station:${axis}1`];
const body = {
  kind: 'body',
  id: 'body:b' as BodyId,
  part: partId,
  name: 'plate',
  adds: true,
  finish: 'as cast',
  shape: { type: 'block', x: ends('X'), y: ends('Y'), z: ends('Z') },
  repeats: [],
  note: '',
  order: 1,
} as unknown as Body;
const records: readonly BuildRecord[] = [defaultSettings('Press'), part, ...stations, ...lengths, body];
const changed = (from: BuildRecord, to: BuildRecord): BuildDiff => ({ added: [], removed: [], updated: [[from, to]] });

test('the solid of a part follows its dimensions, and only them', () => {
  const works = createWorks(buildOf(records), () => kernel);
  expect(works.solids.pending()).toEqual([partId]);
  expect(works.computeSolid(partId).parts).toEqual([partId]);
  expect(works.solids.solidOf(partId)?.finished.volumeMm3).toBeCloseTo(6000, 9);
  expect(works.computeSolid(partId).parts).toEqual([]);
  works.update(changed(part, { ...part, note: 'mind the corners' }));
  expect(works.solids.pending()).toEqual([]);
  const [along] = lengths;
  works.update(changed(along!, { ...along!, value: '15' }));
  expect(works.solids.pending()).toEqual([partId]);
  expect(works.solids.solidOf(partId)).toBeUndefined();
  works.computeSolid(partId);
  expect(works.solids.solidOf(partId)?.finished.volumeMm3).toBeCloseTo(9000, 9);
  works.update({ added: [], updated: [], removed: [body] });
  expect(works.solids.bodiesOf(partId)).toEqual([]);
  expect(works.solids.solidOf(partId)).toBeUndefined();
  works.solids.drop();
});

test('without a kernel, bodies are placed all the same', () => {
  const works = createWorks(buildOf(records));
  expect(works.solids.pending()).toEqual([]);
  expect(works.solids.bodiesOf(partId)[0]?.shape).toBeDefined();
  expect(works.computeSolid(partId)).toEqual({
    drawing: { dimensions: [], axes: [] },
    parts: [],
    findingsChanged: false,
  });
});

test('a material of the build’s own reaches the parts that name it', () => {
  const works = createWorks(buildOf([...records.filter((record) => record !== part), { ...part, material: 'GG25' }]));
  const own: BuildRecord = {
    kind: 'material',
    id: 'material:m' as MaterialId,
    name: 'gg25',
    values: { densityKgM3: 7010 },
    source: 'weighed',
  };
  expect(works.update({ added: [own], removed: [], updated: [] }).parts).toEqual([partId]);
});
