import { expect, test } from 'vitest';
import { nameKey } from '../formula/name-key.ts';
import { type Material, materialNamed, materials } from './materials.ts';

test('a material is found by any of its names, in any case', () => {
  expect(materialNamed('en-gjl-250')).toMatchObject({ name: 'EN-GJL-250', densityKgM3: 7200, cuttingGroup: 'K' });
  expect(materialNamed(' GG25 ')?.name).toBe('EN-GJL-250');
  expect(materialNamed('mild steel')?.densityKgM3).toBe(7850);
  expect(materialNamed('')).toBeUndefined();
  expect(materialNamed('unobtainium')).toBeUndefined();
});

test('the build’s own rows come first, what they leave open stays open', () => {
  const own: readonly Material[] = [{ name: 'GG25', densityKgM3: 7150, source: 'weighed' }];
  expect(materialNamed('gg25', own)).toEqual({ name: 'GG25', densityKgM3: 7150, source: 'weighed' });
  expect(materialNamed('GG20', own)?.name).toBe('EN-GJL-200');
});

test('no name is given twice, and every row says where it comes from', () => {
  const names = materials.flatMap(({ name, also }) => [name, ...also].map(nameKey));
  expect(new Set(names).size).toBe(names.length);
  for (const { source, status } of materials) {
    expect(source).not.toBe('');
    expect(source.endsWith('(from memory)')).toBe(status === 'from memory');
  }
});

test('values lie where values of metals lie', () => {
  for (const { name, densityKgM3, expansionPerK, modulusGPa } of materials) {
    expect(densityKgM3, name).toBeGreaterThan(2500);
    expect(densityKgM3, name).toBeLessThan(9000);
    if (expansionPerK !== undefined) expect(expansionPerK, name).toBeGreaterThan(10e-6);
    if (expansionPerK !== undefined) expect(expansionPerK, name).toBeLessThan(28e-6);
    if (modulusGPa !== undefined) expect(modulusGPa, name).toBeGreaterThan(65);
  }
});

// Values read on published pages of material properties and a die caster's table (ZA-8, ZA-12, 319.0, 208.0).
test.each([
  ['ZA-8', 6300, 23.3e-6, 85.5],
  ['ZA-12', 6030, undefined, 82.7],
  ['319.0', 2900, 22e-6, 72],
  ['208.0', 2790, 22.3e-6, undefined],
])('%s as published', (name, densityKgM3, expansionPerK, modulusGPa) => {
  const found = materialNamed(name)!;
  expect(found.densityKgM3).toBe(densityKgM3);
  expect(found.modulusGPa).toBe(modulusGPa);
  if (expansionPerK === undefined) expect(found.expansionPerK).toBeUndefined();
  else expect(found.expansionPerK).toBeCloseTo(expansionPerK, 9);
});
