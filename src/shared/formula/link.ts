import { err, ok } from '../base/result.ts';
import type { Kind, ProblemOr, TextProblem } from '../quantity/kind.ts';
import { bareUnit } from '../quantity/units.ts';
import {
  ABS,
  ACOS,
  ADD,
  ASIN,
  ATAN,
  ATAN2,
  CEIL,
  CEIL_TO,
  CONSTANT,
  COS,
  DIVIDE,
  FLOOR,
  FLOOR_TO,
  HYPOT,
  MAX,
  MAX_STACK,
  MIN,
  MULTIPLY,
  NEGATE,
  OP_BITS,
  OP_MASK,
  OPERAND,
  POWER,
  ROUND,
  ROUND_TO,
  rangeOfInstruction,
  SIN,
  SQRT,
  STRIDE,
  SUBTRACT,
  TAN,
} from './op.ts';
import {
  ANGLE,
  combine,
  describeUnit,
  NO_UNIT,
  raise,
  remedyUnit,
  type UnitPower,
  unitOfKind,
  unitPowers,
} from './unit-power.ts';
import type { Formula, Program } from './written.ts';

export interface LinkOptions {
  /** What the cell measures. */
  readonly want: Kind;
  /** The result must be a whole number (a count). */
  readonly whole?: boolean;
}

// Scratch of the walk over one formula; see `parse-formula.ts` for why it is kept.
const unitStack = new Float64Array(MAX_STACK);
/** The value where it hangs on nothing but bare numbers of the text, else NaN: exponents of units must be so. */
const knownStack = new Float64Array(MAX_STACK);
/** Place in `code` of the instruction that made the value. */
const madeBy = new Int32Array(MAX_STACK);

/**
 * Checks the units of a formula once its names are tied, and makes it ready to run.
 *
 * A formula of bare numbers only takes the unit of the cell. Anything else must come out in the cell's own kind.
 *
 * @param kinds what each of `formula.references` measures, in the same order.
 */
export function link(formula: Formula, kinds: readonly Kind[], options: LinkOptions): ProblemOr<Program> {
  const { code, constants } = formula;
  let top = -1;
  let isBare = true;
  for (let i = 0; i < code.length; i += STRIDE) {
    const operation = code[i]! & OP_MASK;
    const argument = code[i]! >> OP_BITS;
    if (operation === CONSTANT) {
      top++;
      const kind = argument & 7;
      unitStack[top] = unitPowers[kind]!;
      knownStack[top] = kind === 0 ? constants[argument >> 3]! : Number.NaN;
      if (kind !== 0) isBare = false;
    } else if (operation === OPERAND) {
      top++;
      unitStack[top] = unitOfKind(kinds[argument]!);
      knownStack[top] = Number.NaN;
      isBare = false;
    } else {
      if (takesTwo(operation)) top--;
      const problem = takesTwo(operation) ? joinTwo(formula, operation, top) : applyOne(formula, operation, top);
      if (problem !== undefined) return err(problem);
    }
    madeBy[top] = i;
  }
  const want = unitOfKind(options.want);
  const has = unitStack[0]!;
  const takesCellUnit = has === NO_UNIT && isBare && want !== NO_UNIT;
  if (has !== want && !takesCellUnit) return err(wrongResult(formula, want, has));
  const unit = takesCellUnit ? bareUnit(options.want, formula.lengthUnit) : undefined;
  const { times, per } = unit ?? { times: 1, per: 1 };
  return ok({ operands: kinds.length, code, constants, times, per, whole: options.whole === true });
}

function takesTwo(operation: number): boolean {
  switch (operation) {
    case ADD:
    case SUBTRACT:
    case MULTIPLY:
    case DIVIDE:
    case POWER:
    case MIN:
    case MAX:
    case ATAN2:
    case HYPOT:
    case ROUND_TO:
    case FLOOR_TO:
    case CEIL_TO:
      return true;
    default:
      return false;
  }
}

