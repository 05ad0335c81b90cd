import type { CodedMesh } from '../../build/mesh-code.ts';

/** A table from places to vertex numbers, open-addressed: a million vertices as strings in a `Map` would take seconds. */
function placeTable(vertices: Float64Array): (vertex: number) => number {
  const count = vertices.length / 3;
  const size = 2 ** Math.ceil(Math.log2(Math.max(16, count * 2)));
  const slots = new Int32Array(size).fill(-1);
  const one = new Float64Array(1);
  const halves = new Uint32Array(one.buffer);
  const mix = (hash: number, value: number): number => {
    one[0] = value;
    const mixed = Math.imul(hash ^ halves[0]!, 0x9e3779b1) ^ Math.imul(halves[1]!, 0x85ebca6b);
    return mixed ^ (mixed >>> 15);
  };
  return (vertex) => {
    const x = vertices[vertex * 3]!;
    const y = vertices[vertex * 3 + 1]!;
    const z = vertices[vertex * 3 + 2]!;
    let slot = mix(mix(mix(0, x), y), z) & (size - 1);
    for (;;) {
      const other = slots[slot]!;
      if (other < 0) {
        slots[slot] = vertex;
        return vertex;
      }
      if (vertices[other * 3] === x && vertices[other * 3 + 1] === y && vertices[other * 3 + 2] === z) return other;
      slot = (slot + 1) & (size - 1);
    }
  };
}

/** Joins vertices of exactly the same place. Triangles that lose a corner thereby go, and so do vertices of no triangle. */
export function weldExactly({ vertices, triangles }: CodedMesh): CodedMesh {
  // Minus nought is the same place as nought, and not the same bits.
  const places = vertices.map((value) => value + 0);
  const first = placeTable(places);
  const standsFor = Uint32Array.from({ length: places.length / 3 }, (_, vertex) => first(vertex));
  return renumbered({ vertices: places, triangles }, standsFor);
}

/**
 * Joins vertices that lie no further apart than `reach`, the marked ones only: where a surface is closed nothing moves.
 *
 * @param marked by vertex: 1 where it may be joined
 */
export function weldNear({ vertices, triangles }: CodedMesh, marked: Uint8Array, reach: number): CodedMesh {
  const cells = new Map<string, number[]>();
  const standsFor = Uint32Array.from({ length: vertices.length / 3 }, (_, vertex) => vertex);
  for (let vertex = 0; vertex < marked.length; vertex++) {
    if (marked[vertex] !== 1) continue;
    const [x, y, z] = [vertices[vertex * 3]!, vertices[vertex * 3 + 1]!, vertices[vertex * 3 + 2]!];
    const cell = [x, y, z].map((value) => Math.floor(value / reach));
    const near = nearest(cells, cell, (other) =>
      Math.hypot(vertices[other * 3]! - x, vertices[other * 3 + 1]! - y, vertices[other * 3 + 2]! - z),
    );
    if (near !== undefined && near.distance <= reach) standsFor[vertex] = near.vertex;
    else {
      const key = cell.join();
      const there = cells.get(key);
      if (there) there.push(vertex);
      else cells.set(key, [vertex]);
    }
  }
  return renumbered({ vertices, triangles }, standsFor);
}

/** The nearest vertex of a cell and its 26 neighbours. */
function nearest(
  cells: ReadonlyMap<string, readonly number[]>,
  cell: readonly number[],
  distanceTo: (vertex: number) => number,
): { readonly vertex: number; readonly distance: number } | undefined {
  let found: { readonly vertex: number; readonly distance: number } | undefined;
  for (let i = 0; i < 27; i++) {
    const step = [(i % 3) - 1, (Math.floor(i / 3) % 3) - 1, Math.floor(i / 9) - 1];
    for (const vertex of cells.get(cell.map((value, axis) => value + step[axis]!).join()) ?? []) {
      const distance = distanceTo(vertex);
      if (found === undefined || distance < found.distance) found = { vertex, distance };
    }
  }
  return found;
}

