/** A shell that holds less than this share of the largest is dust of rounding, not a piece. */
const DUST = 1e-9;

/**
 * Number of pieces of a closed mesh that do not hang together by a common corner. Shells that face inwards are hollows
 * within a piece and count for nothing.
 */
export function countPieces(vertices: Float32Array, triangles: Uint32Array): number {
  const group = Uint32Array.from({ length: vertices.length / 3 }, (_, i) => i);
  const rootOf = (i: number): number => {
    let at = i;
    while (group[at] !== at) {
      group[at] = group[group[at]!]!;
      at = group[at]!;
    }
    return at;
  };
  for (let i = 0; i < triangles.length; i += 3) {
    const root = rootOf(triangles[i]!);
    group[rootOf(triangles[i + 1]!)] = root;
    group[rootOf(triangles[i + 2]!)] = root;
  }
  const volumes = new Map<number, number>();
  const origins = new Map<number, number>();
  for (let i = 0; i < triangles.length; i += 3) {
    const root = rootOf(triangles[i]!);
    // Each shell is measured from a corner of its own: far from the origin little would be left of a small one.
    const o = 3 * (origins.get(root) ?? triangles[i]!);
    if (!origins.has(root)) origins.set(root, triangles[i]!);
    const [a, b, c] = [3 * triangles[i]!, 3 * triangles[i + 1]!, 3 * triangles[i + 2]!];
    const [ax, ay, az] = [
      vertices[a]! - vertices[o]!,
      vertices[a + 1]! - vertices[o + 1]!,
      vertices[a + 2]! - vertices[o + 2]!,
    ];
    const [bx, by, bz] = [
      vertices[b]! - vertices[o]!,
      vertices[b + 1]! - vertices[o + 1]!,
      vertices[b + 2]! - vertices[o + 2]!,
    ];
    const [cx, cy, cz] = [
      vertices[c]! - vertices[o]!,
      vertices[c + 1]! - vertices[o + 1]!,
      vertices[c + 2]! - vertices[o + 2]!,
    ];
    const six = ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx);
    volumes.set(root, (volumes.get(root) ?? 0) + six);
  }
  const least = DUST * Math.max(0, ...volumes.values());
  let pieces = 0;
  for (const volume of volumes.values()) if (volume > least) pieces++;
  return pieces;
}
