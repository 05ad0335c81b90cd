// The instructions of a compiled formula. Postfix: operands first, then the operation that takes them off the stack.
// Each takes two places in `code`: operation + argument · 32, and the range of the text it stems from. Plain lists of
// small integers hold them: a typed array would cost some two hundred bytes beside its numbers, in every formula.

export const CONSTANT = 0; // argument: index of the constant · 8 + index of its kind in `kinds`
export const OPERAND = 1; // argument: index of the reference
export const NEGATE = 2;
export const ADD = 3;
export const SUBTRACT = 4;
export const MULTIPLY = 5;
export const DIVIDE = 6;
export const POWER = 7;
export const SQRT = 8;
export const ABS = 9;
export const MIN = 10;
export const MAX = 11;
export const SIN = 12;
export const COS = 13;
export const TAN = 14;
export const ASIN = 15;
export const ACOS = 16;
export const ATAN = 17;
export const ATAN2 = 18;
export const HYPOT = 19;
export const ROUND = 20;
export const FLOOR = 21;
export const CEIL = 22;
export const ROUND_TO = 23;
export const FLOOR_TO = 24;
export const CEIL_TO = 25;

export const OP_BITS = 5;
export const OP_MASK = 31;

/** Places in `code` that one instruction takes. */
export const STRIDE = 2;

/** Brackets, functions and powers inside one another. It also bounds the stack of a running formula. */
export const MAX_DEPTH = 200;

/** One pending value per level and operator precedence, and the operand in hand. */
export const MAX_STACK = 4 * MAX_DEPTH + 8;

/** Largest text that is read, in characters: both ends of a range in it take fourteen bits each. */
export const MAX_LENGTH = 10_000;

const RANGE_BITS = 14;
const RANGE_MASK = (1 << RANGE_BITS) - 1;

export const packRange = (start: number, end: number): number => (start << RANGE_BITS) | end;

/** The range of the text that the instruction at `at` stems from. */
export function rangeOfInstruction(
  code: readonly number[],
  at: number,
): { readonly start: number; readonly end: number } {
  const range = code[at + 1]!;
  return { start: range >> RANGE_BITS, end: range & RANGE_MASK };
}

interface FunctionShape {
  readonly least: number;
  readonly most: number;
  /** Operation for one argument. */
  readonly single: number;
  /** Operation that joins two; functions of many join them one after another. */
  readonly pair: number;
}

const NONE = -1;

export const functions: ReadonlyMap<string, FunctionShape> = new Map([
  ['sqrt', { least: 1, most: 1, single: SQRT, pair: NONE }],
  ['abs', { least: 1, most: 1, single: ABS, pair: NONE }],
  ['min', { least: 1, most: 1000, single: NONE, pair: MIN }],
  ['max', { least: 1, most: 1000, single: NONE, pair: MAX }],
  ['sin', { least: 1, most: 1, single: SIN, pair: NONE }],
  ['cos', { least: 1, most: 1, single: COS, pair: NONE }],
  ['tan', { least: 1, most: 1, single: TAN, pair: NONE }],
  ['asin', { least: 1, most: 1, single: ASIN, pair: NONE }],
  ['acos', { least: 1, most: 1, single: ACOS, pair: NONE }],
  ['atan', { least: 1, most: 1, single: ATAN, pair: NONE }],
  ['atan2', { least: 2, most: 2, single: NONE, pair: ATAN2 }],
  ['hypot', { least: 1, most: 1000, single: ABS, pair: HYPOT }],
  ['round', { least: 1, most: 2, single: ROUND, pair: ROUND_TO }],
  ['floor', { least: 1, most: 2, single: FLOOR, pair: FLOOR_TO }],
  ['ceil', { least: 1, most: 2, single: CEIL, pair: CEIL_TO }],
]);
