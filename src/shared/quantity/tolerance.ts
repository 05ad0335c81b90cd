import type { Kind } from './kind.ts';

/**
 * When two computed values count as equal: the one place that says so.
 *
 * A millionth of a millimetre is a thousandth of what the finest gauge reads, and a million times what float64 loses in a
 * chain of a hundred dimensions of a metre. Angles: what moves a point a metre away by less than that. Written values
 * compare exactly by text; this is for results of sums.
 */
export const epsilonOf: Readonly<Record<Kind, number>> = {
  length: 1e-6,
  angle: 5e-8,
  mass: 1e-9,
  temperature: 1e-6,
  number: 1e-9,
};
