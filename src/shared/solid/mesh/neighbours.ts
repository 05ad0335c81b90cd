/**
 * Which triangle lies across each side of each triangle of a closed mesh: at 3 t + k, the side from corner k of triangle t to
 * the next. Where more than two triangles share a side, they are paired in any way that runs through them oppositely.
 */
export function neighboursOf(triangles: Uint32Array, vertices: number): Uint32Array {
  // The sides sorted by the corner that they run to, so that each is looked for among a handful.
  const start = new Uint32Array(vertices + 1);
  for (let i = 0; i < triangles.length; i++) start[triangles[i]!]!++;
  let sum = 0;
  for (let v = 0; v <= vertices; v++) {
    const count = start[v]!;
    start[v] = sum;
    sum += count;
  }
  // After the filling, `start` holds the ends.
  const from = new Uint32Array(triangles.length);
  for (let side = 0; side < triangles.length; side++) from[start[triangles[side]!]!++] = side;
  const neighbours = new Uint32Array(triangles.length).fill(NONE);
  for (let side = 0; side < triangles.length; side++) {
    if (neighbours[side] !== NONE) continue;
    const tail = triangles[side]!;
    const head = triangles[nextSide(side)]!;
    for (let i = head === 0 ? 0 : start[head - 1]!; i < start[head]!; i++) {
      const other = from[i]!;
      if (triangles[nextSide(other)] !== tail || neighbours[other] !== NONE) continue;
      neighbours[side] = Math.floor(other / 3);
      neighbours[other] = Math.floor(side / 3);
      break;
    }
  }
  return neighbours;
}

/** No triangle: the mesh is open there. */
export const NONE = 0xffff_ffff;

/** The side of the same triangle that begins where this one ends. */
export const nextSide = (side: number): number => (side % 3 === 2 ? side - 2 : side + 1);
