import { describe, expect, test } from 'vitest';
import { type FigureName, figureText, figureWords, readFigure } from './figures.ts';

describe('figures of a material', () => {
  // Converted values: NIST Special Publication 811, appendix B (from memory): lb/in³ to kg/m³ 2.767 990 E+04, psi to Pa
  // 6.894 757 E+03; µin/(in·°F) is 1.8 times µm/(m·K), by the size of the degree.
  test.each<[FigureName, string, number | undefined]>([
    ['densityKgM3', '2.69', 2690],
    ['densityKgM3', ' 2,69 ', 2690],
    ['densityKgM3', '7200 kg/m³', 7200],
    ['densityKgM3', '7.2 g / cm3', 7200],
    ['densityKgM3', '0.1 lb/in³', 2767.99047102],
    ['densityKgM3', '', undefined],
    ['expansionPerK', '22.5', 0.0000225],
    ['expansionPerK', '−1.2', -0.0000012],
    ['expansionPerK', '12 µin/in·°F', 0.0000216],
    ['expansionPerK', '22.5e-6 /K', 0.0000225],
    ['expansionPerK', '23 × 10⁻⁶/K', 0.000023],
    ['modulusGPa', '72', 72],
    ['modulusGPa', '72000 MPa', 72],
    ['modulusGPa', '10 Msi', 68.9475729317],
  ])('%s "%s" is %s', (name, text, value) => {
    expect(readFigure(name, text)).toEqual({ ok: true, value });
  });

  test.each<[FigureName, string, RegExp]>([
    ['densityKgM3', 'heavy', /"heavy" is not a number\. Write the density as a number such as 2\.7, in g\/cm³\./],
    [
      'densityKgM3',
      '2.7 kg',
      /"kg" is no unit of density known here\. Write it in g\/cm³; kg\/m³ or lb\/in³ if written\./,
    ],
    ['densityKgM3', '2690', /2690 g\/cm³ is beyond any material .*write "2690 kg\/m³"/],
    ['densityKgM3', '-2.7', /beyond any material/],
    ['densityKgM3', '0', /beyond any material/],
    ['densityKgM3', '1e999', /beyond any material/],
    ['densityKgM3', '2,690', /.+/],
    ['expansionPerK', '0.5 /K', /beyond any material/],
    ['modulusGPa', '72 mm', /no unit of modulus/],
    ['modulusGPa', '-', /not a number/],
  ])('%s refuses "%s"', (name, text, sentence) => {
    const read = readFigure(name, text);
    expect(read.ok ? '' : read.sentence).toMatch(sentence);
  });

  test('are shown in the unit of their column and read back as they were', () => {
    const known = { densityKgM3: 2685.7, expansionPerK: 0.0000234, modulusGPa: 72.4 };
    expect(figureWords(known, 'densityKgM3')).toBe('2.6857 g/cm³');
    expect(figureWords(known, 'expansionPerK')).toBe('23.4 10⁻⁶/K');
    expect(figureWords({}, 'modulusGPa')).toBeUndefined();
    for (const name of Object.keys(known) as FigureName[])
      expect(readFigure(name, figureText(known, name) ?? '')).toEqual({ ok: true, value: known[name] });
  });
});
