import type { Kind } from './kind.ts';

/** A kind in words for a sentence: `a length`, `a number without a unit`. */
export function describeKind(kind: Kind): string {
  switch (kind) {
    case 'length':
      return 'a length';
    case 'angle':
      return 'an angle';
    case 'mass':
      return 'a mass';
    case 'temperature':
      return 'a temperature';
    case 'number':
      return 'a number without a unit';
  }
}
