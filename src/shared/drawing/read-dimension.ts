import type { Dimension } from '../build/dimension.ts';
import { kindOfMeasure } from '../build/kind-of-measure.ts';
import { link } from '../formula/link.ts';
import { parseWritten, quantity, scanQuantity } from '../formula/parse-written.ts';
import type { Formula, WrittenOptions } from '../formula/written.ts';
import type { Kind, LengthUnit, TextProblem } from '../quantity/kind.ts';
import { type Limits, parseLimits } from '../quantity/parse-limits.ts';
import { addMention, dropMention } from './name-table.ts';
import { tie } from './names.ts';
import { addTo, clearRow, holds, rowOf, takeFrom } from './rows.ts';
import type { Reading, State } from './state.ts';

// Most cells ask for one of a handful of options: they are made once.
const kept = new Map<string, WrittenOptions>();

function optionsFor(record: Dimension, kind: Kind, lengthUnit: LengthUnit): WrittenOptions {
  const form = record.measure.type === 'size' ? record.measure.form : 'between';
  const key = lengthUnit === 'mm' ? form : `${form} in`;
  const known = kept.get(key);
  if (known) return known;
  const made: WrittenOptions = {
    kind,
    lengthUnit,
    ...(form === 'thread' ? { thread: true } : {}),
    ...(form === 'count' ? { whole: true } : {}),
  };
  kept.set(key, made);
  return made;
}

export const newReading = (): Reading => ({
  formulas: new Map(),
  linked: new Map(),
  limits: { mm: new Map(), in: new Map() },
});

/** Reads the value's text anew. The names of a formula are tied afterwards, by {@link tieDimension}. */
export function readDimension(state: State, slot: number): void {
  const d = state.dimensions;
  const record = d.records[slot]!;
  const kind = kindOfMeasure(record.measure);
  const { lengthUnit } = state.settings;
  d.kinds[slot] = kind;
  if (d.formulas[slot]) d.formulas[slot] = undefined;
  if (d.textProblems.size > 0) d.textProblems.delete(slot);
  d.written[slot] = Number.NaN;
  d.units[slot] = kind === 'length' ? lengthUnit : undefined;
  const options = optionsFor(record, kind, lengthUnit);
  if (scanQuantity(record.value, options)) {
    d.written[slot] = quantity.value;
    if (quantity.unit !== undefined) d.units[slot] = quantity.unit;
    return;
  }
  const read = parseWritten(record.value, options, state.reading?.formulas);
  if (!read.ok) {
    d.textProblems.set(slot, read.error);
  } else if (read.value.is === 'quantity') {
    d.written[slot] = read.value.value;
    if (read.value.unit !== undefined) d.units[slot] = read.value.unit;
  } else if (read.value.is === 'formula') {
    d.formulas[slot] = read.value.formula;
  }
}

/** Reads the limits' text anew; their bare numbers are in the unit that the value is written in. */
export function readLimits(state: State, slot: number): void {
  const d = state.dimensions;
  const { limits } = d.records[slot]!;
  if (d.limitsProblems.size > 0) d.limitsProblems.delete(slot);
  const read = limits === '' ? undefined : limitsIn(state, slot, limits);
  d.writtenMinus[slot] = read ? read.minus + 0 : Number.NaN;
  d.writtenPlus[slot] = read ? read.plus + 0 : Number.NaN;
}

function limitsIn(state: State, slot: number, text: string): Limits | undefined {
  const d = state.dimensions;
  const kind = d.kinds[slot]!;
  const unit = d.units[slot] ?? state.settings.lengthUnit;
  const known = kind === 'length' ? state.reading?.limits[unit] : undefined;
  const before = known?.get(text);
  if (before) return before;
  const read = parseLimits(text, { kind, unit });
  if (!read.ok) {
    d.limitsProblems.set(slot, read.error);
    return undefined;
  }
  if (read.value) known?.set(text, read.value);
  return read.value;
}

/** Forgets what a formula was tied to. */
export function untieDimension(state: State, slot: number): void {
  const d = state.dimensions;
  const { mentioned, operands, dependents } = d;
  if (d.programs[slot]) d.programs[slot] = undefined;
  if (mentioned.count[slot] === 0) return;
  for (const entry of rowOf(mentioned, slot)) dropMention(state.names, entry, slot);
  for (const operand of rowOf(operands, slot)) if (operand >= 0) takeFrom(dependents, operand, slot);
  clearRow(mentioned, slot);
  clearRow(operands, slot);
  d.parts[slot]?.unknowns?.delete(slot);
}

// Scratch of one tying.
const heard: number[] = [];
const kinds: Kind[] = [];

/** Ties a formula's names to dimensions and checks its units. The text problem is the first in the order of the text. */
export function tieDimension(state: State, slot: number): void {
  const d = state.dimensions;
  const formula = d.formulas[slot];
  if (!formula) return;
  const { operands, dependents, mentioned } = d;
  const { references } = formula;
  let wrong: TextProblem | undefined;
  heard.length = 0;
  kinds.length = 0;
  if (state.unknownParts.size > 0) state.unknownParts.delete(slot);
  for (let i = 0; i < references.length; i++) {
    const tied = tie(state, d.parts[slot]!, references[i]!, heard, slot);
    if (typeof tied === 'number') {
      // Two ways of naming may mean one dimension (`bore` and `bore of column`).
      if (!holds(operands, slot, tied)) addTo(dependents, tied, slot);
      addTo(operands, slot, tied);
      kinds[i] = d.kinds[tied]!;
    } else {
      addTo(operands, slot, -1);
      kinds[i] = 'number';
      wrong ??= tied;
    }
  }
  for (let i = 0; i < heard.length; i++) {
    addMention(state.names, heard[i]!, slot);
    addTo(mentioned, slot, heard[i]!);
  }
  if (wrong) d.textProblems.set(slot, wrong);
  else if (d.textProblems.size > 0) d.textProblems.delete(slot);
  if (wrong) return;
  linkDimension(state, slot, formula);
}

/** Makes a formula ready to run; `kinds` holds what its names measure. */
function linkDimension(state: State, slot: number, formula: Formula): void {
  const d = state.dimensions;
  const { measure } = d.records[slot]!;
  const whole = measure.type === 'size' && measure.form === 'count';
  const want = d.kinds[slot]!;
  const known = state.reading?.linked.get(formula);
  if (known && known.want === want && known.whole === whole && known.kinds.every((kind, i) => kind === kinds[i])) {
    d.programs[slot] = known.program;
    return;
  }
  const linked = link(formula, kinds, whole ? { want, whole } : { want });
  if (!linked.ok) {
    d.textProblems.set(slot, linked.error);
    return;
  }
  d.programs[slot] = linked.value;
  if (!known) state.reading?.linked.set(formula, { program: linked.value, want, whole, kinds: kinds.slice() });
}