/** Leaves the unit of the joined value at `at`; the two stand at `at` and `at + 1`. */
function joinTwo(formula: Formula, operation: number, at: number): TextProblem | undefined {
  const left = unitStack[at]!;
  const right = unitStack[at + 1]!;
  const known = knownStack[at]!;
  const knownRight = knownStack[at + 1]!;
  knownStack[at] = Number.NaN;
  switch (operation) {
    case MULTIPLY:
    case DIVIDE: {
      const unit = combine(left, right, operation === MULTIPLY ? 1 : -1);
      if (unit === undefined) return problemOf(formula, 'power-too-high', at + 1);
      unitStack[at] = unit;
      knownStack[at] = operation === MULTIPLY ? known * knownRight : known / knownRight;
      return undefined;
    }
    case POWER: {
      if (right !== NO_UNIT) return problemOf(formula, 'exponent-with-unit', at + 1, { has: describeUnit(right) });
      if (left === NO_UNIT) {
        knownStack[at] = known ** knownRight;
        return undefined;
      }
      if (Number.isNaN(knownRight))
        return problemOf(formula, 'exponent-not-fixed', at + 1, { has: describeUnit(left) });
      const unit = raise(left, knownRight);
      if (unit === undefined) return problemOf(formula, 'power-too-high', at + 1);
      unitStack[at] = unit;
      return undefined;
    }
    default:
      if (left !== right) return unlike(formula, operation, at);
      if (operation === ATAN2) unitStack[at] = ANGLE;
      if (operation === ADD) knownStack[at] = known + knownRight;
      if (operation === SUBTRACT) knownStack[at] = known - knownRight;
      return undefined;
  }
}

function applyOne(formula: Formula, operation: number, at: number): TextProblem | undefined {
  const unit = unitStack[at]!;
  const known = knownStack[at]!;
  knownStack[at] = operation === NEGATE ? -known : Number.NaN;
  switch (operation) {
    case NEGATE:
    case ABS:
      return undefined;
    case SQRT: {
      const root = raise(unit, 0.5);
      if (root === undefined) return problemOf(formula, 'power-too-high', at);
      unitStack[at] = root;
      return undefined;
    }
    case SIN:
    case COS:
    case TAN: {
      if (unit !== ANGLE) return needsAngle(formula, at);
      unitStack[at] = NO_UNIT;
      return undefined;
    }
    case ASIN:
    case ACOS:
    case ATAN: {
      if (unit !== NO_UNIT) return problemOf(formula, 'needs-number', at, { has: describeUnit(unit) });
      unitStack[at] = ANGLE;
      return undefined;
    }
    case ROUND:
    case FLOOR:
    case CEIL:
      if (unit === NO_UNIT) return undefined;
      return problemOf(formula, 'step-missing', at, {
        has: describeUnit(unit),
        unit: remedyUnit(unit, formula.lengthUnit),
      });
    default:
      return undefined;
  }
}

/** A problem at the text of the value that stands at `slot` of the stack. */
function problemOf(formula: Formula, code: string, slot: number, data?: TextProblem['data']): TextProblem {
  const { start, end } = rangeOfInstruction(formula.code, madeBy[slot]!);
  return data === undefined ? { code, start, end } : { code, start, end, data };
}

/** The value of a bare number that stands at `slot`, as it may be written; undefined when something else stands there. */
function bareNumber(formula: Formula, slot: number): number | undefined {
  const made = madeBy[slot]!;
  const word = formula.code[made]!;
  if ((word & OP_MASK) !== CONSTANT || ((word >> OP_BITS) & 7) !== 0) return undefined;
  return formula.constants[word >> (OP_BITS + 3)];
}

function unlike(formula: Formula, operation: number, at: number): TextProblem {
  const left = unitStack[at]!;
  const right = unitStack[at + 1]!;
  const numberSlot = left === NO_UNIT ? at : right === NO_UNIT ? at + 1 : -1;
  const value = numberSlot < 0 ? undefined : bareNumber(formula, numberSlot);
  const other = left === NO_UNIT ? right : left;
  const unit = remedyUnit(other, formula.lengthUnit);
  if (value !== undefined && unit !== '') {
    return problemOf(formula, 'bare-number', numberSlot, { value, unit, other: describeUnit(other) });
  }
  // The whole of the two, for it is not known which of them is meant otherwise.
  const first = problemOf(formula, 'unlike', at);
  const last = problemOf(formula, 'unlike', at + 1);
  const data = { left: describeUnit(left), right: describeUnit(right) };
  return {
    code: operation === ADD || operation === SUBTRACT ? 'unlike-sum' : 'unlike',
    start: first.start,
    end: last.end,
    data,
  };
}

function needsAngle(formula: Formula, at: number): TextProblem {
  const value = bareNumber(formula, at);
  if (value !== undefined) return problemOf(formula, 'bare-angle', at, { value });
  return problemOf(formula, 'needs-angle', at, { has: describeUnit(unitStack[at]!) });
}

function wrongResult(formula: Formula, want: UnitPower, has: UnitPower): TextProblem {
  const { start, end } = rangeOfInstruction(formula.code, formula.code.length - STRIDE);
  const unit = remedyUnit(want, formula.lengthUnit);
  const data = { want: describeUnit(want), has: describeUnit(has), unit };
  return { code: has === NO_UNIT ? 'result-without-unit' : 'wrong-unit', start, end, data };
}
