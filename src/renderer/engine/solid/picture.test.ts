import { expect, test } from 'vitest';
import { block, cylinder, placedBodies, solidOf, THE_PART, tube } from '../../../../tests/support/placed-bodies.ts';
import { loadKernel } from '../../../shared/solid/manifold/load-kernel.ts';
import { pictureOf } from './picture.ts';

const kernel = await loadKernel();
const pictureOfBodies = (...bodies: Parameters<typeof solidOf>[1]) =>
  pictureOf(solidOf(kernel, bodies).solids.meshOf(THE_PART, 'finished')!);

const lengthOfEdges = (edges: Float32Array): number => {
  let sum = 0;
  for (let i = 0; i < edges.length; i += 6)
    sum += Math.hypot(edges[i + 3]! - edges[i]!, edges[i + 4]! - edges[i + 1]!, edges[i + 5]! - edges[i + 2]!);
  return sum;
};

test('a block has three corners at each vertex, square normals, and twelve edges', () => {
  const { positions, normals, edges, triangles } = pictureOfBodies({ shape: block([0, 60], [0, 40], [0, 20]) });
  expect(positions.length / 3).toBe(24);
  expect(triangles.length / 3).toBe(12);
  for (let i = 0; i < normals.length; i += 3) {
    const axes = [...normals.subarray(i, i + 3)].map(Math.abs).sort();
    expect(axes).toEqual([0, 0, 1]);
  }
  expect(edges.length / 6).toBe(12);
  expect(lengthOfEdges(edges)).toBeCloseTo(4 * (60 + 40 + 20), 3);
});

test('a cylinder is smooth round its side and sharp at its ends', () => {
  const radius = 10;
  const { positions, normals, edges } = pictureOfBodies({ shape: cylinder('Z', [5, 7], [0, 30], radius) });
  for (let i = 0; i < positions.length; i += 3) {
    const [nx, ny, nz] = [normals[i]!, normals[i + 1]!, normals[i + 2]!];
    expect(Math.hypot(nx, ny, nz)).toBeCloseTo(1, 5);
    if (Math.abs(nz) > 0.5) continue;
    expect(nx).toBeCloseTo((positions[i]! - 5) / radius, 1);
    expect(ny).toBeCloseTo((positions[i + 1]! - 7) / radius, 1);
  }
  // Two rings, a little short of the circles that their sides stand in.
  const rings = 2 * 2 * Math.PI * radius;
  expect(lengthOfEdges(edges)).toBeLessThan(rings);
  expect(lengthOfEdges(edges)).toBeGreaterThan(rings * 0.998);
});

test('two bodies whose faces run on into each other show no edge between them; each knows its triangles', () => {
  const one = { shape: block([0, 30], [0, 40], [0, 20]) };
  const two = { shape: block([30, 60], [0, 40], [0, 20]) };
  const { edges, bodyOf, bodies } = pictureOfBodies(one, two);
  expect(lengthOfEdges(edges)).toBeCloseTo(4 * (60 + 40 + 20), 3);
  expect(new Set(bodyOf)).toEqual(new Set([0, 1]));
  expect(bodies).toEqual(placedBodies([one, two]).map(({ record }) => record.id));
});

test('the edges of a hole belong to the picture', () => {
  const plate = { shape: block([0, 60], [0, 40], [0, 20]) };
  const hole = { shape: cylinder('Z', [30, 20], [-1, 21], 6), adds: false };
  const { edges } = pictureOfBodies(plate, hole);
  const rings = 2 * 2 * Math.PI * 6;
  expect(lengthOfEdges(edges) - 4 * 120).toBeGreaterThan(rings * 0.995);
  expect(lengthOfEdges(edges) - 4 * 120).toBeLessThanOrEqual(rings);
});

test('its arrays are its own: they may be handed over while the mesh stays', () => {
  const { solids } = solidOf(kernel, [{ shape: tube('X', [0, 0], [0, 10], 8, 5) }]);
  const mesh = solids.meshOf(THE_PART, 'finished')!;
  const picture = pictureOf(mesh);
  const own = [picture.positions, picture.normals, picture.triangles, picture.bodyOf, picture.edges].map(
    (one) => one.buffer,
  );
  const shared = [mesh.vertices, mesh.triangles, mesh.bodyOf, mesh.faceOf].map((one) => one.buffer);
  for (const buffer of own) expect(shared).not.toContain(buffer);
});
