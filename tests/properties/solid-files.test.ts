import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { CodedMesh } from '../../src/shared/build/mesh-code.ts';
import { countEdges, edgesOf } from '../../src/shared/solid/formats/edges.ts';
import { mendMesh } from '../../src/shared/solid/formats/mend-mesh.ts';
import { readObj } from '../../src/shared/solid/formats/read-obj.ts';
import { readStl } from '../../src/shared/solid/formats/read-stl.ts';
import { read3mf } from '../../src/shared/solid/formats/three-mf/read-3mf.ts';
import { write3mf } from '../../src/shared/solid/formats/three-mf/write-3mf.ts';
import { writeStl } from '../../src/shared/solid/formats/write-stl.ts';
import { apart, boxMesh, insideOut, meshVolume, ringMesh, together } from '../support/sample-meshes.ts';

const ring = ringMesh(24, 10, 20, 5);
const textOfStl = `solid ring\n${[...apart(ring).vertices]
  .map(String)
  .reduce<string[][]>((rows, word, i) => {
    if (i % 9 === 0) rows.push([]);
    rows.at(-1)!.push(word);
    return rows;
  }, [])
  .map(
    (row) =>
      `facet normal 0 0 0\nouter loop\n${[0, 3, 6].map((i) => `vertex ${row.slice(i, i + 3).join(' ')}`).join('\n')}\nendloop\nendfacet`,
  )
  .join('\n')}\nendsolid ring\n`;
const textOfObj = [
  ...[...ring.vertices].flatMap((x, i, all) => (i % 3 === 0 ? [`v ${x} ${all[i + 1]} ${all[i + 2]}`] : [])),
  ...[...ring.triangles].flatMap((a, i, all) =>
    i % 3 === 0 ? [`f ${a + 1} ${all[i + 1]! + 1} ${all[i + 2]! + 1}`] : [],
  ),
].join('\n');
const encoder = new TextEncoder();

const forms = [
  ['binary STL', readStl, writeStl(ring, 'ring')],
  ['STL text', readStl, encoder.encode(textOfStl)],
  ['OBJ', readObj, encoder.encode(textOfObj)],
  ['3MF', read3mf, write3mf(ring, 'ring')],
] as const;

test.each(forms)('%s: what is whole is read whole', (_, read, bytes) => {
  const file = read(bytes);
  if (!file.ok) throw new Error(JSON.stringify(file.error));
  const sound = mendMesh(file.value.mesh, String);
  expect(sound.ok && sound.value.volume / meshVolume(ring)).toBeCloseTo(1, 6);
});

/** Some bytes changed, and perhaps the end cut off. */
const damaged = (bytes: Uint8Array) =>
  fc
    .tuple(
      fc.array(fc.tuple(fc.nat(bytes.length - 1), fc.integer({ min: 0, max: 255 })), { maxLength: 8 }),
      fc.oneof({ weight: 3, arbitrary: fc.constant(bytes.length) }, { weight: 1, arbitrary: fc.nat(bytes.length) }),
    )
    .map(([changes, length]) => {
      const copy = bytes.slice(0, length);
      for (const [at, value] of changes) if (at < length) copy[at] = value;
      return copy;
    });

test.each(forms)('%s: what is damaged is read or refused in words, and what is read is sound', (_, read, bytes) => {
  fc.assert(
    fc.property(damaged(bytes), (spoiled) => {
      const file = read(spoiled);
      if (!file.ok) {
        expect(file.error.sentence).toMatch(/\.$/);
        expect(file.error.remedy).toMatch(/\.$/);
        return;
      }
      const { vertices, triangles } = file.value.mesh;
      expect(vertices.every(Number.isFinite)).toBe(true);
      expect(triangles.every((corner) => corner < vertices.length / 3)).toBe(true);
      expectSoundOrRefused(file.value.mesh);
    }),
    { numRuns: 150, seed: 20_261 },
  );
});

function expectSoundOrRefused(mesh: CodedMesh) {
  const sound = mendMesh(mesh, String);
  if (!sound.ok) {
    expect(sound.error.sentence).toMatch(/\.$/);
    return;
  }
  expect(countEdges(sound.value.mesh, edgesOf(sound.value.mesh))).toEqual({ odd: [], turned: [] });
  expect(sound.value.volume).toBeGreaterThan(0);
  expect(sound.value.volume).toBeCloseTo(meshVolume(sound.value.mesh), 3);
}

test('any bytes at all are refused in words', () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 600 }), (bytes) => {
      for (const read of [readStl, readObj, read3mf]) {
        const file = read(bytes);
        if (!file.ok) expect(file.error.remedy).toMatch(/\.$/);
      }
    }),
    { numRuns: 300, seed: 20_262 },
  );
});

test('boxes come back with their volume however their triangles lie in the file', () => {
  const boxes = fc.array(fc.record({ size: fc.integer({ min: 1, max: 9 }), turned: fc.boolean() }), {
    minLength: 1,
    maxLength: 6,
  });
  fc.assert(
    fc.property(boxes, fc.array(fc.nat(), { minLength: 72, maxLength: 72 }), fc.boolean(), (list, order, split) => {
      const solids = list.map(({ size, turned }, i) => {
        const box = boxMesh([i * 20, 0, 0], [i * 20 + size, size, size]);
        return turned ? insideOut(box) : box;
      });
      const whole = together(...solids);
      const mesh = split ? apart(whole) : whole;
      const rows = Array.from({ length: mesh.triangles.length / 3 }, (_, i) => i).toSorted(
        (a, b) => order[a]! - order[b]! || a - b,
      );
      const shuffled = Uint32Array.from(rows.flatMap((row) => [...mesh.triangles.subarray(row * 3, row * 3 + 3)]));
      const sound = mendMesh({ vertices: mesh.vertices, triangles: shuffled }, String);
      expect(sound.ok && sound.value.volume).toBeCloseTo(
        list.reduce((sum, { size }) => sum + size ** 3, 0),
        6,
      );
    }),
    { numRuns: 100, seed: 20_263 },
  );
});

test('single faces turned at random are turned back', () => {
  fc.assert(
    fc.property(fc.array(fc.boolean(), { minLength: 192, maxLength: 192 }), (turned) => {
      const triangles = ring.triangles.map((_, i) =>
        turned[Math.floor(i / 3)] ? ring.triangles[i - (i % 3) + [0, 2, 1][i % 3]!]! : ring.triangles[i]!,
      );
      const sound = mendMesh({ vertices: ring.vertices, triangles }, String);
      expect(sound.ok && sound.value.volume).toBeCloseTo(meshVolume(ring), 6);
    }),
    { numRuns: 60, seed: 20_264 },
  );
});
