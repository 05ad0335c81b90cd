import { shellsOf } from './mesh/shells.ts';
import type { Surface } from './mesh/surface.ts';

/**
 * The bodies whose faces lie on each piece of a part that does not hang together, largest piece first; pieces hang together
 * by common corners. Shells that face inwards are hollows, no pieces.
 */
export function piecesOf({ vertices, triangles, facets, facetOf, patches }: Surface): readonly (readonly number[])[] {
  const { rootOf, sixVolumes, pieces } = shellsOf(vertices, triangles);
  const bodies = new Map(pieces.map((root) => [root, new Set<number>()]));
  for (let i = 0; i < triangles.length; i += 3) {
    bodies.get(rootOf(triangles[i]!))?.add(patches[facets[facetOf[i / 3]!]!.patch]!.body);
  }
  return [...pieces]
    .sort((a, b) => sixVolumes.get(b)! - sixVolumes.get(a)!)
    .map((root) => [...bodies.get(root)!].sort((a, b) => a - b));
}
