import fc from 'fast-check';
import { expect, test } from 'vitest';
import { hoursOfMoment, momentOfHours } from './moment.ts';

test.each([
  ['1970-01-01T00:00:00Z', 0],
  ['1970-01-02T01:30:00Z', 25.5],
  ['2000-02-29T12:00Z', Date.UTC(2000, 1, 29, 12) / 3.6e6],
  ['2026-05-02T09:30:00.500Z', Date.UTC(2026, 4, 2, 9, 30, 0, 500) / 3.6e6],
])('%s', (text, hours) => {
  expect(hoursOfMoment(text)).toBeCloseTo(hours, 9);
});

test('what is no moment', () => {
  for (const text of [
    '',
    'yesterday',
    '2026-05-02',
    '2026-05-02T09:30:00',
    '2026-13-02T09:30:00Z',
    '2026-05-02T24:00:00Z',
  ]) {
    expect(hoursOfMoment(text)).toBeUndefined();
  }
});

test('every minute of thousands of years is the one that the platform’s own calendar says', () => {
  const minute = fc.integer({ min: -1_000_000_000, max: 2_000_000_000 });
  fc.assert(
    fc.property(minute, (minutes) => {
      const text = new Date(minutes * 60_000).toISOString().replace('.000', '');
      expect(momentOfHours(minutes / 60)).toBe(text);
      expect(hoursOfMoment(text)).toBeCloseTo(minutes / 60, 6);
    }),
  );
});
