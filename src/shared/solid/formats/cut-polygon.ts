/** Twice the signed area of a corner, seen along the polygon's normal. */
type Turn = (a: number, b: number, c: number) => number;

/**
 * Cuts a plane, or nearly plane, polygon into triangles that run the same way round, by taking off one ear after the
 * other. Where none is left that is clean (a polygon that crosses itself), the rest is cut as a fan: whether the whole is
 * closed depends on its edges alone, and those stay as they are.
 *
 * @param vertices x, y, z of each vertex
 * @param corners vertex numbers of the polygon in order, at least three
 */
export function cutPolygon(vertices: ArrayLike<number>, corners: readonly number[]): readonly number[] {
  if (corners.length === 3) return corners;
  const turn = turnAlongNormal(vertices, corners);
  const left = [...corners];
  const triangles: number[] = [];
  while (left.length > 3) {
    const ear = left.findIndex((_, i) => isEar(left, i, turn));
    const at = ear < 0 ? 1 : ear;
    triangles.push(left[(at + left.length - 1) % left.length]!, left[at]!, left[(at + 1) % left.length]!);
    left.splice(at, 1);
  }
  return [...triangles, ...left];
}

function isEar(left: readonly number[], i: number, turn: Turn): boolean {
  const a = left[(i + left.length - 1) % left.length]!;
  const b = left[i]!;
  const c = left[(i + 1) % left.length]!;
  if (turn(a, b, c) <= 0) return false;
  return left.every(
    (p) => p === a || p === b || p === c || turn(a, b, p) < 0 || turn(b, c, p) < 0 || turn(c, a, p) < 0,
  );
}

function turnAlongNormal(vertices: ArrayLike<number>, corners: readonly number[]): Turn {
  const place = (corner: number, axis: number): number => vertices[corner * 3 + axis]!;
  // Newell's sum: the normal of the polygon, however crooked; it is seen along the axis in which that is longest.
  const normal = [0, 1, 2].map((axis) => {
    const u = (axis + 1) % 3;
    const v = (axis + 2) % 3;
    return corners.reduce((sum, corner, i) => {
      const next = corners[(i + 1) % corners.length]!;
      return sum + (place(corner, u) - place(next, u)) * (place(corner, v) + place(next, v));
    }, 0);
  });
  const sizes = normal.map(Math.abs);
  const along = sizes.indexOf(Math.max(...sizes));
  const u = (along + 1) % 3;
  const v = (along + 2) % 3;
  const sign = Math.sign(normal[along]!) || 1;
  return (a, b, c) =>
    sign *
    ((place(b, u) - place(a, u)) * (place(c, v) - place(a, v)) -
      (place(b, v) - place(a, v)) * (place(c, u) - place(a, u)));
}
