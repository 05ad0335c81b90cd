import type { TextProblem } from '../quantity/kind.ts';
import {
  acosDeg,
  asinDeg,
  atan2Deg,
  atanDeg,
  ceilTo,
  cosDeg,
  floorTo,
  LARGEST_VALUE,
  roundTo,
  sinDeg,
  tanDeg,
  wholeOrNaN,
} from './arithmetic.ts';
import * as op from './op.ts';
import type { Program } from './written.ts';

// One stack for all programs: they run one at a time, and a stack per run would cost more than the run.
const stack = new Float64Array(op.MAX_STACK);

/**
 * Runs a program. Never throws.
 *
 * @param operands canonical values (mm, deg, kg, °C), one per reference; longer arrays are fine.
 * @returns the result in canonical units, or NaN when there is a problem that {@link problemAt} tells.
 */
export function runProgram(program: Program, operands: Float64Array): number {
  return finish(program, execute(program, operands, undefined));
}

/** The result as the cell takes it, or NaN. */
function finish(program: Program, result: number): number {
  const scaled = (result * program.times) / program.per;
  if (!(Math.abs(scaled) <= LARGEST_VALUE)) return Number.NaN;
  // Adding zero turns -0 into 0.
  return (program.whole ? wholeOrNaN(scaled) : scaled) + 0;
}

/** Where a run stopped: the instruction, and the values it worked on. */
interface Stop {
  instruction: number;
  left: number;
  right: number;
}

function execute(program: Program, operands: Float64Array, stop: Stop | undefined): number {
  const { code, constants } = program;
  let top = -1;
  for (let i = 0; i < code.length; i += op.STRIDE) {
    const word = code[i]!;
    const operation = word & op.OP_MASK;
    let result: number;
    if (operation === op.CONSTANT) {
      result = constants[word >> (op.OP_BITS + 3)]!;
      top++;
    } else if (operation === op.OPERAND) {
      result = operands[word >> op.OP_BITS]!;
      top++;
    } else {
      const right = stack[top]!;
      const left = top > 0 ? stack[top - 1]! : 0;
      switch (operation) {
        case op.NEGATE:
          result = -right;
          break;
        case op.ADD:
          result = left + right;
          top--;
          break;
        case op.SUBTRACT:
          result = left - right;
          top--;
          break;
        case op.MULTIPLY:
          result = left * right;
          top--;
          break;
        case op.DIVIDE:
          result = left / right;
          top--;
          break;
        case op.POWER:
          result = left ** right;
          top--;
          break;
        case op.MIN:
          result = Math.min(left, right);
          top--;
          break;
        case op.MAX:
          result = Math.max(left, right);
          top--;
          break;
        case op.ATAN2:
          result = atan2Deg(left, right);
          top--;
          break;
        case op.HYPOT:
          result = Math.hypot(left, right);
          top--;
          break;
        case op.ROUND_TO:
          result = roundTo(left, right);
          top--;
          break;
        case op.FLOOR_TO:
          result = floorTo(left, right);
          top--;
          break;
        case op.CEIL_TO:
          result = ceilTo(left, right);
          top--;
          break;
        default:
          result = applyFunction(operation, right);
      }
      // Checked at every step: an overflow may vanish again further on (1 / (1 / 0) would be 0).
      if (!Number.isFinite(result)) {
        if (stop !== undefined) {
          stop.instruction = i;
          stop.left = left;
          stop.right = right;
        }
        return Number.NaN;
      }
    }
    stack[top] = result;
  }
  return stack[0]!;
}

function applyFunction(operation: number, x: number): number {
  switch (operation) {
    case op.SQRT:
      return Math.sqrt(x);
    case op.ABS:
      return Math.abs(x);
    case op.SIN:
      return sinDeg(x);
    case op.COS:
      return cosDeg(x);
    case op.TAN:
      return tanDeg(x);
    case op.ASIN:
      return asinDeg(x);
    case op.ACOS:
      return acosDeg(x);
    case op.ATAN:
      return atanDeg(x);
    case op.ROUND:
      return roundTo(x, 1);
    case op.FLOOR:
      return floorTo(x, 1);
    case op.CEIL:
      return ceilTo(x, 1);
    default:
      return Number.NaN;
  }
}

/** Tells why {@link runProgram} returned NaN for these operands; undefined when it did not. */
export function problemAt(program: Program, operands: Float64Array): TextProblem | undefined {
  const stop: Stop = { instruction: -1, left: 0, right: 0 };
  const result = execute(program, operands, stop);
  if (stop.instruction >= 0) return explain(program, stop);
  if (!Number.isNaN(finish(program, result))) return undefined;
  const last = program.code.length - op.STRIDE;
  const place = op.rangeOfInstruction(program.code, last);
  const scaled = (result * program.times) / program.per;
  if (!(Math.abs(scaled) <= LARGEST_VALUE)) return { code: 'too-large', ...place };
  return { code: 'not-whole', ...place, data: { value: scaled } };
}

function explain(program: Program, { instruction, left, right }: Stop): TextProblem {
  const { code } = program;
  const operation = code[instruction]! & op.OP_MASK;
  // In postfix the operand that was taken last stands right before its operation.
  const operand = op.rangeOfInstruction(code, instruction - op.STRIDE);
  const whole = op.rangeOfInstruction(code, instruction);
  switch (operation) {
    case op.DIVIDE:
      return right === 0 ? { code: 'division-by-zero', ...operand } : { code: 'too-large', ...whole };
    case op.POWER:
      if (left === 0 && right < 0) return { code: 'division-by-zero', ...whole };
      if (left < 0 && !Number.isInteger(right)) return { code: 'root-of-negative', ...whole, data: { value: left } };
      return { code: 'too-large', ...whole };
    case op.SQRT:
      return { code: 'root-of-negative', ...operand, data: { value: right } };
    case op.ASIN:
    case op.ACOS:
      return { code: 'outside-one', ...operand, data: { value: right } };
    case op.TAN:
      return { code: 'no-tangent', ...operand, data: { value: right } };
    case op.ATAN2:
      return { code: 'no-direction', ...whole };
    case op.ROUND_TO:
    case op.FLOOR_TO:
    case op.CEIL_TO:
      return right > 0 ? { code: 'too-large', ...whole } : { code: 'step-not-positive', ...operand };
    default:
      return { code: 'too-large', ...whole };
  }
}
