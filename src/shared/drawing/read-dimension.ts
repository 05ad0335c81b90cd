import type { Dimension } from '../build/dimension.ts';
import { kindOfMeasure } from '../build/kind-of-measure.ts';
import { link } from '../formula/link.ts';
import { parseWritten } from '../formula/parse-written.ts';
import type { WrittenOptions } from '../formula/written.ts';
import type { Kind, LengthUnit, TextProblem } from '../quantity/kind.ts';
import { parseLimits } from '../quantity/parse-limits.ts';
import { addMention, dropMention, tie } from './names.ts';
import { appended, type NameEntry, type State } from './state.ts';

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

/** Reads the value's text anew. The names of a formula are tied afterwards, by {@link tieDimension}. */
export function readDimension(state: State, slot: number): void {
  const d = state.dimensions;
  const record = d.records[slot]!;
  const kind = kindOfMeasure(record.measure);
  const { lengthUnit } = state.settings;
  d.kinds[slot] = kind;
  if (d.formulas[slot]) d.formulas[slot] = undefined;
  if (d.textProblems[slot]) d.textProblems[slot] = undefined;
  d.written[slot] = Number.NaN;
  d.units[slot] = kind === 'length' ? lengthUnit : undefined;
  const read = parseWritten(record.value, optionsFor(record, kind, lengthUnit));
  if (!read.ok) {
    d.textProblems[slot] = read.error;
  } else if (read.value.is === 'quantity') {
    // Adding 0 turns -0 into 0.
    d.written[slot] = read.value.value + 0;
    if (read.value.unit !== undefined) d.units[slot] = read.value.unit;
  } else if (read.value.is === 'formula') {
    d.formulas[slot] = read.value.formula;
  }
}

/** Reads the limits' text anew; their bare numbers are in the unit that the value is written in. */
export function readLimits(state: State, slot: number): void {
  const d = state.dimensions;
  const { limits } = d.records[slot]!;
  d.limitsProblems[slot] = undefined;
  d.writtenMinus[slot] = Number.NaN;
  d.writtenPlus[slot] = Number.NaN;
  if (limits === '') return;
  const read = parseLimits(limits, { kind: d.kinds[slot]!, unit: d.units[slot] ?? state.settings.lengthUnit });
  if (!read.ok) {
    d.limitsProblems[slot] = read.error;
  } else if (read.value) {
    d.writtenMinus[slot] = read.value.minus + 0;
    d.writtenPlus[slot] = read.value.plus + 0;
  }
}

/** Forgets what a formula was tied to. */
export function untieDimension(state: State, slot: number): void {
  const d = state.dimensions;
  const mentioned = d.mentioned[slot];
  const operands = d.operands[slot];
  if (!mentioned || !operands) return;
  for (const entry of mentioned) dropMention(entry, slot);
  for (let i = 0; i < operands.length; i++) {
    const target = operands[i]!;
    if (target < 0 || operands.indexOf(target) < i) continue;
    const list = d.dependents[target]!;
    list[list.lastIndexOf(slot)] = list[list.length - 1]!;
    list.pop();
  }
  d.mentioned[slot] = undefined;
  d.operands[slot] = undefined;
  d.programs[slot] = undefined;
  d.parts[slot]?.unknowns.delete(slot);
}

// Scratch of one tying: a list of its own that grew by pushing would have room for seventeen.
const heard: NameEntry[] = [];
const kinds: Kind[] = [];

/** Ties a formula's names to dimensions and checks its units. The text problem is the first in the order of the text. */
export function tieDimension(state: State, slot: number): void {
  const d = state.dimensions;
  const formula = d.formulas[slot];
  if (!formula) return;
  const { references } = formula;
  const operands = new Array<number>(references.length);
  let wrong: TextProblem | undefined;
  heard.length = 0;
  kinds.length = 0;
  state.unknownParts.delete(slot);
  for (let i = 0; i < references.length; i++) {
    const tied = tie(state, d.parts[slot]!, references[i]!, heard, slot);
    if (typeof tied === 'number') {
      operands[i] = tied;
      kinds[i] = d.kinds[tied]!;
    } else {
      operands[i] = -1;
      kinds[i] = 'number';
      wrong ??= tied;
    }
  }
  for (let i = 0; i < heard.length; i++) addMention(heard[i]!, slot);
  d.mentioned[slot] = heard.slice();
  d.operands[slot] = operands;
  for (let i = 0; i < operands.length; i++) {
    const target = operands[i]!;
    if (target < 0 || operands.indexOf(target) < i) continue;
    d.dependents[target] = appended(d.dependents[target], slot);
  }
  d.textProblems[slot] = wrong;
  if (wrong) return;
  const record = d.records[slot]!;
  const whole = record.measure.type === 'size' && record.measure.form === 'count';
  const linked = link(formula, kinds, whole ? { want: d.kinds[slot]!, whole } : { want: d.kinds[slot]! });
  if (linked.ok) d.programs[slot] = linked.value;
  else d.textProblems[slot] = linked.error;
}
