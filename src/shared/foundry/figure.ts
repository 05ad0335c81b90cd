import type { AlloyFigure, FigureStatus } from '../tables/alloys.ts';

/** How far a figure may be trusted: written by the founder, taken from the drawing's solids, or as good as its table. */
export type Trust = 'written' | 'drawn' | FigureStatus;

export const figureUnits = [
  '',
  '%',
  'mm',
  'mm²',
  'mm³',
  'kg',
  'kg/m³',
  'l',
  '°C',
  'K',
  'kJ',
  'kJ/kg',
  'kW',
  'min',
  's',
  's/mm²',
  'mm/s',
  'N',
  'kPa',
] as const;
export type FigureUnit = (typeof figureUnits)[number];

/** A figure of a pour, with where it comes from in words. Worked out from others, it is as sure as the least sure of them. */
export interface Figure {
  readonly value: number;
  readonly unit: FigureUnit;
  readonly origin: string;
  readonly status: Trust;
}

/** Surest first. */
const order: readonly Trust[] = ['written', 'drawn', 'read', 'derived', 'from memory', 'starting value'];

export const weakest = (trusts: readonly Trust[]): Trust =>
  trusts.reduce((worst, one) => (order.indexOf(one) > order.indexOf(worst) ? one : worst), 'written');

export const written = (value: number, unit: FigureUnit): Figure => ({
  value,
  unit,
  origin: 'as written',
  status: 'written',
});

export const drawn = (value: number, unit: FigureUnit, origin: string): Figure => ({
  value,
  unit,
  origin,
  status: 'drawn',
});

/** A row of a table as a figure. */
export const fromTable = ({ value, status, source }: AlloyFigure, unit: FigureUnit): Figure => ({
  value,
  unit,
  origin: source,
  status,
});

type Values<F extends readonly (Figure | undefined)[]> = { readonly [K in keyof F]: number };

/** A figure worked out from others; undefined where one of them is. */
export function worked<const F extends readonly (Figure | undefined)[]>(
  unit: FigureUnit,
  origin: string,
  from: F,
  value: (...values: Values<F>) => number,
): Figure | undefined {
  if (from.some((one) => one === undefined)) return undefined;
  const given = from as unknown as readonly Figure[];
  const result = value(...(given.map((one) => one.value) as unknown as Values<F>));
  if (!Number.isFinite(result)) return undefined;
  return { value: result, unit, origin, status: weakest(given.map(({ status }) => status)) };
}

/** The sum of figures of one unit, those that are not there left out; undefined where none is. */
export function sumOf(unit: FigureUnit, origin: string, parts: readonly (Figure | undefined)[]): Figure | undefined {
  const there = parts.filter((one) => one !== undefined);
  if (there.length === 0) return undefined;
  const value = there.reduce((sum, one) => sum + one.value, 0);
  return { value, unit, origin, status: weakest(there.map(({ status }) => status)) };
}
