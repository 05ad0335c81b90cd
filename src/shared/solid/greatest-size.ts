import type { PartId } from '../base/ids.ts';
import { dimensionsOf } from '../build/look-up.ts';
import type { Build } from '../build/records.ts';
import type { Drawing } from '../drawing/drawing.ts';

/**
 * The greatest size that the drawing gives of a part, in mm: the length over its stations along an axis, or a diameter,
 * length or radius (twice). Undefined when it gives none.
 */
export function greatestSize(part: PartId, build: Build, drawing: Drawing): number | undefined {
  let greatest = 0;
  for (const { stations } of drawing.axesOf(part)) {
    const groups = new Map<number, readonly number[]>();
    for (const { group, at } of stations) groups.set(group, [...(groups.get(group) ?? []), at]);
    for (const places of groups.values()) greatest = Math.max(greatest, Math.max(...places) - Math.min(...places));
  }
  for (const { id, measure } of dimensionsOf(build, part)) {
    if (measure.type !== 'size' || !['diameter', 'length', 'radius'].includes(measure.form)) continue;
    const value = drawing.dimension(id).value ?? 0;
    greatest = Math.max(greatest, measure.form === 'radius' ? value * 2 : value);
  }
  return greatest > 0 ? greatest : undefined;
}
