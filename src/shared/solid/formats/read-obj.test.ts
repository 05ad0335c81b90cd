import { describe, expect, test } from 'vitest';
import { mendMesh } from './mend-mesh.ts';
import { readObj } from './read-obj.ts';

const bytesOf = (text: string) => new TextEncoder().encode(text);
const taken = (text: string) => {
  const read = readObj(bytesOf(text));
  if (!read.ok) throw new Error(JSON.stringify(read.error));
  return read.value;
};
const problem = (text: string) => {
  const read = readObj(bytesOf(text));
  if (read.ok) throw new Error('it was taken');
  return read.error;
};
const volumeOf = (text: string) => {
  const sound = mendMesh(taken(text).mesh, String);
  if (!sound.ok) throw new Error(JSON.stringify(sound.error));
  return sound.value.volume;
};

const cubeCorners = [0, 2].flatMap((z) => [`v 0 0 ${z}`, `v 2 0 ${z}`, `v 2 2 ${z}`, `v 0 2 ${z}`]).join('\n');
const quads = ['1 4 3 2', '5 6 7 8', '1 2 6 5', '2 3 7 6', '3 4 8 7', '4 1 5 8'];
const faces = (written: (corner: string) => string) =>
  quads
    .map(
      (quad) =>
        `f ${quad
          .split(' ')
          .map((corner) => written(corner))
          .join(' ')}`,
    )
    .join('\n');

describe('a cube', () => {
  test.each([
    ['of plain faces', `# a cube\no cube\n${cubeCorners}\n${faces((c) => c)}\n`],
    [
      'with textures and normals',
      `mtllib a.mtl\n${cubeCorners}\nvn 0 0 1\ng side\nusemtl red\n${faces((c) => `${c}/1/1`)}`,
    ],
    ['with normals alone', `${cubeCorners}\n${faces((c) => `${c}//1`)}`],
    ['counted from the end', `${cubeCorners}\n${faces((c) => String(Number(c) - 9))}`],
    ['with ends of lines of another system', `${cubeCorners}\n${faces((c) => c)}\n`.replaceAll('\n', '\r\n')],
    ['in joined lines', `${cubeCorners}\n${faces((c) => c)}`.replace('f 1 4', 'f 1 \\\n 4')],
    ['with colours behind the places', `${cubeCorners.replaceAll('\n', ' 0.5 0.5 0.5\n')}\n${faces((c) => c)}`],
  ])('%s', (_, text) => {
    expect(volumeOf(text)).toBeCloseTo(8, 12);
  });
});

test('a face with a re-entrant corner is cut within its outline', () => {
  // An L of three unit squares, one high.
  const outline = ['0 0', '2 0', '2 1', '1 1', '1 2', '0 2'];
  const corners = [0, 1].flatMap((z) => outline.map((place) => `v ${place} ${z}`)).join('\n');
  const sides = outline.map((_, i) => `f ${i + 1} ${((i + 1) % 6) + 1} ${((i + 1) % 6) + 7} ${i + 7}`).join('\n');
  const text = `${corners}\nf 6 5 4 3 2 1\nf 7 8 9 10 11 12\n${sides}\n`;
  expect(volumeOf(text)).toBeCloseTo(3, 12);
  const { vertices, triangles } = taken(text).mesh;
  // The areas of the pieces of the upper side add up to its own: none lies outside, none over another.
  let area = 0;
  for (let i = 0; i < triangles.length; i += 3) {
    const [a, b, c] = [0, 1, 2].map((k) => [...vertices.subarray(triangles[i + k]! * 3, triangles[i + k]! * 3 + 3)]);
    if (a![2] !== 1 || b![2] !== 1 || c![2] !== 1) continue;
    area += Math.abs((b![0]! - a![0]!) * (c![1]! - a![1]!) - (b![1]! - a![1]!) * (c![0]! - a![0]!)) / 2;
  }
  expect(area).toBeCloseTo(3, 12);
});

test.each([
  ['a vertex that is not there', 'v 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 4', 'unreadable', 'line 4'],
  ['a vertex 0', 'v 0 0 0\nv 1 0 0\nv 0 1 0\nf 0 1 2', 'unreadable', 'line 4'],
  ['a vertex before the first', 'v 0 0 0\nv 1 0 0\nv 0 1 0\nf -4 1 2', 'unreadable', 'line 4'],
  ['a word for a vertex', 'v 0 0 0\nf 1 a b', 'unreadable', 'line 2'],
  ['a place that is none', 'v 0 0,5 0', 'unreadable', 'line 1'],
  ['two corners', 'v 0 0 0\nv 1 0 0\nf 1 2', 'unreadable', 'line 3'],
  ['no faces', 'v 0 0 0\nv 1 0 0\nl 1 2', 'empty', ''],
  ['smooth surfaces alone', 'v 0 0 0\ncstype bspline\nsurf 0 1 0 1 1', 'not-supported', ''],
  ['nothing', '', 'empty', ''],
])('%s is refused', (_, text, code, place) => {
  expect(problem(text)).toMatchObject({ code, place });
});
