import { formatNumber, formatQuantity } from '../../../shared/quantity/format.ts';
import type { LengthUnit } from '../../../shared/quantity/kind.ts';
import type { FigureMeasure, MachineFigure } from '../../../shared/tables/machine-figures.ts';

const unitWords: Readonly<Partial<Record<FigureMeasure, string>>> = {
  rpm: ' rpm',
  power: ' kW',
  rate: ' kW',
  speed: ' m/min',
  volume: ' l',
};

/** A figure of a machine with its unit: lengths in the build's own. */
export function showFigure({ measures }: Pick<MachineFigure, 'measures'>, value: number, unit: LengthUnit): string {
  if (measures === 'length' || measures === 'mass' || measures === 'temperature')
    return formatQuantity(value, measures, { unit });
  return `${formatNumber(value, 3)}${unitWords[measures] ?? ''}`;
}
