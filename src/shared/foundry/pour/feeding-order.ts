import type { Pour } from '../../build/pour.ts';
import type { Vec3 } from '../../solid/placed.ts';
import type { Standing } from './standing.ts';

/** Whether metal that still has a thin section to fill has gone past the insert first. */
export type Fed =
  /** The thin section lies beyond the insert: what fills it has been cooled. */
  | 'after'
  /** The thin section is full before the metal comes to the insert. */
  | 'before'
  /** Both are reached together. */
  | 'together';

/** Places that lie within this share of the casting's height of one another are reached together. */
const TOGETHER = 0.1;

/**
 * In what order metal comes to two places. Through foam the front works its way from the gate; in an open mould the metal falls
 * to the bottom and rises, wherever the gate is.
 */
export function fedOrder(standing: Standing, spot: Pour['gating']['spot'], insert: Vec3, thin: Vec3): Fed {
  const way = (place: Vec3): number => {
    const height = standing.heightOf(place);
    if (!standing.foam || spot === 'bottom') return height;
    return spot === 'top'
      ? standing.heightMm - height
      : Math.abs(height - (standing.partingMm ?? standing.heightMm / 2));
  };
  const apart = way(thin) - way(insert);
  if (Math.abs(apart) <= TOGETHER * standing.heightMm) return 'together';
  return apart > 0 ? 'after' : 'before';
}
