import { expect, test } from 'vitest';
import type { PartId, PatternId } from '../base/ids.ts';
import { defaultPattern, type Pattern } from '../build/pattern.ts';
import { checkDrying, dryingWords } from './drying-check.ts';

const pattern = (more: Partial<Pattern>): Pattern => ({
  ...defaultPattern('pattern:one' as PatternId, 'part:a' as PartId, 'one', 1),
  bare: '120 g',
  scaleStep: '0.1 g',
  ...more,
});
/** Weighings at so many hours after noon, in grams. */
const log = (...list: readonly (readonly [hours: number, grams: number])[]): Pattern['weighings'] =>
  list.map(([hours, grams]) => ({
    at: `2026-05-0${2 + Math.floor((12 + hours) / 24)}T${String((12 + hours) % 24).padStart(2, '0')}:00:00Z`,
    mass: `${grams} g`,
    where: 'over the stove',
  }));
const check = (more: Partial<Pattern>) => checkDrying(pattern(more), 'mm');

test('a coating that still loses water keeps the gate shut, and the curve says how much and until when', () => {
  // 200 g of coat, 80 g of water, a fifth of it left after each 8 h
  const mass = (hours: number) => 120 + 200 + 80 * Math.exp(-hours / 5);
  const found = check({ weighings: log(...[0, 3, 6, 9, 12].map((hours) => [hours, mass(hours)] as const)) });
  expect(found.drying?.state).toBe('losing');
  expect(found.gate).toBe('shut');
  expect(found.leaving?.value).toBeCloseTo(0.08 * Math.exp(-12 / 5), 4);
  expect(found.coating?.value).toBeCloseTo((mass(12) - 120) / 1000, 9);
  expect(found.dryAt).toMatch(/^2026-05-0[34]T\d\d:\d\d:00Z$/);
  expect(dryingWords(found)[0]).toContain('Still losing water');
});
test('constant twice running opens it', () => {
  const found = check({ weighings: log([0, 400], [8, 330], [12, 320.2], [15, 320.1], [18, 320.1]) });
  expect(found).toMatchObject({ gate: 'dry', leaving: undefined, dryAt: undefined });
  expect(dryingWords(found)).toEqual(['Dry: constant in mass over the last two intervals.']);
});
test('not proved dry, it can be taken upon oneself in words only', () => {
  const damp = log([0, 400], [3, 360], [6, 340]);
  expect(check({ weighings: damp, takenOn: '  ' }).gate).toBe('shut');
  const taken = check({ weighings: damp, takenOn: 'A trial on the old pattern.' });
  expect(taken.gate).toBe('taken on');
  expect(dryingWords(taken).at(-1)).toContain('A trial on the old pattern.');
});
test('plaster is warned of even when it weighs constant', () => {
  const found = check({ plaster: true, weighings: log([0, 330], [4, 320], [8, 320], [12, 320]) });
  expect(found.gate).toBe('dry');
  expect(dryingWords(found).some((words) => words.includes('bound water'))).toBe(true);
});
test('a kitchen scale cannot prove it; the words say which could', () => {
  const found = check({ scaleStep: '5 g', weighings: log([0, 330], [4, 320], [8, 320], [12, 320]) });
  expect(found.drying?.state).toBe('scale-too-coarse');
  expect(dryingWords(found).join(' ')).toContain('0.2 g');
});
test('a damp shed gives water back', () => {
  const found = check({ weighings: log([0, 330], [4, 320], [8, 322]) });
  expect(found.drying?.state).toBe('gaining');
  expect(found.gate).toBe('shut');
});
test('what is missing or cannot be read is named; weighings in any order count by their times', () => {
  const none = checkDrying(pattern({ bare: '', scaleStep: '', weighings: [] }), 'mm');
  expect(none.drying).toBeUndefined();
  expect(none.gate).toBe('shut');
  expect(none.unknown).toEqual([
    { is: 'field', field: 'bare' },
    { is: 'field', field: 'scaleStep' },
    { is: 'field', field: 'weighings' },
  ]);
  expect(dryingWords(none)[0]).toContain('the mass before coating and the smallest step of the scale and a weighing');
  const bad = check({ weighings: [{ at: '2026-05-02T12:00:00Z', mass: 'heavy', where: '' }] });
  expect(bad.unknown).toContainEqual({ is: 'written', field: 'weighings/0/mass', text: 'heavy' });
  const straight = log([0, 400], [3, 360], [6, 340], [9, 330]);
  expect(check({ weighings: [...straight].reverse() }).drying).toEqual(check({ weighings: straight }).drying);
});
test('lighter than bare is a mistake, not a dry coating', () => {
  const found = check({ bare: '500 g', weighings: log([0, 400], [4, 400], [8, 400]) });
  expect(found).toMatchObject({ lighterThanBare: true, gate: 'shut', drying: undefined });
});
