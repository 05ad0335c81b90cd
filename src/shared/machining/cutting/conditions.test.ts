import { describe, expect, test } from 'vitest';
import { cuttingMetals } from '../../tables/cutting-metals.ts';
import { cuttingSpeed } from '../../tables/cutting-speeds.ts';
import { type CutWanted, jobOf, proposeCut } from './conditions.ts';
import { deepestCut, type LoadedCut, loadOf, pointAngle } from './cut-load.ts';
import { spindleSpeed, surfaceSpeed } from './spindle-speed.ts';

const free = { slowest: undefined, fastest: undefined };
const wanted = (over: Partial<CutWanted> = {}): CutWanted => ({
  metal: 'mild steel',
  process: 'turn',
  edge: 'HSS',
  diameterMm: 40,
  finish: false,
  machine: free,
  chosen: {},
  ...over,
});

describe('speed', () => {
  test('roughing begins at the low end of the table, a cut to size in its middle', () => {
    const row = cuttingSpeed('mild steel', 'turn', 'HSS')!;
    expect(proposeCut(wanted()).speed).toEqual({ value: row.least, from: 'table', row });
    expect(proposeCut(wanted({ finish: true })).speed?.value).toBeCloseTo((row.least + row.most) / 2, 12);
    expect(proposeCut(wanted()).rpm).toEqual({ value: spindleSpeed(row.least, 40), from: 'table', row: undefined });
  });

  test('what is chosen holds: turns against speed, speed against the table', () => {
    const { speed, rpm } = proposeCut(wanted({ chosen: { speed: 50 } }));
    expect(speed).toMatchObject({ value: 50, from: 'chosen' });
    expect(rpm).toMatchObject({ value: spindleSpeed(50, 40), from: 'chosen' });
    const both = proposeCut(wanted({ chosen: { rpm: 900, speed: 50 } }));
    expect(both.rpm?.value).toBe(900);
    expect(both.speed?.value).toBeCloseTo(surfaceSpeed(900, 40), 12);
  });

  test('the machine has the last word, and the speed is what comes of it', () => {
    for (const [machine, rpm] of [
      [{ slowest: 300, fastest: 2000 }, 300],
      [{ slowest: undefined, fastest: 100 }, 100],
      [{ slowest: 50, fastest: undefined }, undefined],
    ] as const) {
      const found = proposeCut(wanted({ machine }));
      expect(found.rpm?.from).toBe(rpm === undefined ? 'table' : 'machine');
      if (rpm !== undefined) expect(found.rpm?.value).toBe(rpm);
      expect(found.speed?.value).toBeCloseTo(surfaceSpeed(found.rpm!.value, 40), 10);
      expect(found.asked).toBeCloseTo(proposeCut(wanted()).asked!, 12);
    }
  });

  test('turns that are chosen are not changed, however fast', () => {
    const { rpm } = proposeCut(wanted({ chosen: { rpm: 9000 }, machine: { slowest: 50, fastest: 2000 } }));
    expect(rpm).toMatchObject({ value: 9000, from: 'chosen' });
  });

  test('what is not known is not guessed', () => {
    expect(proposeCut(wanted({ metal: undefined }))).toEqual({
      speed: undefined,
      rpm: undefined,
      feed: undefined,
      asked: undefined,
    });
    const unsized = proposeCut(wanted({ diameterMm: undefined }));
    expect(unsized.speed?.from).toBe('table');
    expect(unsized.rpm).toBeUndefined();
    expect(proposeCut(wanted({ metal: undefined, chosen: { speed: 30 } })).rpm?.value).toBeCloseTo(
      spindleSpeed(30, 40),
      12,
    );
  });

  test('of a saw the band runs within what the machine has', () => {
    const saw = (machine: CutWanted['machine']) => proposeCut(wanted({ process: 'saw', machine }));
    expect(saw(free)).toMatchObject({ speed: { from: 'table' }, rpm: undefined });
    expect(saw({ slowest: 35, fastest: 70 }).speed).toMatchObject({ value: 35, from: 'machine' });
  });

  test('of a shaper whose stroke is not known, chosen strokes leave the speed untold', () => {
    const found = proposeCut(wanted({ process: 'shape', diameterMm: undefined, chosen: { rpm: 40 } }));
    expect(found.rpm?.value).toBe(40);
    expect(found.speed).toBeUndefined();
    expect(proposeCut(wanted({ process: 'shape', diameterMm: undefined })).speed?.from).toBe('table');
  });

  test('of a shaper strokes take the place of turns', () => {
    const { rpm, speed } = proposeCut(wanted({ process: 'shape', strokeMm: 200 }));
    // 27.432 m/min at 3/5 of the time: 27 432 · 0.6 / 200 strokes.
    expect(speed?.value).toBeCloseTo(27.432, 10);
    expect(rpm?.value).toBeCloseTo(82.296, 10);
    expect(proposeCut(wanted({ process: 'shape' })).rpm).toBeUndefined();
  });

  test('handwork has none', () => {
    for (const process of ['scrape', 'lap', 'file'] as const) {
      expect(jobOf(process)).toBeUndefined();
      expect(proposeCut(wanted({ process })).speed).toBeUndefined();
    }
  });
});

