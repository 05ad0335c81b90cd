import type { Kind, LengthUnit, TextProblem } from '../quantity/kind.ts';

/** A dimension named in a formula: `bore`, `"wall thickness"`, `bore of column`, `"wall thickness" of "guide column"`. */
export interface Reference {
  readonly name: string;
  /** Undefined: a dimension of the same part. */
  readonly part: string | undefined;
  /** Character range in the written text. */
  readonly start: number;
  readonly end: number;
}

/** Units of a formula's inputs and result are known before any number is: they are checked once, when names are tied. */
export interface Formula {
  /** In order of first mention, each name once. */
  readonly references: readonly Reference[];
  /** The parsed tree; only this room looks inside. */
  readonly tree: FormulaNode;
}

/** A formula whose names are tied and whose units agree: ready to run, any number of times. */
export interface Program {
  /** Number of operands it reads, in the order of `Formula.references`. */
  readonly operands: number;
  readonly code: Int32Array;
  readonly constants: Float64Array;
  /** Character range of the text that each instruction stems from (start, end pairs), to place run-time problems. */
  readonly spans: Int32Array;
}

/** What a written value turns out to be. */
export type Written =
  | { readonly is: 'empty' }
  /** A plain quantity, in mm, degrees, kg, °C or as a number. */
  | { readonly is: 'quantity'; readonly value: number; readonly unit: LengthUnit | undefined }
  | { readonly is: 'formula'; readonly formula: Formula };

export interface WrittenOptions {
  readonly kind: Kind;
  /** The unit of lengths written without one. A bare fraction (`3/8`, `1-3/8`) is inches, as the trade writes it. */
  readonly lengthUnit: LengthUnit;
}

export type ProblemOr<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly error: TextProblem };

/** The tree of a formula. Values are canonical (mm, deg, kg, °C). */
export type FormulaNode =
  | { readonly op: 'number'; readonly value: number; readonly kind: Kind; readonly start: number; readonly end: number }
  | { readonly op: 'reference'; readonly index: number; readonly start: number; readonly end: number }
  | { readonly op: 'call'; readonly name: string; readonly args: readonly FormulaNode[]; readonly start: number; readonly end: number };

// Implemented beside this file:
//   parse-written.ts   parseWritten(text, options): ProblemOr<Written>
//   link.ts            link(formula, kinds: readonly Kind[] /* of each reference */, want: Kind): ProblemOr<Program>
//   run.ts             run(program, operand: (index: number) => number): number   NaN-free or throws? see below
//                      runProgram(program, operands: Float64Array): number; a run-time problem (division by zero, overflow,
//                      root of a negative, out of domain) returns NaN, and problemAt(program, operands): TextProblem tells which and where.
//   rename.ts          renameReferences(text, options, rename: (r: Reference) => {name, part} | undefined): string  rewrites only those names, all else to the letter
// quantity/parse-limits.ts   parseLimits(text, {kind, unit /* unit the value is written in */}): ProblemOr<{minus, plus} | undefined>  (undefined: empty text)
// quantity/format.ts         formatQuantity(value, kind, {unit, …}): string; nearestFraction(mm, denominator)
