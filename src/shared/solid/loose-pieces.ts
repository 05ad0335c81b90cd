import type { Surface } from './mesh/surface.ts';

/**
 * The bodies whose faces lie on each piece of a part that does not hang together, largest piece first; pieces hang together
 * by common corners. Shells that face inwards are hollows, no pieces.
 */
export function piecesOf({ vertices, triangles, facets, facetOf, patches }: Surface): readonly (readonly number[])[] {
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
  const pieces = new Map<number, { six: number; readonly bodies: Set<number>; readonly origin: number }>();
  for (let i = 0; i < triangles.length; i += 3) {
    const root = rootOf(triangles[i]!);
    const piece = pieces.get(root) ?? { six: 0, bodies: new Set<number>(), origin: 3 * triangles[i]! };
    pieces.set(root, piece);
    const place = (corner: number, k: number) => vertices[3 * triangles[corner]! + k]! - vertices[piece.origin + k]!;
    const [ax, ay, az] = [place(i, 0), place(i, 1), place(i, 2)];
    const [bx, by, bz] = [place(i + 1, 0), place(i + 1, 1), place(i + 1, 2)];
    const [cx, cy, cz] = [place(i + 2, 0), place(i + 2, 1), place(i + 2, 2)];
    piece.six += ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx);
    piece.bodies.add(patches[facets[facetOf[i / 3]!]!.patch]!.body);
  }
  const largest = Math.max(0, ...[...pieces.values()].map(({ six }) => six));
  return [...pieces.values()]
    .filter(({ six }) => six > DUST * largest)
    .sort((a, b) => b.six - a.six)
    .map(({ bodies }) => [...bodies].sort((a, b) => a - b));
}

/** As where pieces are counted (`mesh/pieces.ts`). */
const DUST = 1e-9;
