import type { OwnMaterial } from '../../shared/build/material.ts';
import { formatNumber } from '../../shared/quantity/format.ts';
import { scanNumber, scanned } from '../../shared/quantity/scan-number.ts';
import { textProblemWords } from '../engine/text-problem-words.ts';

export type FigureName = 'densityKgM3' | 'expansionPerK' | 'modulusGPa';

/** How a figure of a material is written and within what it must lie. */
interface Figure {
  readonly name: FigureName;
  readonly label: string;
  /** The unit of a number that is written without one. */
  readonly unit: string;
  /** Units that may be written after the number, bare of spaces and dots, by what one of them is in the kept unit. */
  readonly units: Readonly<Record<string, number>>;
  /** Under its field: the usual unit, and others that may be written. */
  readonly unitWords: string;
  /** In the kept unit, as the build's schema has it. */
  readonly least: number;
  readonly most: number;
  readonly example: string;
}

// The pound is 0.453 592 37 kg, the inch 25.4 mm (international yard and pound agreement of 1959); the pound-force takes
// the standard acceleration of 9.806 65 m/s².
const LB = 0.45359237;
const INCH_M = 0.0254;
const PSI_GPA = (LB * 9.80665) / INCH_M ** 2 / 1e9;
/** A kelvin is 1.8 degrees Fahrenheit. */
const PER_F = 1.8e-6;

/** The figures that are written as numbers, in the order in which they stand. */
export const figures: readonly Figure[] = [
  {
    name: 'densityKgM3',
    label: 'Density',
    unit: 'g/cm³',
    units: { 'g/cm3': 1e3, 'g/cc': 1e3, 'kg/dm3': 1e3, 'kg/l': 1e3, 'kg/m3': 1, 'lb/in3': LB / INCH_M ** 3 },
    unitWords: 'g/cm³; kg/m³ or lb/in³ if written',
    least: 1,
    most: 30_000,
    example: '2.7',
  },
  {
    name: 'expansionPerK',
    label: 'Expansion, 20 to 100 °C',
    unit: '10⁻⁶/K',
    units: {
      '10-6/k': 1e-6,
      '10^-6/k': 1e-6,
      '10-6/°c': 1e-6,
      'µm/mk': 1e-6,
      'µm/m°c': 1e-6,
      'ppm/k': 1e-6,
      '/k': 1,
      '/°c': 1,
      'µin/in°f': PER_F,
      '10-6/°f': PER_F,
      'ppm/°f': PER_F,
    },
    unitWords: '10⁻⁶/K; /K or µin/in°F if written',
    least: -0.001,
    most: 0.001,
    example: '22.5',
  },
  {
    name: 'modulusGPa',
    label: 'Modulus',
    unit: 'GPa',
    units: { gpa: 1, 'kn/mm2': 1, mpa: 1e-3, 'n/mm2': 1e-3, psi: PSI_GPA, ksi: PSI_GPA * 1e3, msi: PSI_GPA * 1e6 },
    unitWords: 'GPa; MPa or psi if written',
    least: 0.001,
    most: 2_000,
    example: '72',
  },
];

const shownIn: Readonly<Record<FigureName, number>> = { densityKgM3: 1e3, expansionPerK: 1e-6, modulusGPa: 1 };

const figureOf = (name: FigureName): Figure => figures.find((figure) => figure.name === name)!;

/** A figure in the unit of its column, bare; undefined when it is not known. */
export function figureText(known: OwnMaterial['values'], name: FigureName): string | undefined {
  const value = known[name];
  return value === undefined ? undefined : formatNumber(value / shownIn[name], 6);
}

/** A figure with its unit; undefined when it is not known. */
export function figureWords(known: OwnMaterial['values'], name: FigureName): string | undefined {
  const text = figureText(known, name);
  return text === undefined ? undefined : `${text} ${figureOf(name).unit}`;
}

type FigureRead =
  /** Undefined: nothing is written, so it is not known. */
  { readonly ok: true; readonly value: number | undefined } | { readonly ok: false; readonly sentence: string };

const fault = (sentence: string): FigureRead => ({ ok: false, sentence });

const unitKey = (text: string): string =>
  text
    .toLowerCase()
    .replaceAll('³', '3')
    .replaceAll('²', '2')
    .replaceAll('⁻⁶', '-6')
    .replaceAll('−', '-')
    .replaceAll('μ', 'µ')
    .replaceAll('cu.in', 'in3')
    .replaceAll(/[\s·⋅*()×]/g, '')
    .replace(/^x?10/, '10');

/**
 * Reads a figure of a material: a number, in the unit of its column or with one of its own.
 *
 * @returns the value in the unit that the build keeps, or what is wrong and what to write instead.
 */
export function readFigure(name: FigureName, text: string): FigureRead {
  const figure = figureOf(name);
  const written = text.trim();
  if (written === '') return { ok: true, value: undefined };
  const isNegative = /^[-−–]/.test(written);
  const from = written.length - written.replace(/^[-−–+]\s*/, '').length;
  const end = scanNumber(written, from, false);
  if (end === -1 && scanned.problem !== undefined) return fault(textProblemWords(scanned.problem));
  const { label, unit, units, unitWords, example, least, most } = figure;
  const what = label.split(',')[0]!.toLowerCase();
  if (end <= from)
    return fault(`"${written}" is not a number. Write the ${what} as a number such as ${example}, in ${unit}.`);
  const number = isNegative ? -scanned.value : scanned.value;
  const after = unitKey(written.slice(end));
  const factor = after === '' ? shownIn[name] : units[after];
  if (factor === undefined)
    return fault(`"${written.slice(end).trim()}" is no unit of ${what} known here. Write it in ${unitWords}.`);
  // Twelve figures: what was written, without the dust of the conversion.
  const value = Number((number * factor).toPrecision(12));
  if (value >= least && value <= most) return { ok: true, value };
  const bounds = `${formatNumber(least / shownIn[name], 6)} to ${formatNumber(most / shownIn[name], 6)} ${unit}`;
  const slip = name === 'densityKgM3' && after === '' && number > most / 1e3 && number <= most;
  return fault(
    `${written}${after === '' ? ` ${unit}` : ''} is beyond any material (${bounds}). ${
      slip ? `If kg/m³ is meant, write "${written} kg/m³".` : 'Correct the number or its unit.'
    }`,
  );
}
