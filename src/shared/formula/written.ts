import type { Kind, LengthUnit } from '../quantity/kind.ts';

/** A dimension named in a formula: `bore`, `"wall thickness"`, `bore of column`, `"wall thickness" of "guide column"`. */
export interface Reference {
  /** As written, without quotation marks. Names match case-insensitively: compare by `nameKey`. */
  readonly name: string;
  /** Undefined: a dimension of the same part. */
  readonly part: string | undefined;
  /** Character range of the first mention in the written text, `of PART` included. */
  readonly start: number;
  readonly end: number;
}

/** A formula as read: its names are not yet tied to anything. The instructions are this room's own (see `op.ts`). */
export interface Formula {
  /** In order of first mention, each name once. */
  readonly references: readonly Reference[];
  /** Postfix instructions in pairs: operation and argument, range of the text they stem from. */
  readonly code: readonly number[];
  /** Numbers of the text in canonical units (mm, deg, kg, °C). */
  readonly constants: readonly number[];
  /** The unit of the cell's bare lengths; a formula without names and units takes it as a whole. */
  readonly lengthUnit: LengthUnit;
}

/** A formula whose names are tied and whose units agree: ready to run, any number of times. */
export interface Program {
  /** Number of operands it reads, in the order of `Formula.references`. */
  readonly operands: number;
  readonly code: readonly number[];
  readonly constants: readonly number[];
  /** The result is multiplied by `times` / `per`: 127/5 for a formula of bare numbers in a cell of inches, else 1/1. */
  readonly times: number;
  readonly per: number;
  /** The result must be a whole number (a count). */
  readonly whole: boolean;
}

/** What a written value turns out to be. */
export type Written =
  | { readonly is: 'empty' }
  /** A plain quantity, in mm, degrees, kg, °C or as a number. `unit` is set for lengths only: the system it is written in. */
  | { readonly is: 'quantity'; readonly value: number; readonly unit: LengthUnit | undefined }
  | { readonly is: 'formula'; readonly formula: Formula };

export interface WrittenOptions {
  readonly kind: Kind;
  /** The unit of lengths written without one. A bare fraction (`3/8`, `1-3/8`) is inches, as the trade writes it. */
  readonly lengthUnit: LengthUnit;
  /** The value is a thread (`M8`, `1/4-20 UNC`): its value is the major diameter. Goes with kind `length`. */
  readonly thread?: boolean;
  /** The value is a count: anything but a whole number is refused. Goes with kind `number`. */
  readonly whole?: boolean;
}
