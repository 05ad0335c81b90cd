import { describe, expect, test } from 'vitest';
import { holeOutputSchema } from '../../src/main/cli/output/hole-output.ts';
import { threadOutputSchema } from '../../src/main/cli/output/thread-output.ts';
import { knownThreads } from '../../src/shared/tables/threads-known.ts';
import { cli } from './run-cli.ts';

const expectNarrow = (text: string): void => {
  for (const line of text.split('\n')) expect(line.length, line).toBeLessThanOrEqual(80);
};

const threadOf = async (...args: readonly string[]) => {
  const run = await cli(['thread', ...args, '--json']);
  expect(run).toMatchObject({ status: 0, stderr: '' });
  return threadOutputSchema.parse(JSON.parse(run.stdout));
};

const holeOf = async (...args: readonly string[]) => {
  const run = await cli(['hole', ...args, '--json']);
  expect(run).toMatchObject({ status: 0, stderr: '' });
  return holeOutputSchema.parse(JSON.parse(run.stdout));
};

describe('thread', () => {
  test('a coarse metric thread: sizes, tap drill, clearance, each with source and status', async () => {
    const output = await threadOf('M8');
    expect(output).toMatchObject({
      form: 'metric',
      series: 'coarse',
      listed: { name: 'M8', source: 'ISO 261', status: 'read' },
      majorMm: 8,
      pitchMm: 1.25,
      tapHole: {
        diameterMm: 6.75,
        rule: 'major less pitch',
        table: { drill: '6.8 mm', diameterMm: 6.8, status: 'read' },
      },
    });
    expect(output.basic.stressAreaMm2).toBeCloseTo(36.61, 2);
    expect(output.tapHole.percent).toBeCloseTo(76.98, 2);
    expect(output.clearance.map(({ fit, diameterMm }) => [fit, diameterMm])).toEqual([
      ['fine', 8.4],
      ['medium', 9],
      ['coarse', 10],
    ]);
  });

  test('drills run from thin to thick and leave less and less thread; those the tap jams in are marked', async () => {
    const { tapHole, basic } = await threadOf('1/4-20');
    const shares = tapHole.drills.map(({ percent }) => percent);
    expect(shares).toEqual([...shares].sort((a, b) => b - a));
    expect(tapHole.drills.filter(({ nearest }) => nearest).map(({ name }) => name)).toEqual([
      '5.1 mm',
      'No 7',
      '13/64 in',
    ]);
    for (const { belowMinor, diameterMm } of tapHole.drills) expect(belowMinor).toBe(diameterMm < basic.minorNutMm);
    expect(tapHole.drills.some(({ belowMinor }) => belowMinor)).toBe(true);
  });

  test('words in 80 columns, of every form, with the status of each row', async () => {
    for (const name of [
      'M8',
      'M24x2',
      '1/4-20 UNC',
      '#0-80',
      '1-1/2-12',
      'Tr 20x4 LH',
      '3/8-16 BSW',
      'M8x0.9',
      'M64',
    ]) {
      const run = await cli(['thread', name]);
      expect(run, name).toMatchObject({ status: 0, stderr: '' });
      expect(run.stdout).toContain('Hole to tap');
      expectNarrow(run.stdout);
    }
    const memory = await cli(['thread', '1-3/8-6']);
    expect(memory.stdout).toContain('Listed in ASME B1.1 (from memory).');
    expect((await cli(['thread', '#6-32'])).stdout).toContain('other tables: No 35');
    expect((await cli(['thread', 'Tr 20x4 LH'])).stdout).toContain('left hand');
  });

  test('several words are one name; a class behind it is no matter', async () => {
    const { written, ...quoted } = await threadOf('1/4-20 UNC-2B');
    const { written: parted, ...words } = await threadOf('1/4-20', 'UNC-2B');
    expect(words).toEqual(quoted);
    expect(parted).toBe(written);
  });

  test('--percent asks for another hole', async () => {
    const { tapHole } = await threadOf('M8', '--percent', '65');
    expect(tapHole).toMatchObject({ percent: 65, rule: 'percent of thread' });
    expect(tapHole.diameterMm).toBeCloseTo(8 - 0.65 * 1.299038 * 1.25, 5);
    expect(tapHole.drills.find(({ series, nearest }) => series === 'metric' && nearest)?.name).toBe('6.9 mm');
    for (const wrong of ['0', '101', 'half', '-5', '1e1', '']) {
      const run = await cli(['thread', 'M8', `--percent=${wrong}`]);
      expect(run, wrong).toMatchObject({ status: 2, stdout: '' });
      expect(run.stderr).toContain('Write it as 65.');
    }
  });

  test('a thread that no standard lists is worked out, with the nearest listed ones', async () => {
    const output = await threadOf('M8x0.9');
    expect(output.listed).toBeUndefined();
    expect(output.nearestListed).toEqual(['M8x1', 'M8x0.75', 'M8']);
    expect(output.tapHole.table).toBeUndefined();
    expect(output.tapHole.diameterMm).toBeCloseTo(7.1, 10);
  });

  test.each([
    ['M13', 'Nearest known: M12, M14, M11.'],
    ['M8 fine', 'Nearest known: M8, M8x1, M8x0.75.'],
    ['1/4', 'Nearest known: 1/4-20, 1/4-28.'],
    ['#7-32', 'Nearest known: #6-32, #8-32, #8-36.'],
    ['N8x1', 'Nearest known: M8x1.'],
    ['stud of column', 'Threads are written M8, M8x1, 1/4-20, #10-32.'],
    ['', 'Threads are written'],
    ['M'.repeat(500), 'No thread of this name is known.'],
  ])('%s is refused: %s', async (name, words) => {
    const run = await cli(['thread', name]);
    expect(run).toMatchObject({ status: 2, stdout: '' });
    expect(run.stderr).toContain(words);
  });

  test('every name that is offered is understood', async () => {
    for (const { name } of [
      knownThreads[0]!,
      knownThreads.at(-1)!,
      knownThreads.find(({ name }) => name === '#1-64')!,
    ]) {
      expect((await threadOf(name)).listed?.name).toBe(name);
    }
  });
});

