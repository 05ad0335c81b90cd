import { describe, expect, test } from 'vitest';
import type { MachineId } from '../../../../shared/base/ids.ts';
import { defaultMachine, type Machine } from '../../../../shared/build/machine.ts';
import { differences, markOf } from './shop-marks.ts';

const lathe: Machine = {
  ...defaultMachine('machine:a' as MachineId, 'Lathe', 'lathe', 3),
  figures: { swingOverBed: '180 mm', power: '0.37 kW' },
};

describe('a machine of the build against the shop', () => {
  test('is the same wherever it stands in the list', () => {
    expect(markOf(lathe, { machines: [{ ...lathe, order: 9 }] })).toBe('same');
  });

  test('differs by a figure, on either side, and says which', () => {
    const own: Machine = { ...lathe, figures: { swingOverBed: '190 mm', barrelTravel: '40 mm', power: '0.37 kW' } };
    expect(markOf(lathe, { machines: [own] })).toBe('differs');
    expect(differences(lathe, own)).toEqual([
      { label: 'Swing over bed', here: '180 mm', there: '190 mm' },
      { label: 'Tailstock barrel travel', here: '', there: '40 mm' },
    ]);
  });

  test('differs by its bed, its name and by being generic', () => {
    const own: Machine = { ...lathe, name: 'Old lathe', bed: [{ across: '-50', down: '90' }], generic: true };
    expect(differences(lathe, own).map(({ label }) => label)).toEqual(['Name', 'Bed', 'Generic']);
  });

  test('may be in the build alone, and is not judged before the shop is read', () => {
    expect(markOf(lathe, { machines: [] })).toBe('not in shop');
    expect(markOf(lathe, { machines: undefined })).toBe('unread');
  });
});
