import { writeFile } from 'node:fs/promises';
import { expect, test } from 'vitest';
import { partOutputSchema } from '../../src/main/cli/output/part-output.ts';
import type { PartId } from '../../src/shared/base/ids.ts';
import { writeBuildJson } from '../../src/shared/build/build-json.ts';
import { defaultDimension } from '../../src/shared/build/dimension.ts';
import { defaultPart } from '../../src/shared/build/part.ts';
import type { BuildRecord } from '../../src/shared/build/records.ts';
import { defaultSettings } from '../../src/shared/build/settings.ts';
import { defaultStation } from '../../src/shared/build/station.ts';
import { cli, temporaryFolder } from './run-cli.ts';

const inFolder = temporaryFolder();
const part = { ...defaultPart('part:a' as PartId, 'packing', 1), material: 'mild steel' };

/** A block of 100 × 50 × 20 mm, bored through after casting, and a rib whose station no dimension places. */
function records(): readonly BuildRecord[] {
  const sizes = { X: 100, Y: 50, Z: 20 };
  const axes = ['X', 'Y', 'Z'] as const;
  const station = (axis: (typeof axes)[number], n: number, name = `${axis}${n}`) => ({
    ...defaultStation(`station:${axis}${n}` as never, part.id, axis, name, n),
    datum: n === 0,
  });
  const between = (axis: (typeof axes)[number], n: number, value: number) => ({
    ...defaultDimension(
      `dimension:${axis}${n}` as never,
      part.id,
      `along ${axis}${n}`,
      { type: 'between', from: `station:${axis}0` as never, to: `station:${axis}${n}` as never },
      n,
    ),
    value: String(value),
  });
  const bore = {
    ...defaultDimension('dimension:bore' as never, part.id, 'bore', { type: 'size', form: 'diameter' }, 9),
    value: '10',
  };
  const ends = (axis: string, n = 1) => [`station:${axis}0`, `station:${axis}${n}`];
  const body = (id: string, adds: boolean, finish: string, shape: unknown, order: number) =>
    ({
      kind: 'body',
      id: `body:${id}`,
      part: part.id,
      name: id,
      adds,
      finish,
      shape,
      repeats: [],
      note: '',
      order,
    }) as never;
  return [
    defaultSettings('Press'),
    part,
    ...axes.flatMap((axis) => [station(axis, 0), station(axis, 1), station(axis, 2)]),
    station('X', 3, 'rib end'),
    ...axes.flatMap((axis) => [between(axis, 1, sizes[axis]), between(axis, 2, sizes[axis] / 2)]),
    bore,
    body('slab', true, 'as cast', { type: 'block', x: ends('X'), y: ends('Y'), z: ends('Z') }, 1),
    body(
      'eye',
      false,
      'machined',
      {
        type: 'hole',
        axis: 'Z',
        from: 'station:Z1',
        to: 'station:Z0',
        centre: ['station:X2', 'station:Y2'],
        diameter: bore.id,
      },
      2,
    ),
    body('rib', true, 'as cast', { type: 'block', x: ends('X', 3), y: ends('Y'), z: ends('Z') }, 3),
  ];
}

test('the bodies of a part, and mass, centre and size of both its states', async () => {
  const file = inFolder('packing.json');
  await writeFile(file, writeBuildJson({ records: records(), issues: [] }));
  const { stdout } = await cli(['part', file, 'packing', '--json']);
  const { bodies, solid } = partOutputSchema.parse(JSON.parse(stdout));
  expect(bodies).toMatchObject([
    { name: 'slab', adds: true, idle: false },
    { name: 'eye', adds: false, finish: 'machined', idle: false },
    { name: 'rib', whyNot: { why: 'not-placed', at: ['rib end'] } },
  ]);
  const hole = Math.PI * 25 * 20;
  expect(solid?.material).toMatchObject({ densityKgM3: 7850 });
  expect(solid?.asCast.volumeMm3).toBeCloseTo(100_000, 6);
  expect(solid?.asCast.massKg).toBeCloseTo(0.785, 9);
  expect((solid?.finished.volumeMm3 ?? 0) / (100_000 - hole)).toBeCloseTo(1, 7);
  expect(solid?.finished.boxMaxMm).toEqual([100, 50, 20]);

  const words = (await cli(['part', file, 'packing'])).stdout;
  expect(words).toMatch(/mass +0\.773 kg +0\.785 kg/);
  expect(words).toMatch(/rib +block +adds +as cast +not placed \(rib end\)/);
  for (const line of words.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
});
