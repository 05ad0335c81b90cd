import { parseWritten } from '../../formula/parse-written.ts';
import { type Rate, readRate } from '../../plan/read-rate.ts';
import type { Kind, LengthUnit } from '../../quantity/kind.ts';
import { type Figure, type FigureUnit, written } from '../figure.ts';
import type { FoundryUnknown } from '../foundry-unknown.ts';

/** Reads the texts of a record. What is not written is undefined; what cannot be read is undefined and noted as unknown. */
export interface WrittenReader {
  /** mm of either sign; nought where nothing is written. Undefined where it cannot be read; not noted. */
  signed(text: string): number | undefined;
  /** mm, above nought. */
  length(text: string, field: string): Figure | undefined;
  /** kg, nought or more. */
  mass(text: string, field: string): Figure | undefined;
  /** °C. */
  temperature(text: string, field: string): Figure | undefined;
  /** 0 to below 100 %. */
  percent(text: string, field: string): Figure | undefined;
  /** kg/m³, above nought; g/l and kg/l are read as well. */
  density(text: string, field: string): Figure | undefined;
  /** Litres. */
  volume(text: string, field: string): Figure | undefined;
  minutes(text: string, field: string): Figure | undefined;
  /** A number alone is seconds. */
  seconds(text: string, field: string): Figure | undefined;
}

const ABSOLUTE_ZERO_C = -273.15;

const densityUnits: readonly (readonly [RegExp, number])[] = [
  [/\s*kg\s*\/\s*m(?:3|³|\^3)$/i, 1],
  [/\s*g\s*\/\s*l$/i, 1],
  [/\s*kg\s*\/\s*l$/i, 1000],
  [/\s*g\s*\/\s*cm(?:3|³|\^3)$/i, 1000],
];

export function writtenReader(lengthUnit: LengthUnit, unknown: FoundryUnknown[]): WrittenReader {
  const plain = (
    text: string,
    field: string,
    kind: Kind,
    unit: FigureUnit,
    isFit: (value: number) => boolean,
    times = 1,
    whole = text,
  ): Figure | undefined => {
    if (text.trim() === '') return undefined;
    const read = parseWritten(text, { kind, lengthUnit });
    if (read.ok && read.value.is === 'quantity' && isFit(read.value.value)) {
      return written(read.value.value * times, unit);
    }
    unknown.push({ is: 'written', field, text: whole });
    return undefined;
  };
  const rate = (text: string, field: string, kind: Rate, unit: FigureUnit, times = 1): Figure | undefined => {
    const read = readRate(text, kind);
    if (read.ok) return read.value === undefined ? undefined : written(read.value * times, unit);
    unknown.push({ is: 'written', field, text });
    return undefined;
  };
  return {
    signed(text) {
      if (text.trim() === '') return 0;
      const read = parseWritten(text, { kind: 'length', lengthUnit });
      return read.ok && read.value.is === 'quantity' ? read.value.value : undefined;
    },
    length: (text, field) => plain(text, field, 'length', 'mm', (value) => value > 0),
    mass: (text, field) => plain(text, field, 'mass', 'kg', (value) => value >= 0),
    temperature: (text, field) => plain(text, field, 'temperature', '°C', (value) => value > ABSOLUTE_ZERO_C),
    percent: (text, field) =>
      plain(text.replace(/\s*%\s*$/, ''), field, 'number', '%', (value) => value >= 0 && value < 100, 1, text),
    density(text, field) {
      const unit = [...densityUnits].reverse().find(([ending]) => ending.test(text.trim()));
      const number = unit ? text.trim().replace(unit[0], '') : text;
      return plain(number, field, 'number', 'kg/m³', (value) => value > 0, unit?.[1] ?? 1, text);
    },
    volume: (text, field) => rate(text, field, 'volume', 'l'),
    minutes: (text, field) => rate(text, field, 'minutes', 'min'),
    seconds: (text, field) =>
      /[a-z]/i.test(text)
        ? rate(text, field, 'minutes', 's', 60)
        : plain(text, field, 'number', 's', (value) => value > 0),
  };
}
