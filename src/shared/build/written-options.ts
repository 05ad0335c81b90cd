import type { WrittenOptions } from '../formula/written.ts';
import type { LengthUnit } from '../quantity/kind.ts';
import type { Measure } from './dimension.ts';
import { kindOfMeasure } from './kind-of-measure.ts';

/** How the value of a dimension of this measure is to be read. */
export function writtenOptions(measure: Measure, lengthUnit: LengthUnit): WrittenOptions {
  const kind = kindOfMeasure(measure);
  if (measure.type === 'between') return { kind, lengthUnit };
  return { kind, lengthUnit, thread: measure.form === 'thread', whole: measure.form === 'count' };
}
