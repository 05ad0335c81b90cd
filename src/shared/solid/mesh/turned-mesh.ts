import type { Turned } from '../placed.ts';
import { type BodyMesh, type Facet, meshDraft } from './body-mesh.ts';
import { directionsOf, type Fineness, segmentsFor } from './segments.ts';

/** The mesh of an outline turned about its axis. Face i is what side i of the outline sweeps. */
export function turnedMesh({ axis, u, v, outline }: Turned, fineness: Fineness): BodyMesh {
  const draft = meshDraft(axis);
  const segments = segmentsFor(Math.max(...outline.map(({ r }) => r)), fineness);
  const directions = directionsOf(segments);
  const rings = outline.map(({ a, r }) =>
    r === 0 ? [draft.vertex(u, v, a)] : directions.map(({ cos, sin }) => draft.vertex(u + r * cos, v + r * sin, a)),
  );
  const half = Math.PI / segments;
  const middles = directions.map(({ cos, sin }, i) => {
    const next = directions[(i + 1) % segments]!;
    const length = 2 * Math.cos(half);
    return { middleU: (cos + next.cos) / length, middleV: (sin + next.sin) / length };
  });
  const facets: Facet[] = [];
  outline.forEach((from, face) => {
    const to = outline[(face + 1) % outline.length]!;
    // A side along the axis itself sweeps nothing.
    if (from.r === 0 && to.r === 0) return;
    const flat = from.a === to.a;
    const slope = flat ? 0 : (to.r - from.r) / (to.a - from.a);
    const first = facets.length;
    if (flat) facets.push({ face, round: undefined });
    else {
      const radius = from.r - slope * from.a;
      for (const middle of middles) {
        facets.push({ face, round: { u, v, radius, slope, ...middle, cosHalf: Math.cos(half) } });
      }
    }
    const here = rings[face]!;
    const there = rings[(face + 1) % outline.length]!;
    for (let i = 0; i < segments; i++) {
      const facet = flat ? first : first + i;
      const j = (i + 1) % segments;
      if (from.r > 0) draft.triangle(here[i]!, there[i] ?? there[0]!, here[j]!, facet);
      if (to.r > 0) draft.triangle(here[j] ?? here[0]!, there[i]!, there[j]!, facet);
    }
  });
  return { mesh: draft.done(), facets, axis, faces: outline.length };
}
