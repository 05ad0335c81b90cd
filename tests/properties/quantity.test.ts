import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parseWritten } from '../../src/shared/formula/parse-written.ts';
import { formatLimits, formatQuantity, nearestFraction, usualDecimals } from '../../src/shared/quantity/format.ts';
import type { Kind, LengthUnit } from '../../src/shared/quantity/kind.ts';
import { parseLimits } from '../../src/shared/quantity/parse-limits.ts';
import { parseThread } from '../../src/shared/quantity/parse-thread.ts';

const kind = fc.constantFrom<Kind>('length', 'angle', 'mass', 'temperature', 'number');
const unit = fc.constantFrom<LengthUnit>('mm', 'in');
const value = fc.double({ min: -1e9, max: 1e9, noNaN: true });

const read = (text: string, of: Kind, lengthUnit: LengthUnit) => {
  const written = parseWritten(text, { kind: of, lengthUnit });
  if (!written.ok) throw new Error(`${text}: ${written.error.code}`);
  if (written.value.is !== 'quantity') throw new Error(`${text}: ${written.value.is}`);
  return written.value;
};

test('what is shown is read back, to half of the last decimal', () => {
  fc.assert(
    fc.property(value, kind, unit, fc.boolean(), (of, aKind, aUnit, bare) => {
      const text = formatQuantity(of, aKind, { unit: aUnit, bare });
      const decimals = usualDecimals(aKind, aUnit);
      const step = 10 ** -decimals * (aKind === 'length' && aUnit === 'in' ? 25.4 : 1);
      expect(Math.abs(read(text, aKind, aUnit).value - of)).toBeLessThanOrEqual(
        step * 0.5000001 + Math.abs(of) * 1e-15,
      );
    }),
  );
});

test('nothing shown has an exponent, a negative zero, a needless zero or NaN', () => {
  fc.assert(
    fc.property(fc.double(), kind, unit, fc.nat(12), (of, aKind, aUnit, decimals) => {
      const text = formatQuantity(of, aKind, { unit: aUnit, decimals, bare: true });
      expect(text).toMatch(/^(—|-?\d+(\.\d*[1-9])?)$/);
      expect(text).not.toBe('-0');
    }),
  );
});

test('the nearest fraction is read back exactly, and its residue closes the gap', () => {
  const length = fc.double({ min: -1e4, max: 1e4, noNaN: true });
  fc.assert(
    fc.property(length, fc.constantFrom(2, 4, 8, 16, 32, 64, 128), (mm, denominator) => {
      const fraction = nearestFraction(mm, denominator)!;
      expect(Math.abs(fraction.residueMm)).toBeLessThanOrEqual((12.7 / denominator) * 1.0000001);
      expect(read(fraction.text, 'length', 'mm').value + fraction.residueMm).toBeCloseTo(mm, 9);
    }),
  );
});

test('limits shown are read back', () => {
  fc.assert(
    fc.property(fc.integer({ min: -9999, max: 9999 }), fc.nat(9999), (low, width) => {
      const limits = { minus: low / 1000, plus: (low + width) / 1000 };
      const back = parseLimits(formatLimits(limits, 'length', { unit: 'mm' }), { kind: 'length', unit: 'in' });
      expect(back.ok && back.value?.minus).toBeCloseTo(limits.minus, 9);
      expect(back.ok && back.value?.plus).toBeCloseTo(limits.plus, 9);
    }),
  );
});

test('an inch written in any way is the same length', () => {
  fc.assert(
    fc.property(
      fc.nat(40),
      fc.integer({ min: 1, max: 63 }),
      fc.constantFrom('-', ' '),
      (whole, sixtyFourths, joint) => {
        const text = `${whole}${joint}${sixtyFourths}/64`;
        const mm = read(text, 'length', 'mm').value;
        expect(read(`${text}"`, 'length', 'mm').value).toBe(mm);
        expect(read(`${text} in`, 'length', 'in').value).toBe(mm);
        expect(read(String(whole + sixtyFourths / 64), 'length', 'in').value).toBe(mm);
        expect(mm).toBe(((64 * whole + sixtyFourths) * 127) / 320);
      },
    ),
  );
});

const scraps = fc.constantFrom(
  '±',
  '+',
  '-',
  '/',
  '0',
  '1',
  '.5',
  ',',
  '3/8',
  '"',
  "'",
  '°',
  ' ',
  'mm',
  'in',
  'M',
  'x',
  '#',
  'UNC',
  'H7',
  '½',
  '(',
  'deg',
  '−',
  'e9',
);
const scrap = fc.oneof(
  fc.string({ unit: 'binary' }),
  fc.array(scraps, { maxLength: 12 }).map((parts) => parts.join('')),
);

test('no text makes the readers of limits and threads fail otherwise than by a problem in its place', () => {
  fc.assert(
    fc.property(scrap, kind, unit, (text, aKind, aUnit) => {
      const limits = parseLimits(text, { kind: aKind, unit: aUnit });
      if (limits.ok && limits.value) {
        expect(limits.value.minus).toBeLessThanOrEqual(limits.value.plus);
        expect(Number.isFinite(limits.value.minus) && Number.isFinite(limits.value.plus)).toBe(true);
      }
      if (!limits.ok) expectPlace(limits.error, text);
      const thread = parseThread(text);
      if (thread?.ok) expect(thread.value.pitchMm).toBeLessThan(thread.value.majorMm);
      else if (thread) expectPlace(thread.error, text);
    }),
    { numRuns: 3000 },
  );
});

function expectPlace({ start, end }: { readonly start: number; readonly end: number }, text: string): void {
  expect(start).toBeGreaterThanOrEqual(0);
  expect(end).toBeGreaterThanOrEqual(start);
  expect(end).toBeLessThanOrEqual(text.length);
}