describe('feed', () => {
  const feedOf = (over: Partial<CutWanted>) => proposeCut(wanted(over)).feed;

  test('a tap is led by its thread, whatever is chosen', () => {
    expect(feedOf({ process: 'tap', pitchMm: 1.25, chosen: { feed: 0.3 } })).toEqual({
      value: 1.25,
      from: 'thread',
      row: undefined,
    });
    expect(feedOf({ process: 'tap' })).toBeUndefined();
  });

  test('a drill takes the middle of its row, in hard metals the low end', () => {
    const soft = feedOf({ process: 'drill', metal: 'brass', diameterMm: 10 })!;
    expect(soft.value).toBeCloseTo((soft.row!.least + soft.row!.most) / 2, 12);
    const hard = feedOf({ process: 'drill', metal: 'tool steel', diameterMm: 10 })!;
    expect(hard.value).toBe(hard.row!.least);
  });

  test('a deep hole takes off speed and feed', () => {
    const at = (diameters: number) => proposeCut(wanted({ process: 'drill', diameterMm: 10, holeMm: 10 * diameters }));
    const shallow = at(2);
    for (const [diameters, speed, feed] of [
      [3, 0.9, 0.9],
      [4.5, 0.8, 0.9],
      [5, 0.7, 0.8],
      [12, 0.6, 0.8],
    ] as const) {
      expect(at(diameters).speed!.value / shallow.speed!.value).toBeCloseTo(speed, 12);
      expect(at(diameters).feed!.value / shallow.feed!.value).toBeCloseTo(feed, 12);
    }
  });

  test('a wheel is fed by its width', () => {
    const feed = feedOf({ process: 'grind', wheelMm: 20 })!;
    expect([feed.row!.least, feed.row!.most]).toEqual([8, 18]);
    expect(feedOf({ process: 'grind' })).toBeUndefined();
  });

  test('chosen', () => {
    expect(feedOf({ chosen: { feed: 0.05 } })).toMatchObject({ value: 0.05, from: 'chosen' });
  });
});

describe('load', () => {
  const cut = (over: Partial<LoadedCut> = {}): LoadedCut => ({
    metal: 'mild steel',
    process: 'turn',
    speed: 30,
    rpm: 240,
    feed: 0.2,
    depthMm: 1,
    diameterMm: 40,
    fromMm: 0,
    breadthMm: undefined,
    teeth: 1,
    angleDeg: undefined,
    ...over,
  });

  test('grows with depth, speed and feed; the motor gives more than the edge takes', () => {
    const one = loadOf(cut())!;
    expect(loadOf(cut({ depthMm: 2 }))!.powerKw).toBeCloseTo(2 * one.powerKw, 12);
    expect(loadOf(cut({ speed: 60 }))!.powerKw).toBeCloseTo(2 * one.powerKw, 12);
    expect(loadOf(cut({ feed: 0.4 }))!.powerKw).toBeLessThan(2 * one.powerKw);
    expect(one.motorKw).toBeCloseTo(one.powerKw / 0.7, 12);
    // Torque at the spindle is the force at the radius: 240 rpm on 40 mm are 30.16 m/min.
    expect(loadOf(cut({ speed: surfaceSpeed(240, 40) }))!.torqueNm!).toBeCloseTo((one.forceN! * 20) / 1000, 8);
  });

  test('the deepest cut takes all of the motor', () => {
    const deepest = deepestCut(cut(), 0.37)!;
    expect(loadOf(cut({ depthMm: deepest }))!.motorKw).toBeCloseTo(0.37, 12);
    expect(deepestCut(cut({ metal: 'magnesium' }), 0.37)).toBeUndefined();
  });

  test('a drill in a hole that is there takes less; one that fits through it nothing', () => {
    const drill = (fromMm: number) => loadOf(cut({ process: 'drill', diameterMm: 12, depthMm: undefined, fromMm }));
    expect(drill(6)!.powerKw / drill(0)!.powerKw).toBeCloseTo(0.75, 12);
    expect(drill(12)).toBeUndefined();
  });

  test('a cutter takes no more than its own diameter of a breadth', () => {
    const mill = (breadthMm: number) =>
      loadOf(cut({ process: 'mill', diameterMm: 20, breadthMm, teeth: 4, feed: 0.05 }))!;
    expect(mill(60).powerKw).toBe(mill(20).powerKw);
    expect(mill(10).powerKw).toBeLessThan(mill(20).powerKw);
  });

  test('a shaper turns nothing', () => {
    expect(loadOf(cut({ process: 'shape' }))!.torqueNm).toBeUndefined();
  });

  test('no formula, no figure', () => {
    for (const process of ['ream', 'tap', 'countersink', 'grind', 'saw', 'file'] as const) {
      expect(loadOf(cut({ process }))).toBeUndefined();
    }
    expect(loadOf(cut({ depthMm: undefined }))).toBeUndefined();
    expect(loadOf(cut({ process: 'mill' }))).toBeUndefined();
  });

  test('an angle above 90 is that of the whole point', () => {
    expect([undefined, 59, 60, 90, 118, 135, 360].map(pointAngle)).toEqual([118, 118, 120, 180, 118, 135, 179]);
  });
});

test('a slower edge, a harder metal and a wider cut never ask for more turns', () => {
  for (const metal of cuttingMetals) {
    const rpm = (over: Partial<CutWanted>) => proposeCut(wanted({ metal, ...over })).rpm!.value;
    expect(rpm({ edge: 'carbon steel' }), metal).toBeLessThanOrEqual(rpm({}));
    expect(rpm({ diameterMm: 80 }), metal).toBeLessThan(rpm({}));
    expect(rpm({ process: 'tap' }), metal).toBeLessThanOrEqual(rpm({ process: 'drill' }));
  }
});
