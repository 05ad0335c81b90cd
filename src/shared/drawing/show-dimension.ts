import type { DimensionId } from '../base/ids.ts';
import type { ResolvedDimension, ValueProblem } from './drawing.ts';
import { causesOf } from './evaluate.ts';
import { shownLimits } from './limits.ts';
import { rowOf } from './rows.ts';
import { EMPTY, RING, type State, VALUED, WAITING } from './state.ts';

const NONE: readonly never[] = [];

function problemOf(state: State, slot: number): ValueProblem | undefined {
  const d = state.dimensions;
  switch (d.status[slot]) {
    case VALUED:
      return undefined;
    case EMPTY:
      return { why: 'empty' };
    case RING:
      return { why: 'ring', ring: d.rings.get(slot)! };
    case WAITING:
      return { why: 'waiting', causes: causesOf(state, slot) };
    default:
      return { why: 'text', problem: (d.textProblems.get(slot) ?? d.runProblems.get(slot))! };
  }
}

/** The dimensions that a formula names, each once, in order of first mention. */
function referencesOf(state: State, slot: number): readonly DimensionId[] {
  const d = state.dimensions;
  if (d.operands.count[slot] === 0) return NONE;
  const operands = rowOf(d.operands, slot);
  const found: DimensionId[] = [];
  for (let i = 0; i < operands.length; i++) {
    const operand = operands[i]!;
    if (operand >= 0 && operands.indexOf(operand) === i) found.push(d.ids[operand]!);
  }
  return found;
}

/** A dimension as it is handed out. */
export function showDimension(state: State, slot: number): ResolvedDimension {
  const d = state.dimensions;
  return {
    id: d.ids[slot]!,
    unit: d.kinds[slot]!,
    value: d.status[slot] === VALUED ? d.value[slot]! : undefined,
    problem: problemOf(state, slot),
    limits: shownLimits(state, slot),
    limitsProblem: d.limitsProblems.get(slot),
    isFormula: d.formulas[slot] !== undefined,
    references: referencesOf(state, slot),
  };
}
