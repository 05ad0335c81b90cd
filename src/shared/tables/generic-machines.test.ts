import { describe, expect, test } from 'vitest';
import type { MachineId } from '../base/ids.ts';
import { defaultMachine, machineSchema } from '../build/machine.ts';
import { readFigures } from '../plan/machine-figures-read.ts';
import { type GenericMachine, genericMachine, genericMachines, genericOrigin } from './generic-machines.ts';
import { machineFigure, machineFigures, machineTypes } from './machine-figures.ts';

const recordOf = ({ type, name, figures }: GenericMachine) => ({
  ...defaultMachine('machine:a' as MachineId, name, type, 1),
  figures,
});
const valuesOf = (row: GenericMachine) => readFigures(recordOf(row), 'mm').values;
const lathes = genericMachines.filter(({ type }) => type === 'lathe').map((row) => [row.name, valuesOf(row)] as const);

describe('generic starting rows', () => {
  test('there is one of every type, each with an id of its own, in the order of types', () => {
    expect(new Set(genericMachines.map(({ type }) => type))).toEqual(new Set(machineTypes));
    expect(new Set(genericMachines.map(({ id }) => id)).size).toBe(genericMachines.length);
    const places = genericMachines.map(({ type }) => machineTypes.indexOf(type));
    expect(places).toEqual([...places].sort((a, b) => a - b));
    expect(genericMachine('lathe-65')?.type).toBe('lathe');
    expect(genericMachine('none')).toBeUndefined();
    expect(genericOrigin).toMatch(/common practice, no source/i);
  });

  test.each(genericMachines.map((row) => [row.id, row] as const))('%s holds together', (_, row) => {
    expect(machineSchema.safeParse(recordOf(row)).success).toBe(true);
    for (const [key, text] of Object.entries(row.figures)) {
      expect(machineFigure(row.type, key), key).toBeDefined();
      // A unit stands behind every length, so that the row means the same in a build of inches.
      if (machineFigure(row.type, key)?.measures === 'length') expect(text).toMatch(/ mm$/);
    }
    const { problems, doubts, values } = readFigures(recordOf(row), 'in');
    expect({ problems, doubts }).toEqual({ problems: [], doubts: [] });
    expect(values.size).toBe(Object.keys(row.figures).length);
    expect([...values]).toEqual([...valuesOf(row)]);
  });

  test.each(lathes)(
    '%s: what stands on the spindle turns over the bed, and the saddle bears its cross slide',
    (_, has) => {
      const figure = (key: string): number => has.get(key) ?? Number.NaN;
      expect(figure('threeJawDiameter') + 2 * figure('jawReach')).toBeLessThan(figure('swingOverBed'));
      expect(figure('fourJawDiameter') + 2 * figure('jawReach')).toBeLessThan(figure('swingOverBed'));
      expect(figure('facePlateDiameter')).toBeLessThan(figure('swingOverBed'));
      expect(figure('crossSlideWidth')).toBeLessThan(figure('saddleHead') + figure('saddleTail'));
      expect(figure('toolBlockWidth')).toBeLessThanOrEqual(figure('crossSlideWidth'));
      expect(figure('spindleBore')).toBeLessThan(figure('barrelDiameter'));
      expect(figure('toolHeight')).toBeLessThan(figure('swingOverCrossSlide') / 2);
    },
  );

  test('a larger lathe is larger in everything but its speeds', () => {
    for (const { key } of machineFigures.lathe) {
      const row = lathes.map(([, has]) => has.get(key)).filter((value) => value !== undefined);
      const sorted = [...row].sort((a, b) => a - b);
      expect(row, key).toEqual(/Rpm$/.test(key) ? sorted.reverse() : sorted);
    }
  });

  test('each crucible goes into the furnace of its size and holds less than its outside', () => {
    const of = (type: GenericMachine['type']) => genericMachines.filter((row) => row.type === type).map(valuesOf);
    const furnaces = of('furnace');
    for (const [i, crucible] of of('crucible').entries()) {
      const [outside, height] = [crucible.get('outside')!, crucible.get('height')!];
      expect(outside).toBeLessThan(furnaces[i]!.get('bore')!);
      expect(height).toBeLessThan(furnaces[i]!.get('depth')!);
      expect(crucible.get('capacity')!).toBeLessThan((Math.PI / 4) * outside ** 2 * height * 1e-6);
    }
  });
});
