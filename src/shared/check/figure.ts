import type { Kind } from '../quantity/kind.ts';
import type { Finding } from './rule.ts';

/** Endings of figures by what they measure; a placeholder `{value}` is filled from `valueMm` and so on. */
export const figureEndings: Readonly<Record<string, Kind>> = {
  Mm: 'length',
  Deg: 'angle',
  Kg: 'mass',
  Celsius: 'temperature',
};

/** A figure under the name that tells its kind: `{ valueMm: 25 }`, `{ valueDeg: 30 }`, `{ value: 4 }` for a number. */
export function figure(name: string, value: number, kind: Kind): Finding['data'] {
  const ending = Object.keys(figureEndings).find((known) => figureEndings[known] === kind) ?? '';
  return { [`${name}${ending}`]: value };
}
