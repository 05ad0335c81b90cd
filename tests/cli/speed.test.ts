import { describe, expect, test } from 'vitest';
import { speedOutputSchema } from '../../src/main/cli/output/speed-output.ts';
import { cli } from './run-cli.ts';

const speedOf = async (...args: readonly string[]) => {
  const run = await cli(['speed', ...args, '--json']);
  expect(run).toMatchObject({ status: 0, stderr: '' });
  return speedOutputSchema.parse(JSON.parse(run.stdout));
};

describe('what it says', () => {
  // US Navy training manual 14345: mild steel 80 to 110 ft/min, drills of 1/4 to 1/2 in 0.004 to 0.007 in.
  test('turns, feed and power of a drill, each with its source', async () => {
    const output = await speedOf('mild steel', 'drill', '10');
    expect(output).toMatchObject({
      metal: 'mild steel',
      metalBy: 'table',
      process: 'drill',
      edge: 'HSS',
      diameterMm: 10,
    });
    expect(output.speed.table).toMatchObject({ status: 'read' });
    expect(output.speed.table?.least).toBeCloseTo(80 * 0.3048, 10);
    expect(output.rpm?.start.value).toBeCloseTo((1000 * 80 * 0.3048) / (Math.PI * 10), 8);
    expect(output.rpm?.table?.most).toBeCloseTo((1000 * 110 * 0.3048) / (Math.PI * 10), 8);
    expect(output.feed).toMatchObject({ per: 'turn', start: { from: 'table' } });
    expect(output.feed?.start.value).toBeCloseTo(0.0055 * 25.4, 10);
    expect(output.load?.motorKw).toBeCloseTo(output.load!.powerKw / output.load!.efficiency, 10);
  });

  test('a material and a diameter of several words, in inches or by the name of a drill', async () => {
    for (const args of [
      ['mild', 'steel', 'drill', '1/2', 'in'],
      ['mild steel', 'drill', '1/2"'],
      ['mild steel', 'drill', '0.5 in'],
    ]) {
      expect((await speedOf(...args)).diameterMm).toBeCloseTo(12.7, 12);
    }
    expect((await speedOf('brass', 'drill', 'No', '7')).diameterMm).toBeCloseTo(5.1054, 10);
  });

  test('a tap by its thread, fed by its pitch', async () => {
    const output = await speedOf('cast iron', 'tap', '1/4-20');
    expect(output.pitchMm).toBeCloseTo(1.27, 12);
    expect(output.feed?.start).toEqual({ value: output.pitchMm, from: 'thread' });
    expect(output.load).toBeUndefined();
  });

  test('the range of the machine holds, and says so', async () => {
    const slow = await speedOf('aluminium', 'turn', '20', '--rpm-range', '60-600');
    expect(slow.rpm).toMatchObject({ start: { value: 600, from: 'machine' } });
    expect(slow.rpm!.asked).toBeGreaterThan(600);
    expect(slow.warnings).toHaveLength(1);
    const fast = await speedOf('tool steel', 'drill', '30', '--rpm-range', '500-');
    expect(fast.rpm?.start.value).toBe(500);
    expect(fast.warnings[0]).toContain('faster than the table goes');
    expect((await speedOf('mild steel', 'turn', '40', '--rpm-range', '50-2000')).warnings).toEqual([]);
  });

  test('edge, finish, depth, breadth and teeth', async () => {
    const plain = await speedOf('mild steel', 'turn', '40');
    expect((await speedOf('mild steel', 'turn', '40', '--edge', 'carbide')).speed.start.value).toBe(90);
    expect((await speedOf('mild steel', 'turn', '40', '--edge', 'carbon-steel')).speed.start.value).toBeCloseTo(
      plain.speed.start.value / 2,
      10,
    );
    const fine = await speedOf('mild steel', 'turn', '40', '--finish');
    expect(fine.feed!.start.value).toBeLessThan(plain.feed!.start.value);
    expect(fine.speed.start.value).toBeGreaterThan(plain.speed.start.value);
    const deep = await speedOf('mild steel', 'turn', '40', '--depth', '2');
    expect(deep.load!.powerKw / plain.load!.powerKw).toBeCloseTo(2 / plain.load!.depthMm!, 10);
    const mill = await speedOf('mild steel', 'mill', '16', '--teeth', '2', '--breadth', '4');
    expect(mill.feed).toMatchObject({ per: 'tooth' });
    expect(mill.feed!.speedMmMin).toBeCloseTo(2 * mill.feed!.start.value * mill.rpm!.start.value, 8);
    expect(mill.load).toMatchObject({ breadthMm: 4 });
  });

  test('a saw by its band, a shaper by its strokes, a wheel by its rim', async () => {
    expect(await speedOf('mild steel', 'saw')).not.toHaveProperty('rpm');
    expect((await speedOf('mild steel', 'shape', '200')).feed?.per).toBe('stroke');
    // 5500 ft/min on 6 in, 3.82 V / D: 3502 rpm.
    expect((await speedOf('mild steel', 'grind', '6 in')).rpm!.start.value / 3502).toBeCloseTo(1, 3);
  });

  test('words in 80 columns, with the status of each row', async () => {
    for (const args of [
      ['hard grey iron', 'tap', 'M8'],
      ['stainless steel', 'mill', '12'],
      ['zinc alloy', 'shape', '200', '--rpm-range', '60-'],
      ['ductile iron', 'saw'],
      ['magnesium', 'grind', '150', '--rpm-range', '0-2000'],
    ]) {
      const run = await cli(['speed', ...args]);
      expect(run).toMatchObject({ status: 0, stderr: '' });
      for (const line of run.stdout.split('\n')) expect(line.length, line).toBeLessThanOrEqual(80);
      expect(run.stdout).toMatch(/Speed: .+(\(read\)|from memory|common practice)/s);
    }
  });

  test('a word of care where the metal asks for one', async () => {
    expect((await cli(['speed', 'magnesium', 'turn', '40'])).stdout).toContain('Its chips burn');
    expect((await speedOf('mild steel', 'turn', '40')).care).toBeUndefined();
  });
});

