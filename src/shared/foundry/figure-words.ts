import { unreachable } from '../base/assert.ts';
import { formatNumber, formatQuantity } from '../quantity/format.ts';
import type { LengthUnit } from '../quantity/kind.ts';
import type { Figure } from './figure.ts';

const MM3_PER_CM3 = 1000;
const MM_PER_INCH = 25.4;

/** No more figures than such reckoning is good for: three. */
const three = (value: number): string => {
  const size = Math.abs(value);
  return formatNumber(value, size < 1 ? 3 : size < 10 ? 2 : size < 100 ? 1 : 0);
};

/** A figure as screen and paper show it, lengths and areas in the build's system: `2.68 kg`, `725 °C`, `1 h 12 min`, `14 mm`. */
export function figureWords({ value, unit }: Pick<Figure, 'value' | 'unit'>, lengthUnit: LengthUnit): string {
  switch (unit) {
    case '':
      return three(value);
    case 'mm':
      return formatQuantity(value, 'length', { unit: lengthUnit, decimals: lengthUnit === 'mm' ? 1 : 2 });
    case 'mm²':
      return lengthUnit === 'mm' ? `${three(value)} mm²` : `${three(value / MM_PER_INCH ** 2)} in²`;
    case 'mm³':
      return lengthUnit === 'mm' ? `${three(value / MM3_PER_CM3)} cm³` : `${three(value / MM_PER_INCH ** 3)} in³`;
    case 'mm/s':
      return lengthUnit === 'mm' ? `${three(value / 1000)} m/s` : `${three(value / MM_PER_INCH / 12)} ft/s`;
    case 's/mm²':
      return `${three(value)} s/mm²`;
    case 'kg':
      return Math.abs(value) < 0.1 ? `${formatNumber(value * 1000, 0)} g` : `${formatNumber(value, 2)} kg`;
    case '°C':
    case 'K':
      return `${formatNumber(value, 0)} ${unit}`;
    case 'min':
      return minutesWords(value);
    case 's':
      return value < 90 ? `${three(value)} s` : minutesWords(value / 60);
    case '%':
    case 'kg/m³':
    case 'l':
    case 'kJ':
    case 'kJ/kg':
    case 'kW':
    case 'N':
    case 'kPa':
      return `${three(value)} ${unit}`;
    default:
      return unreachable(unit);
  }
}

function minutesWords(minutes: number): string {
  if (minutes < 10) return `${formatNumber(minutes, 1)} min`;
  const whole = Math.round(minutes);
  if (whole < 60) return `${whole} min`;
  return whole % 60 === 0 ? `${whole / 60} h` : `${Math.floor(whole / 60)} h ${whole % 60} min`;
}
