import { describe, expect, test } from 'vitest';
import { boxMesh, insideOut, together } from '../../../../tests/support/sample-meshes.ts';
import { writeStl } from '../../../shared/solid/formats/write-stl.ts';
import { readSolid } from './read-solid.ts';

async function taken(...meshes: readonly ReturnType<typeof boxMesh>[]) {
  const read = await readSolid('a.stl', writeStl(together(...meshes), ''));
  if (!read.ok) throw new Error(JSON.stringify(read.error));
  return read.value;
}

describe('several bodies in one file', () => {
  test('what lies in two of them counts once', async () => {
    const solid = await taken(boxMesh([0, 0, 0], [40, 30, 20]), boxMesh([30, 10, 5], [60, 20, 15]));
    expect(solid.volume).toBeCloseTo(24_000 + 2_000, 3);
    expect(solid.shells).toBe(1);
    expect(solid.remarks).toHaveLength(1);
  });
  test('apart they stay as they are', async () => {
    const solid = await taken(boxMesh([0, 0, 0], [40, 30, 20]), boxMesh([50, 0, 0], [60, 10, 10]));
    expect(solid).toMatchObject({ volume: 25_000, shells: 2, remarks: [] });
  });
  test('a peg that reaches through a hollow box leaves the rest of the hollow open', async () => {
    const hollow = insideOut(boxMesh([10, 10, 5], [30, 20, 15]));
    const solid = await taken(boxMesh([0, 0, 0], [40, 30, 20]), hollow, boxMesh([18, 12, -10], [22, 16, 30]));
    // The box less the hollow, 4 × 4 of peg across the ten of the hollow, and ten beyond it on either side.
    expect(solid.volume).toBeCloseTo(24_000 - 2_000 + 160 + 320, 3);
  });
  test('a loose piece in a hollow stays in it', async () => {
    const hollow = insideOut(boxMesh([10, 10, 5], [30, 20, 15]));
    const solid = await taken(boxMesh([0, 0, 0], [40, 30, 20]), hollow, boxMesh([15, 12, 8], [20, 17, 13]));
    expect(solid).toMatchObject({ shells: 3, remarks: [] });
    expect(solid.volume).toBeCloseTo(24_000 - 2_000 + 125, 3);
  });
});

test('the form is told by the content where that is plain, otherwise by the ending', async () => {
  const bytes = writeStl(boxMesh([0, 0, 0], [1, 1, 1]), '');
  const renamed = await readSolid('a.step', bytes);
  expect(renamed.ok && renamed.value.form).toBe('stl');
  const unknown = await readSolid('a.txt', new Uint8Array([1, 2, 3]));
  expect(unknown.ok ? undefined : unknown.error.code).toBe('unknown-form');
});
