import { describe, expect, test } from 'vitest';
import type { MachineId } from '../base/ids.ts';
import { defaultMachine, type Machine } from '../build/machine.ts';
import type { MachineType } from '../tables/machine-figures.ts';
import { readFigures } from './machine-figures-read.ts';

const machine = (type: MachineType, figures: Machine['figures'], bed: Machine['bed'] = []): Machine => ({
  ...defaultMachine('machine:a' as MachineId, 'a', type, 1),
  figures,
  bed,
});

const figureOf = (type: MachineType, key: string, text: string, unit: 'mm' | 'in' = 'mm') =>
  readFigures(machine(type, { [key]: text }), unit).values.get(key);

describe('figures of machines', () => {
  test.each([
    ['lathe', 'swingOverBed', '250', 250],
    ['lathe', 'swingOverBed', '9"', 228.6],
    ['lathe', 'swingOverBed', '4-1/2 in', 114.3],
    ['lathe', 'tailOverhang', '0', 0],
    ['lathe', 'power', '0.75', 0.75],
    ['lathe', 'power', '750 W', 0.75],
    ['lathe', 'fastestRpm', '1800 rpm', 1800],
    ['lathe', 'fastestRpm', '1800', 1800],
    ['shaper', 'fastestStrokes', '90', 90],
    ['bandsaw', 'slowestBand', '100 ft/min', 30.48],
    ['bandsaw', 'fastestBand', '60', 60],
    ['furnace', 'highest', '1100 °C', 1100],
    ['furnace', 'highest', '2012 °F', 1100],
    ['furnace', 'heatRate', '4 kW', 4],
    ['crucible', 'capacity', '1.5 l', 1.5],
    ['crucible', 'capacity', '750 ml', 0.75],
    ['crucible', 'emptyMass', '900 g', 0.9],
    ['crucible', 'emptyMass', '2 lb', 0.90718474],
  ] as const)('a %s: %s "%s" is %f', (type, key, text, value) => {
    expect(figureOf(type, key, text)).toBeCloseTo(value, 10);
  });

  // 1 hp = 550 ft·lbf/s = 745.699 871 582 W (Thompson and Taylor, NIST SP 811, 2008, appendix B.8; from memory).
  test('half a horsepower', () => {
    expect(figureOf('lathe', 'power', '1/2 hp')).toBeCloseTo(0.372_849_935_8, 9);
  });

  test('a bare number takes the unit of the build', () => {
    expect(figureOf('lathe', 'swingOverBed', '9', 'in')).toBeCloseTo(228.6, 10);
    expect(figureOf('lathe', 'swingOverBed', '9', 'mm')).toBe(9);
  });

  test('what is empty, or no figure of the type, is unknown and no fault', () => {
    const read = readFigures(machine('vise', { opening: '  ', swingOverBed: 'rubbish', jawWidth: '100' }), 'mm');
    expect([...read.values]).toEqual([['jawWidth', 100]]);
    expect(read).toMatchObject({ problems: [], doubts: [], bed: undefined });
  });

  test.each([
    ['lathe', 'swingOverBed', '0', /not above nought/],
    ['lathe', 'swingOverBed', '-5', /not above nought/],
    ['lathe', 'tailOverhang', '-5', /below nought/],
    ['lathe', 'swingOverBed', 'about nine', /.+/],
    ['lathe', 'swingOverBed', '2 * 65', /no plain number/],
    ['lathe', 'swingOverBed', '3 kg', /.+/],
    ['lathe', 'power', '2 mm', /kW, W, hp/],
    ['lathe', 'power', 'two', /no number/],
    ['lathe', 'fastestRpm', '0', /not above nought/],
    ['furnace', 'highest', '-300', /coldest/],
    ['crucible', 'capacity', '1 pint', /l, ml/],
  ] as const)('a %s: %s "%s" is refused in words', (type, key, text, words) => {
    const { values, problems } = readFigures(machine(type, { [key]: text }), 'mm');
    expect(values.size).toBe(0);
    expect(problems).toEqual([{ key, problem: expect.stringMatching(words) }]);
    expect(problems[0]?.problem).toMatch(/^[^!]+\.$/);
  });

  test('figures that contradict one another are doubted, and read all the same', () => {
    const read = readFigures(machine('lathe', { swingOverCrossSlide: '260', swingOverBed: '250' }), 'mm');
    expect(read.values.size).toBe(2);
    expect(read.doubts).toEqual([
      { key: 'swingOverCrossSlide', problem: expect.stringMatching(/\(260\) is more than swing over bed \(250\)/) },
    ]);
  });

  test('a record is read once', () => {
    const lathe = machine('lathe', { swingOverBed: '250' });
    expect(readFigures(lathe, 'mm')).toBe(readFigures(lathe, 'mm'));
    expect(readFigures(lathe, 'in')).not.toBe(readFigures(lathe, 'mm'));
  });
});

describe('the outline of a bed', () => {
  const bedOf = (...points: readonly (readonly [string, string])[]) =>
    readFigures(
      machine(
        'lathe',
        {},
        points.map(([across, down]) => ({ across, down })),
      ),
      'mm',
    );

  test('is read from front to back', () => {
    expect(bedOf(['-80', '125'], ['-30 mm', '125'], ['-30', '5"'])).toMatchObject({
      problems: [],
      bed: [
        { acrossMm: -80, downMm: 125 },
        { acrossMm: -30, downMm: 125 },
        { acrossMm: -30, downMm: 127 },
      ],
    });
  });

  test.each([
    [['-80', '125'], ['', '125'], 'bed/1/across'],
    [['-80', '125'], ['80', 'deep'], 'bed/1/down'],
    [['80', '125'], ['-80', '125'], 'bed/1/across'],
  ] as const)('%j, %j: no outline, and the place is named', (a, b, key) => {
    expect(bedOf(a, b)).toMatchObject({ bed: undefined, problems: [{ key }] });
  });

  test('one point is none', () => {
    expect(bedOf(['0', '125'])).toMatchObject({ bed: undefined, problems: [{ key: 'bed/0/across' }] });
  });
});