test.each([
  [['mild steel', 'drill'], 'The diameter is missing.'],
  [['mild steel', 'dril', '10'], 'Did you mean drill?'],
  [['mild steel', '10'], 'No process is named'],
  [['mild stel', 'drill', '10'], 'Did you mean mild steel?'],
  [['oak', 'drill', '10'], 'Nothing is known of how this is cut.'],
  [['mild steel', 'scrape', '10'], 'done by hand'],
  [['mild steel', 'drill', '0'], 'above nought'],
  [['mild steel', 'drill', '20 m'], 'larger than anything'],
  [['mild steel', 'drill', 'thick'], 'thick'],
  [['mild steel', 'drill', '10 kg'], '10 kg'],
  [['mild steel', 'tap', '8'], 'M8x1'],
  [['mild steel', 'tap', 'M13'], 'M13x1.5'],
  [['mild steel', 'saw', '10'], 'Leave it out'],
  [['magnesium', 'saw'], 'no speed for this'],
  [['mild steel', 'turn', '40', '--edge', 'diamond'], 'HSS, carbide or carbon-steel'],
  [['mild steel', 'turn', '40', '--rpm-range', 'fast'], 'no range of turns'],
  [['mild steel', 'turn', '40', '--rpm-range', '900-100'], 'slowest first'],
  [['mild steel', 'turn', '40', '--rpm-range=-'], 'no range of turns'],
  [['mild steel', 'turn', '40', '--depth', '0'], '--depth 0'],
  [['mild steel', 'mill', '12', '--teeth', '0'], 'number of teeth'],
])('%j is refused: %s', async (args, words) => {
  const run = await cli(['speed', ...args]);
  expect(run).toMatchObject({ status: 2, stdout: '' });
  expect(run.stderr).toContain(words);
});
