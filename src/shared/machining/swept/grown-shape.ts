import { SAME_MM } from '../../solid/outline.ts';
import type { ExactShape, Turned } from '../../solid/placed.ts';
import { growOutline } from './grown-outline.ts';

/**
 * The shape with stock all round: flat and round faces stand out by `mm`, edges keep their sharpness, as the faces of a block with a
 * machining allowance do. Sharp edges of less than 60° end at twice the stock. Whatever lies no farther than `mm` from the shape lies
 * within it; its outline may cross itself where a hollow is filled up. A mesh comes back as it is: its growth is added to its reach
 * ({@link MESH_CORNER}).
 */
export function grownShape(shape: ExactShape, mm: number): ExactShape {
  if (mm === 0 || shape.is === 'mesh') return shape;
  if (shape.is === 'turned') return grownTurned(shape, mm);
  return { ...shape, a0: shape.a0 - mm, a1: shape.a1 + mm, outline: growOutline(shape.outline, () => mm) };
}

/** A square corner of faces that stand out by 1 stands out by √2 seen along one of its edges; round a mesh that counts everywhere. */
export const MESH_CORNER = Math.SQRT2;

function grownTurned(shape: Turned, mm: number): Turned {
  const corners = shape.outline.map(({ a, r }) => ({ u: a, v: r, bulge: 0 }));
  const onAxis = (i: number) => corners[i]!.v <= SAME_MM && corners[(i + 1) % corners.length]!.v <= SAME_MM;
  const grown = growOutline(corners, (side) => (onAxis(side) ? 0 : mm));
  // A bore narrower than the stock closes: what would pass the axis ends on it.
  return { ...shape, outline: grown.map(({ u, v }) => ({ a: u, r: Math.max(0, v) })) };
}
