import { describe, expect, test } from 'vitest';
import { apart, boxMesh, insideOut, ringMesh, together } from '../../../../tests/support/sample-meshes.ts';
import type { CodedMesh } from '../../build/mesh-code.ts';
import { countEdges, edgesOf } from './edges.ts';
import { mendMesh } from './mend-mesh.ts';

const written = (place: readonly number[]) => place.join(' ');
const box = boxMesh([0, 0, 0], [40, 30, 20]);

function sound(mesh: CodedMesh) {
  const result = mendMesh(mesh, written);
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  expect(countEdges(result.value.mesh, edgesOf(result.value.mesh))).toEqual({ odd: [], turned: [] });
  return result.value;
}
function problem(mesh: CodedMesh) {
  const result = mendMesh(mesh, written);
  if (result.ok) throw new Error('it was taken');
  return result.error;
}

describe('what is sound', () => {
  test.each([
    ['a box', box, 24_000, 1],
    ['a box of triangles that share no corners', apart(box), 24_000, 1],
    ['a ring', apart(ringMesh(48, 10, 20, 5)), 48 * Math.sin(Math.PI / 24) * 0.5 * (400 - 100) * 5, 1],
    ['two boxes', together(box, boxMesh([100, 0, 0], [110, 10, 10])), 25_000, 2],
    ['two boxes that touch along an edge', together(box, boxMesh([40, 30, 0], [50, 40, 20])), 26_000, 1],
    ['a hollow box', together(box, insideOut(boxMesh([10, 10, 5], [20, 20, 15]))), 23_000, 2],
  ])('%s is taken as it is', (_, mesh, volume, shells) => {
    const taken = sound(mesh);
    expect(taken.volume).toBeCloseTo(volume, 6);
    expect(taken.shells).toBe(shells);
    expect(taken.remarks).toEqual([]);
  });
  test('corners that stand at one place become one', () => {
    expect(sound(apart(box)).mesh.vertices).toHaveLength(24);
    expect(sound(apart(box)).min).toEqual([0, 0, 0]);
    expect(sound(apart(box)).max).toEqual([40, 30, 20]);
  });
  test('minus nought is nought', () => {
    const mesh = apart(box);
    expect(sound({ ...mesh, vertices: mesh.vertices.map((v, i) => (v === 0 && i % 2 ? -0 : v)) }).volume).toBe(24_000);
  });
  test('far from its origin it keeps its volume', () => {
    expect(sound(boxMesh([1e6, 1e6, 1e6], [1e6 + 40, 1e6 + 30, 1e6 + 20])).volume).toBeCloseTo(24_000, 6);
  });
});

describe('what is mended', () => {
  test('corners that lie side by side', () => {
    const mesh = apart(box);
    const shaken = mesh.vertices.map((value, i) => value + ((i * 7919) % 13) * 1e-5);
    const taken = sound({ ...mesh, vertices: shaken });
    expect(taken.volume).toBeCloseTo(24_000, 0);
    expect(taken.remarks).toHaveLength(1);
    expect(taken.mesh.vertices).toHaveLength(24);
  });
  test('faces that look the wrong way, in the numbers of the fewer', () => {
    const triangles = Uint32Array.from(box.triangles);
    [triangles[1], triangles[2]] = [triangles[2]!, triangles[1]!];
    const taken = sound({ ...box, triangles });
    expect(taken.volume).toBeCloseTo(24_000, 6);
    expect(taken.remarks).toEqual(['One face was turned round.']);
  });
  test('a whole that is inside out', () => {
    expect(sound(insideOut(box)).volume).toBeCloseTo(24_000, 6);
    expect(sound(insideOut(box)).remarks).toHaveLength(1);
  });
  test('only the one of two that is inside out', () => {
    expect(sound(together(box, insideOut(boxMesh([100, 0, 0], [110, 10, 10])))).volume).toBeCloseTo(25_000, 6);
  });
  test('faces given twice', () => {
    const doubled = { ...box, triangles: Uint32Array.from([...box.triangles, ...box.triangles.slice(0, 9)]) };
    expect(sound(doubled).volume).toBeCloseTo(24_000, 6);
    expect(sound(together(box, box)).volume).toBeCloseTo(24_000, 6);
  });
  test('two solids with a face in common become one', () => {
    const taken = sound(together(box, boxMesh([0, 0, 20], [40, 30, 30])));
    expect(taken.volume).toBeCloseTo(36_000, 6);
    expect(taken.shells).toBe(1);
  });
  test('a triangle without a size goes', () => {
    const degenerate = { ...box, triangles: Uint32Array.from([...box.triangles, 0, 0, 1]) };
    expect(sound(degenerate).mesh.triangles).toHaveLength(36);
  });
  test('a body within material adds nothing', () => {
    const taken = sound(together(box, boxMesh([10, 10, 5], [20, 20, 15])));
    expect(taken.volume).toBeCloseTo(24_000, 6);
    expect(taken.shells).toBe(1);
    expect(taken.remarks).toHaveLength(1);
  });
  test('a ball in a hollow stays', () => {
    const inner = boxMesh([12, 12, 7], [18, 18, 13]);
    const taken = sound(together(inner, box, insideOut(boxMesh([10, 10, 5], [20, 20, 15]))));
    expect(taken.volume).toBeCloseTo(24_000 - 1_000 + 216, 6);
    expect(taken.remarks).toEqual([]);
  });
});

describe('what is refused', () => {
  test('an open surface, with the place of its first open edge', () => {
    const open = { ...box, triangles: box.triangles.slice(3) };
    expect(problem(open)).toMatchObject({ code: 'open', place: '20 15 0' });
    expect(problem(open).sentence).toContain('3 edges');
  });
  test('a hole wider than what joining may bridge', () => {
    const mesh = apart(box);
    expect(problem({ ...mesh, vertices: mesh.vertices.map((v, i) => (i === 2 ? v + 0.5 : v)) }).code).toBe('open');
  });
  test('a strip joined with a twist', () => {
    // The least Möbius strip has five triangles and a rim; doubled along the rim by a fan it is closed and one-sided:
    // the projective plane on six corners (the hemi-icosahedron).
    const faces = [0, 1, 2, 0, 2, 3, 0, 3, 4, 0, 4, 5, 0, 5, 1, 1, 2, 4, 2, 3, 5, 3, 4, 1, 4, 5, 2, 5, 1, 3];
    const vertices = Float64Array.from([0, 0, 9, 9, 0, 0, 3, 8, 1, -7, 5, 2, -7, -5, 3, 3, -8, 4]);
    expect(problem({ vertices, triangles: Uint32Array.from(faces) }).code).toBe('one-sided');
  });
  test('a skin without a thickness', () => {
    const triangles = Uint32Array.from([0, 1, 2, 0, 2, 1]);
    const vertices = Float64Array.from([0, 0, 0, 9, 0, 0, 0, 9, 0]);
    expect(problem({ vertices, triangles }).code).toBe('no-volume');
    expect(problem(boxMesh([0, 0, 0], [40, 30, 0])).code).toBe('no-volume');
  });
  test('a cloud of specks', () => {
    const specks = Array.from({ length: 101 }, (_, i) => boxMesh([i * 3, 0, 0], [i * 3 + 1, 1, 1]));
    expect(problem(together(...specks)).code).toBe('many-shells');
  });
});
