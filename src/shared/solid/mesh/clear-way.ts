import type { Vec3 } from '../placed.ts';
import { areNear, cross, dot, minus } from '../vectors.ts';
import type { FlatPiece, Surface } from './surface.ts';

/** Whether no triangle of the surface stands between two points; one that only touches either end does not. */
export function isClearWay({ vertices, triangles, patches, facets }: Surface, from: Vec3, to: Vec3): boolean {
  const way = minus(to, from);
  const box = {
    min: [0, 1, 2].map((k) => Math.min(from[k]!, to[k]!)) as unknown as Vec3,
    max: [0, 1, 2].map((k) => Math.max(from[k]!, to[k]!)) as unknown as Vec3,
  };
  const at = (corner: number): Vec3 => {
    const i = 3 * triangles[corner]!;
    return [vertices[i]!, vertices[i + 1]!, vertices[i + 2]!];
  };
  const stands = (facet: FlatPiece): boolean => {
    if (!areNear(facet, box, 0)) return false;
    const lean = dot(facet.normal, way);
    if (lean === 0) return false;
    const s = (facet.offset - dot(facet.normal, from)) / lean;
    if (s <= 0 || s >= 1) return false;
    const point: Vec3 = [from[0] + s * way[0], from[1] + s * way[1], from[2] + s * way[2]];
    return facet.corners.some((corner) => {
      const [a, b, c] = [at(corner), at(corner + 1), at(corner + 2)];
      const one = dot(cross(minus(b, a), minus(point, a)), facet.normal);
      const two = dot(cross(minus(c, b), minus(point, b)), facet.normal);
      const three = dot(cross(minus(a, c), minus(point, c)), facet.normal);
      return one >= 0 && two >= 0 && three >= 0;
    });
  };
  for (const patch of patches) {
    if (!areNear(patch, box, 0)) continue;
    for (let f = patch.from; f < patch.to; f++) if (stands(facets[f]!)) return false;
  }
  return true;
}
