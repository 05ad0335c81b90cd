import { err, ok, type Result } from '../../base/result.ts';
import type { CodedMesh } from '../../build/mesh-code.ts';
import { type Edges, startOf } from './edges.ts';

/**
 * Turns triangles round until neighbours agree on which side is out, going from triangle to triangle over edges where just
 * two meet. Which side that is, is for each piece as for its first triangle.
 *
 * @returns the mesh and how many triangles were turned; or a half edge at which a one-sided surface, such as a strip joined
 * with a twist, closes on itself wrongly
 */
export function faceAlike(
  { vertices, triangles }: CodedMesh,
  edges: Edges,
): Result<{ readonly mesh: CodedMesh; readonly turned: number }, number> {
  const count = triangles.length / 3;
  // 0 not reached, 1 as it is, 2 to be turned.
  const state = new Uint8Array(count);
  const waiting: number[] = [];
  let turned = 0;
  for (let first = 0; first < count; first++) {
    if (state[first] !== 0) continue;
    state[first] = 1;
    waiting.push(first);
    const reached = [first];
    for (let triangle = waiting.pop(); triangle !== undefined; triangle = waiting.pop()) {
      for (let half = triangle * 3; half < triangle * 3 + 3; half++) {
        const across = edges.ring[half]!;
        if (across === half || edges.ring[across] !== half) continue;
        const neighbour = Math.floor(across / 3);
        const agrees = startOf(triangles, half) !== startOf(triangles, across);
        const wanted = agrees ? state[triangle]! : 3 - state[triangle]!;
        if (state[neighbour] === 0) {
          state[neighbour] = wanted;
          waiting.push(neighbour);
          reached.push(neighbour);
        } else if (state[neighbour] !== wanted) return err(half);
      }
    }
    // The fewer are the wrong ones.
    const toTurn = reached.filter((triangle) => state[triangle] === 2).length;
    if (toTurn * 2 > reached.length) for (const triangle of reached) state[triangle] = 3 - state[triangle]!;
    turned += Math.min(toTurn, reached.length - toTurn);
  }
  return ok({ mesh: { vertices, triangles: turnedRound(triangles, (triangle) => state[triangle] === 2) }, turned });
}

/** The triangles, those that are picked the other way round. */
export function turnedRound(triangles: Uint32Array, picked: (triangle: number) => boolean): Uint32Array {
  const result = Uint32Array.from(triangles);
  for (let triangle = 0; triangle < triangles.length / 3; triangle++) {
    if (!picked(triangle)) continue;
    result[triangle * 3 + 1] = triangles[triangle * 3 + 2]!;
    result[triangle * 3 + 2] = triangles[triangle * 3 + 1]!;
  }
  return result;
}
