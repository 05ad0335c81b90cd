import type { DimensionId } from '../../base/ids.ts';
import type { Dimension } from '../../build/dimension.ts';
import { kindOfMeasure } from '../../build/kind-of-measure.ts';
import { writtenOptions } from '../../build/written-options.ts';
import { link } from '../../formula/link.ts';
import { parseWritten } from '../../formula/parse-written.ts';
import { runProgram } from '../../formula/run.ts';
import type { Program } from '../../formula/written.ts';
import type { Changes, Numbers } from '../../plan/numbers.ts';
import type { Kind, LengthUnit } from '../../quantity/kind.ts';

/** A dimension that more others hang on than this is not followed. */
const MOST_FOLLOWED = 2000;

/** Keeps the formulas that it has made ready to run. */
export interface FormulaFollower {
  /**
   * All that changes with a dimension whose value is changed by `by`: itself, and what formulas make of it, however far on. Undefined where
   * a formula comes to nothing, or too many hang on it.
   */
  changesWith(root: DimensionId, by: number): Changes | undefined;
  /** The dimensions without a formula that a value hangs on: itself, or those behind its formula. */
  rootsOf(dimension: DimensionId): readonly DimensionId[];
}

export function formulaFollower(numbers: Numbers, lengthUnit: LengthUnit): FormulaFollower {
  const programs = new Map<DimensionId, Program | undefined>();

  function programOf(record: Dimension, references: readonly DimensionId[]): Program | undefined {
    if (programs.has(record.id)) return programs.get(record.id);
    const made = compile(record, references, numbers, lengthUnit);
    programs.set(record.id, made);
    return made;
  }

  function changesWith(root: DimensionId, by: number): Changes | undefined {
    const affected = new Set<DimensionId>([root]);
    for (const id of affected) {
      for (const dependent of numbers.namedBy(id)) affected.add(dependent);
      if (affected.size > MOST_FOLLOWED) return undefined;
    }
    const values = new Map<DimensionId, number>();
    const valueWith = (id: DimensionId): number => {
      const known = values.get(id);
      if (known !== undefined) return known;
      const record = numbers.record(id);
      const resolved = numbers.resolved(id);
      if (record?.kind !== 'dimension' || resolved?.value === undefined) return Number.NaN;
      let value = resolved.value;
      if (id === root) value += by;
      else if (affected.has(id) && resolved.isFormula) {
        const program = programOf(record, resolved.references);
        value = program ? runProgram(program, Float64Array.from(resolved.references, valueWith)) : Number.NaN;
      }
      values.set(id, value);
      return value;
    };
    const changes = new Map<DimensionId, number>();
    for (const id of affected) {
      const before = numbers.resolved(id)?.value;
      if (before === undefined) continue;
      const change = valueWith(id) - before;
      if (Number.isNaN(change)) return undefined;
      if (change !== 0) changes.set(id, change);
    }
    return changes;
  }

  function rootsOf(dimension: DimensionId): readonly DimensionId[] {
    const seen = new Set<DimensionId>([dimension]);
    const roots: DimensionId[] = [];
    for (const id of seen) {
      const resolved = numbers.resolved(id);
      if (!resolved?.isFormula) roots.push(id);
      else for (const reference of resolved.references) seen.add(reference);
    }
    return roots;
  }

  return { changesWith, rootsOf };
}

function compile(
  record: Dimension,
  references: readonly DimensionId[],
  numbers: Numbers,
  lengthUnit: LengthUnit,
): Program | undefined {
  const read = parseWritten(record.value, writtenOptions(record.measure, lengthUnit));
  // Where one dimension is named in two ways its operands are not those of the text.
  if (!read.ok || read.value.is !== 'formula') return undefined;
  const { formula } = read.value;
  if (formula.references.length !== references.length) return undefined;
  const kinds = references.map((id): Kind => {
    const named = numbers.record(id);
    return named?.kind === 'dimension' ? kindOfMeasure(named.measure) : 'number';
  });
  const whole = record.measure.type === 'size' && record.measure.form === 'count';
  const linked = link(formula, kinds, { want: kindOfMeasure(record.measure), whole });
  return linked.ok ? linked.value : undefined;
}
