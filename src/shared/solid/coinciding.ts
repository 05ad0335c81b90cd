import { unreachable } from '../base/assert.ts';
import { SAME_MM } from './outline.ts';
import type { ExactShape, PlacedBody } from './placed.ts';

/** Bodies of the very same shape, copies and place, whether they add or take, in groups of two and more, in list order. */
export function coinciding(bodies: readonly PlacedBody[]): readonly (readonly PlacedBody[])[] {
  const groups = new Map<string, PlacedBody[]>();
  for (const body of bodies) {
    if (!body.shape) continue;
    const copies = body.moves.map((move) => move.map(rounded).join(' ')).sort();
    const key = `${keyOf(body.shape)}|${copies.join('|')}`;
    const group = groups.get(key);
    if (group) group.push(body);
    else groups.set(key, [body]);
  }
  return [...groups.values()].filter((group) => group.length > 1);
}

/** A number in steps of the least distance that counts, its zero without a sign. */
const rounded = (value: number): string => String(Math.round(value / SAME_MM) + 0);

function keyOf(shape: ExactShape): string {
  switch (shape.is) {
    case 'extrusion': {
      const { axis, a0, a1, outline } = shape;
      return `e${axis} ${rounded(a0)} ${rounded(a1)} ${ring(outline.map(({ u, v, bulge }) => [u, v, bulge]))}`;
    }
    case 'turned': {
      const { axis, u, v, outline } = shape;
      return `t${axis} ${rounded(u)} ${rounded(v)} ${ring(outline.map(({ a, r }) => [a, r]))}`;
    }
    case 'mesh': {
      const { vertices, triangles } = shape;
      return `m${Array.from(vertices, rounded).join(' ')},${triangles.join(' ')}`;
    }
    default:
      return unreachable(shape);
  }
}

/** The corners of a closed outline, begun at the one whose words come first: outlines may begin anywhere. */
function ring(corners: readonly (readonly number[])[]): string {
  const words = corners.map((corner) => corner.map(rounded).join(','));
  let first = 0;
  words.forEach((word, i) => {
    if (word < words[first]!) first = i;
  });
  return [...words.slice(first), ...words.slice(0, first)].join(' ');
}