/** Puts for every vertex the one that stands for it, and numbers anew those that are still used. */
function renumbered({ vertices, triangles }: CodedMesh, standsFor: Uint32Array): CodedMesh {
  const kept = new Uint32Array(triangles.length);
  let length = 0;
  for (let i = 0; i < triangles.length; i += 3) {
    const a = standsFor[triangles[i]!]!;
    const b = standsFor[triangles[i + 1]!]!;
    const c = standsFor[triangles[i + 2]!]!;
    if (a === b || b === c || c === a) continue;
    kept[length] = a;
    kept[length + 1] = b;
    kept[length + 2] = c;
    length += 3;
  }
  return compacted(vertices, kept.subarray(0, length));
}

/** The triangles with the vertices that they use, numbered in the order of their first use. */
export function compacted(vertices: Float64Array, triangles: Uint32Array): CodedMesh {
  const numbers = new Int32Array(vertices.length / 3).fill(-1);
  const places = new Float64Array(Math.min(vertices.length, triangles.length * 3));
  let count = 0;
  const renamed = triangles.map((vertex) => {
    if (numbers[vertex]! < 0) {
      places.set(vertices.subarray(vertex * 3, vertex * 3 + 3), count * 3);
      numbers[vertex] = count++;
    }
    return numbers[vertex]!;
  });
  return { vertices: places.slice(0, count * 3), triangles: renamed };
}

/**
 * Takes out triangles over the same three vertices: of those that face the same way all but one, and of two that face
 * opposite ways both, as nothing lies between them.
 */
export function withoutDoubles({ vertices, triangles }: CodedMesh): CodedMesh {
  const count = triangles.length / 3;
  const size = 2 ** Math.ceil(Math.log2(Math.max(16, count)));
  // The same number for the same three vertices, in whatever order.
  const slotOf = (triangle: number): number => {
    const [a, b, c] = [triangles[triangle * 3]!, triangles[triangle * 3 + 1]!, triangles[triangle * 3 + 2]!];
    const sum = Math.imul(a + b + c, 0x9e3779b1) ^ Math.imul(a ^ b ^ c, 0x85ebca6b);
    return (sum ^ (sum >>> 15)) & (size - 1);
  };
  const heads = new Int32Array(size).fill(-1);
  const next = new Int32Array(count).fill(-1);
  const gone = new Uint8Array(count);
  let anyGone = false;
  for (let triangle = 0; triangle < count; triangle++) {
    const slot = slotOf(triangle);
    for (let other = heads[slot]!; other >= 0; other = next[other]!) {
      if (gone[other] === 1) continue;
      const facing = facingOf(triangles, triangle, other);
      if (facing === 0) continue;
      gone[triangle] = 1;
      if (facing < 0) gone[other] = 1;
      anyGone = true;
      break;
    }
    if (gone[triangle] === 0) {
      next[triangle] = heads[slot]!;
      heads[slot] = triangle;
    }
  }
  if (!anyGone) return { vertices, triangles };
  return compacted(
    vertices,
    triangles.filter((_, i) => gone[Math.floor(i / 3)] === 0),
  );
}

/** 1: the same corners the same way round; −1: the other way round; 0: other corners. */
function facingOf(triangles: Uint32Array, one: number, other: number): -1 | 0 | 1 {
  const [a, b, c] = [triangles[one * 3]!, triangles[one * 3 + 1]!, triangles[one * 3 + 2]!];
  for (let k = 0; k < 3; k++) {
    if (triangles[other * 3 + k] !== a) continue;
    const p = triangles[other * 3 + ((k + 1) % 3)]!;
    const q = triangles[other * 3 + ((k + 2) % 3)]!;
    if (p === b && q === c) return 1;
    if (p === c && q === b) return -1;
  }
  return 0;
}
