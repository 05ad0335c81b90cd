import { castingTolerance } from '../tables/casting.ts';
import { generalTolerance } from '../tables/iso2768.ts';
import type { TableTolerance } from '../tables/row.ts';
import type { ResolvedLimits } from './drawing.ts';
import { type State, VALUED } from './state.ts';

/**
 * What the build's general tolerances allow a dimension that carries no limits of its own; undefined where the tables
 * have no row for it. Angles have none: their table goes by the shorter leg, which a drawing does not give.
 */
function generalLimits(state: State, slot: number, value: number): TableTolerance | undefined {
  const { measure, finish } = state.dimensions.records[slot]!;
  const form = measure.type === 'between' ? 'length' : measure.form;
  switch (form) {
    case 'diameter':
    case 'radius':
    case 'length': {
      const size = Math.abs(value);
      if (finish === 'as cast') return castingTolerance(state.settings.castingGrade, size);
      return generalTolerance(state.settings.machinedTolerance, form === 'radius' ? 'edge' : 'linear', size);
    }
    default:
      return undefined;
  }
}

/** Works out the permitted deviations. @returns whether they differ from before. */
export function settleLimits(state: State, slot: number): boolean {
  const d = state.dimensions;
  let minus = Number.NaN;
  let plus = Number.NaN;
  if (d.rows[slot]) d.rows[slot] = undefined;
  if (d.status[slot] === VALUED && !(d.limitsProblems.size > 0 && d.limitsProblems.has(slot))) {
    minus = d.writtenMinus[slot]!;
    plus = d.writtenPlus[slot]!;
    if (Number.isNaN(minus)) {
      const row = generalLimits(state, slot, d.value[slot]!);
      if (row) {
        d.rows[slot] = row;
        minus = -row.plusMinus;
        plus = row.plusMinus;
      }
    }
  }
  const same = Object.is(minus, d.minus[slot]) && Object.is(plus, d.plus[slot]);
  d.minus[slot] = minus;
  d.plus[slot] = plus;
  return !same;
}

export function shownLimits(state: State, slot: number): ResolvedLimits | undefined {
  const d = state.dimensions;
  const minus = d.minus[slot]!;
  const plus = d.plus[slot]!;
  if (Number.isNaN(minus)) return undefined;
  const value = d.value[slot]!;
  const row = d.rows[slot];
  const origin = !row ? 'written' : d.records[slot]!.finish === 'as cast' ? 'casting' : 'general';
  return { lower: value + minus + 0, upper: value + plus + 0, origin, row: row ? row.row : 'as written' };
}