describe('hole', () => {
  test('nearest drills of each series and how far off they are', async () => {
    const { diameterMm, series } = await holeOf('8.5');
    expect(diameterMm).toBe(8.5);
    expect(series.map(({ drills }) => drills.map(({ name }) => name))).toEqual([
      ['8.5 mm'],
      [],
      ['Q', 'R'],
      ['21/64 in', '11/32 in'],
    ]);
    for (const { drills } of series) {
      drills.forEach(({ diameterMm: drill, differenceMm, nearest }, i) => {
        expect(differenceMm).toBeCloseTo(drill - 8.5, 12);
        expect(nearest).toBe(i === 0);
      });
    }
  });

  test.each([
    ['21/64', 8.334375],
    ['21/64 in', 8.334375],
    ['0.332 in', 8.4328],
    ['8,5', 8.5],
    ['8.5 mm', 8.5],
    ['No 7', 5.1054],
    ['#7', 5.1054],
    ['letter F', 6.5278],
    ['z', 10.4902],
  ])('%s is a hole of %f mm', async (size, mm) => {
    expect((await holeOf(size)).diameterMm).toBeCloseTo(mm, 10);
  });

  test('words in 80 columns, in one word or several', async () => {
    for (const size of ['8.5', '0.05', '123.4567', '21/64', '1-63/64']) {
      const run = await cli(['hole', size]);
      expect(run).toMatchObject({ status: 0, stderr: '' });
      expectNarrow(run.stdout);
    }
    expect((await cli(['hole', 'No', '7'])).stdout).toBe((await cli(['hole', 'No 7'])).stdout);
    expect((await cli(['hole', '27'])).stdout).toContain('from memory');
  });

  test.each([
    [['No 81'], 'There is no drill No 81.'],
    [['0'], 'A hole is wider than nought.'],
    [['--', '-3'], 'A hole is wider than nought.'],
    [['1e9 mm'], '1e9 mm:'],
    [['20 m'], 'A hole this wide is not drilled.'],
    [['8.5 kg'], '8.5 kg:'],
    [['2 * 3 mm'], 'no diameter of a hole'],
    [['bore'], 'no diameter of a hole'],
    [[''], 'no diameter of a hole'],
    [['1/0'], '1/0:'],
  ])('%j is refused: %s', async (args, words) => {
    const run = await cli(['hole', ...args]);
    expect(run).toMatchObject({ status: 2, stdout: '' });
    expect(run.stderr).toContain(words);
  });
});
