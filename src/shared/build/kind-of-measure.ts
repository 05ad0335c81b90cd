import { unreachable } from '../base/assert.ts';
import type { Kind } from '../quantity/kind.ts';
import type { Measure } from './dimension.ts';

/** What a dimension's value is counted in. A thread stands for its major diameter, so it is a length. */
export function kindOfMeasure(measure: Measure): Kind {
  if (measure.type === 'between') return 'length';
  switch (measure.form) {
    case 'diameter':
    case 'radius':
    case 'length':
    case 'thread':
      return 'length';
    case 'angle':
      return 'angle';
    case 'count':
      return 'number';
    case 'mass':
      return 'mass';
    case 'temperature':
      return 'temperature';
    default:
      return unreachable(measure.form);
  }
}
