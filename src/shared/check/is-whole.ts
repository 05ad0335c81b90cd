import type { PlacedBody } from '../solid/placed.ts';

/**
 * Whether every body of the part has a shape. Of a part that lacks some, its walls, holes and pieces say nothing: what lacks
 * is a finding, and the others would only follow from it.
 */
export const isWhole = (bodies: readonly PlacedBody[]): boolean => bodies.every(({ shape }) => shape !== undefined);
