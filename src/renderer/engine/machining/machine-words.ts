import type { Machine } from '../../../shared/build/machine.ts';
import { readFigures } from '../../../shared/plan/machine-figures-read.ts';
import type { LengthUnit } from '../../../shared/quantity/kind.ts';
import { type MachineType, machineFigure } from '../../../shared/tables/machine-figures.ts';
import { showFigure } from './show-figure.ts';

/** The figures that say how large a machine is, with the words that go before or after. */
const telling: Readonly<Record<MachineType, readonly (readonly [key: string, words: string])[]>> = {
  lathe: [
    ['swingOverBed', 'swing #'],
    ['betweenCentres', '# between centres'],
  ],
  'drill press': [
    ['throat', 'throat #'],
    ['daylight', 'daylight #'],
  ],
  'milling machine': [
    ['travelX', 'travels # long'],
    ['travelY', '# across'],
  ],
  shaper: [['stroke', 'stroke #']],
  planer: [
    ['stroke', 'stroke #'],
    ['betweenUprights', '# between uprights'],
  ],
  grinder: [
    ['travelX', 'travels # long'],
    ['wheelDiameter', 'wheel #'],
  ],
  bandsaw: [
    ['cutHeight', 'cuts # high'],
    ['throat', 'throat #'],
  ],
  'surface plate': [
    ['plateLength', '# long'],
    ['plateWidth', '# wide'],
  ],
  vise: [
    ['opening', 'opens #'],
    ['jawWidth', 'jaws #'],
  ],
  furnace: [
    ['bore', 'bore #'],
    ['depth', 'depth #'],
  ],
  crucible: [['capacity', '#']],
  flask: [
    ['insideLength', '# long'],
    ['insideWidth', '# wide'],
  ],
  'hot-wire bow': [
    ['wireLength', 'wire #'],
    ['throat', 'depth #'],
  ],
};

/** How large a machine is, as far as it is known. */
export function sizeWords(machine: Machine, unit: LengthUnit): string {
  const { values } = readFigures(machine, unit);
  const words = telling[machine.type].flatMap(([key, pattern]) => {
    const figure = machineFigure(machine.type, key);
    const value = values.get(key);
    return figure === undefined || value === undefined ? [] : [pattern.replace('#', showFigure(figure, value, unit))];
  });
  return words.join(', ');
}
