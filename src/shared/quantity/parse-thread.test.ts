import { expect, test } from 'vitest';
import { parseThread } from './parse-thread.ts';

const read = (text: string) => {
  const thread = parseThread(text);
  if (thread === undefined) return 'no thread';
  return thread.ok ? thread.value : thread.error.code;
};

test.each<[string, number, number, string, string | undefined]>([
  ['M8', 8, 1.25, 'metric', undefined],
  ['m8', 8, 1.25, 'metric', undefined],
  ['M 8', 8, 1.25, 'metric', undefined],
  ['M8x1', 8, 1, 'metric', undefined],
  ['M8 × 1,25', 8, 1.25, 'metric', undefined],
  ['M13x1.5', 13, 1.5, 'metric', undefined],
  ['M8x1.25-6H', 8, 1.25, 'metric', undefined],
  ['M3.5', 3.5, 0.6, 'metric', undefined],
  ['Tr 20x4', 20, 4, 'trapezoidal', undefined],
  ['Tr20x8P4', 20, 4, 'trapezoidal', undefined],
  ['1/4-20', 6.35, 1.27, 'unified', 'UNC'],
  ['1/4"-20', 6.35, 1.27, 'unified', 'UNC'],
  ['1/4-20 UNC', 6.35, 1.27, 'unified', 'UNC'],
  ['1/4 in - 28 UNF', 6.35, 25.4 / 28, 'unified', 'UNF'],
  ['1/4 UNF', 6.35, 25.4 / 28, 'unified', 'UNF'],
  ['0.25-20', 6.35, 1.27, 'unified', 'UNC'],
  ['1-1/8-7', 28.575, 25.4 / 7, 'unified', 'UNC'],
  ['1 1/8-7 UNC', 28.575, 25.4 / 7, 'unified', 'UNC'],
  ['1-8', 25.4, 3.175, 'unified', 'UNC'],
  ['#10-32', 4.826, 25.4 / 32, 'unified', 'UNF'],
  ['No 10-32', 4.826, 25.4 / 32, 'unified', 'UNF'],
  ['No. 10-32 UNF-2A', 4.826, 25.4 / 32, 'unified', 'UNF'],
  ['10-32', 4.826, 25.4 / 32, 'unified', 'UNF'],
  ['1-64', 1.8542, 25.4 / 64, 'unified', 'UNC'],
  ['1/4-32', 6.35, 25.4 / 32, 'unified', undefined],
  ['3/8-16 BSW', 9.525, 25.4 / 16, 'whitworth', 'BSW'],
])('%s', (text, majorMm, pitchMm, form, series) => {
  const thread = read(text);
  if (typeof thread === 'string') throw new Error(thread);
  expect(thread.majorMm).toBeCloseTo(majorMm, 10);
  expect(thread.pitchMm).toBeCloseTo(pitchMm, 10);
  expect([thread.form, thread.series]).toEqual([form, series]);
});

test('hand and system', () => {
  expect(read('M8 LH')).toMatchObject({ hand: 'left', system: 'mm' });
  expect(read('1/4-20 UNC-2A LH')).toMatchObject({ hand: 'left', system: 'in' });
  expect(read('M8')).toMatchObject({ hand: 'right' });
});

test.each([
  ['M13', 'thread-no-coarse'],
  ['M8x9', 'thread-pitch'],
  ['M8x0', 'thread-pitch'],
  ['M8 fine', 'thread-unreadable'],
  ['#', 'thread-unreadable'],
  ['#7-32', 'thread-number'],
  ['1/4-20 UNF', 'thread-series'],
  ['1/4', 'thread-without-pitch'],
  ['8', 'thread-without-pitch'],
  ['3-20', 'thread-number-or-inch'],
  ['1/0-20', 'thread-unreadable'],
  ['', 'no thread'],
  ['8 mm', 'no thread'],
  ['stud of column', 'no thread'],
])('%s: %s', (text, code) => {
  expect(read(text)).toBe(code);
});
