import { link } from '../formula/link.ts';
import { parseWritten } from '../formula/parse-written.ts';
import type { LengthUnit } from '../quantity/kind.ts';
import { parseLimits } from '../quantity/parse-limits.ts';
import type { Dimension } from './dimension.ts';
import { withCastingLengths, withPatternLengths, withPourLengths } from './foundry-lengths.ts';
import { kindOfMeasure } from './kind-of-measure.ts';
import type { BuildRecord } from './records.ts';
import { withMachineLengths, withOperationLengths, withSetupLengths } from './written-lengths.ts';
import { writtenOptions } from './written-options.ts';

/**
 * The dimension with its unit written behind every number that has none, so that it stays what it is in a build of the
 * other unit. What reads the same in both is left to the letter, and so is what cannot be read.
 *
 * @param now the unit in which numbers without one are read so far
 */
export function withUnit(record: Dimension, now: LengthUnit): Dimension {
  if (kindOfMeasure(record.measure) !== 'length') return record;
  const then = now === 'mm' ? 'in' : 'mm';
  const value = valueWithUnit(record, now, then);
  const limits = limitsIn(record, record.value, now) === limitsIn(record, value, then);
  return { ...record, value, limits: limits ? record.limits : `${record.limits} ${now}` };
}

function valueWithUnit(record: Dimension, now: LengthUnit, then: LengthUnit): string {
  const { measure, value } = record;
  const read = parseWritten(value, writtenOptions(measure, now));
  const anew = parseWritten(value, writtenOptions(measure, then));
  if (!read.ok || !anew.ok) return value;
  if (read.value.is === 'quantity')
    return anew.value.is === 'quantity' && anew.value.value === read.value.value ? value : `${value} ${now}`;
  if (read.value.is === 'empty' || read.value.formula.references.length > 0) return value;
  // A formula of bare numbers is in the unit of the cell as a whole; any other gives its units itself.
  const inch = parseWritten(value, writtenOptions(measure, 'in'));
  if (!inch.ok || inch.value.is !== 'formula') return value;
  const program = link(inch.value.formula, [], { want: 'length' });
  const isBare = program.ok && program.value.times !== program.value.per;
  return isBare ? `(${value}) * 1 ${now}` : value;
}

/** The limits as they are read beside this value, to be compared; those that cannot be read are alike. */
function limitsIn(record: Dimension, value: string, lengthUnit: LengthUnit): string {
  const read = parseWritten(value, writtenOptions(record.measure, lengthUnit));
  const unit = read.ok && read.value.is === 'quantity' ? (read.value.unit ?? lengthUnit) : lengthUnit;
  const limits = parseLimits(record.limits, { kind: 'length', unit });
  return limits.ok && limits.value ? `${limits.value.minus} ${limits.value.plus}` : '';
}

/**
 * A length as written with its unit behind it where it has none, so that it reads the same in a build of the other unit.
 * What cannot be read is left to the letter.
 *
 * @param now the unit in which a number without one is read so far
 */
export function lengthWithUnit(text: string, now: LengthUnit): string {
  const [read, anew] = (['mm', 'in'] as const).map((lengthUnit) => parseWritten(text, { kind: 'length', lengthUnit }));
  if (!read?.ok || !anew?.ok || read.value.is !== 'quantity' || anew.value.is !== 'quantity') return text;
  return read.value.value === anew.value.value ? text : `${text.trim()} ${now}`;
}

/** The record with its unit written behind every length in it that has none: see {@link withUnit}. */
export function withUnits(record: BuildRecord, now: LengthUnit): BuildRecord {
  const each = (text: string): string => lengthWithUnit(text, now);
  switch (record.kind) {
    case 'dimension':
      return withUnit(record, now);
    case 'machine':
      return withMachineLengths(record, each);
    case 'setup':
      return withSetupLengths(record, each);
    case 'operation':
      return withOperationLengths(record, each);
    case 'casting':
      return withCastingLengths(record, each);
    case 'pattern':
      return withPatternLengths(record, each);
    case 'pour':
      return withPourLengths(record, each);
    default:
      return record;
  }
}
