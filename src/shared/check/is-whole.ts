import type { PlacedBody } from '../solid/placed.ts';

/**
 * Whether every body that adds to the part has a shape. Of a part that lacks some metal, its walls, holes and pieces say
 * nothing: what lacks is a finding, and the others would only follow from it. A hole that lacks leaves more metal, not less.
 */
export const isWhole = (bodies: readonly PlacedBody[]): boolean =>
  bodies.every(({ shape, record }) => shape !== undefined || !record.adds);
