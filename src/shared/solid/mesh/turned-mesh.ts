import type { Turned } from '../placed.ts';
import { type BodyMesh, type Facet, meshDraft } from './body-mesh.ts';
import { rounds } from './cap.ts';
import { directionsOf, type Fineness, segmentsFor } from './segments.ts';

/** The mesh of an outline turned about its axis. Face i is what side i of the outline sweeps. */
export function turnedMesh({ axis, u, v, outline }: Turned, fineness: Fineness): BodyMesh {
  const draft = meshDraft(axis);
  const segments = segmentsFor(Math.max(...outline.map(({ r }) => r)), fineness);
  const directions = directionsOf(segments);
  // Whole discs have no vertex in their middle: a fan of slivers, cut across, costs the kernel twice as much.
  const isDisc = (i: number) => {
    const [from, to] = [outline[i]!, outline[(i + 1) % outline.length]!];
    return from.a === to.a && (from.r === 0) !== (to.r === 0);
  };
  const needsMiddle = (i: number) => {
    const before = (i + outline.length - 1) % outline.length;
    return [before, i].some((side) => !isDisc(side) && sweeps(outline, side));
  };
  const rings = outline.map(({ a, r }, i) => {
    if (r > 0) return directions.map(({ cos, sin }) => draft.vertex(u + r * cos, v + r * sin, a));
    return needsMiddle(i) ? [draft.vertex(u, v, a)] : [];
  });
  const half = Math.PI / segments;
  const middles = directions.map(({ cos, sin }, i) => {
    const next = directions[(i + 1) % segments]!;
    const length = 2 * Math.cos(half);
    return { middleU: (cos + next.cos) / length, middleV: (sin + next.sin) / length };
  });
  const facets: Facet[] = [];
  outline.forEach((from, face) => {
    const to = outline[(face + 1) % outline.length]!;
    if (!sweeps(outline, face)) return;
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
    if (isDisc(face)) {
      for (const [a, b, c] of rounds(segments)) {
        if (from.r > 0) draft.triangle(here[a]!, here[c]!, here[b]!, first);
        else draft.triangle(there[a]!, there[b]!, there[c]!, first);
      }
      return;
    }
    for (let i = 0; i < segments; i++) {
      const facet = flat ? first : first + i;
      const j = (i + 1) % segments;
      if (from.r > 0) draft.triangle(here[i]!, there[i] ?? there[0]!, here[j]!, facet);
      if (to.r > 0) draft.triangle(here[j] ?? here[0]!, there[i]!, there[j]!, facet);
    }
  });
  return { mesh: draft.done(), facets, axis, faces: outline.length };
}

/** A side along the axis itself sweeps nothing. */
const sweeps = (outline: Turned['outline'], side: number): boolean =>
  outline[side]!.r > 0 || outline[(side + 1) % outline.length]!.r > 0;
