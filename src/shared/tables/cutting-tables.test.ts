import { describe, expect, test } from 'vitest';
import { drillFeed, finishingDepth, reamFeed, roughingDepth, toothFeed, turningFeed } from './cutting-feeds.ts';
import { specificForce } from './cutting-force.ts';
import { cuttingMetals } from './cutting-metals.ts';
import { deepHoles, reamStock } from './cutting-practice.ts';
import type { FigureRange } from './cutting-row.ts';
import { cuttingJobs, cuttingSpeed, grinding, sawingRate } from './cutting-speeds.ts';

const expectRange = (row: FigureRange | undefined, what: string): void => {
  if (row === undefined) return;
  expect(row.least, what).toBeGreaterThan(0);
  expect(row.most, what).toBeGreaterThanOrEqual(row.least);
  expect(row.source.length, what).toBeGreaterThan(5);
  if (row.status === 'from memory') expect(row.source, what).toContain('from memory');
};

describe('speeds', () => {
  test('every metal has one for every job that edges do, and says where it comes from', () => {
    for (const metal of cuttingMetals) {
      for (const job of cuttingJobs) {
        const row = cuttingSpeed(metal, job, 'HSS');
        if (job !== 'saw') expect(row, `${job} ${metal}`).toBeDefined();
        expectRange(row, `${job} ${metal}`);
      }
      expectRange(sawingRate(metal), metal);
    }
    for (const row of Object.values(grinding)) expectRange(row, row.source);
  });

  test('a better edge is never slower', () => {
    for (const metal of cuttingMetals) {
      for (const job of cuttingJobs) {
        const [carbon, hss, carbide] = (['carbon steel', 'HSS', 'carbide'] as const).map((edge) =>
          cuttingSpeed(metal, job, edge),
        );
        if (!carbon || !hss || !carbide) continue;
        expect(carbon.least, `${job} ${metal}`).toBeLessThanOrEqual(hss.least);
        expect(hss.most, `${job} ${metal}`).toBeLessThanOrEqual(carbide.most);
      }
    }
  });

  test('a figure made from another keeps the name of both, and is only as good as the weaker', () => {
    const tapped = cuttingSpeed('zinc alloy', 'tap', 'HSS')!;
    expect(tapped.source).toContain('drill maker');
    expect(tapped.source).toContain('third');
    expect(tapped.status).toBe('common practice');
    expect(cuttingSpeed('mild steel', 'drill', 'carbide')).toMatchObject({ status: 'read' });
    expect(cuttingSpeed('hard bronze', 'turn', 'carbide')).toMatchObject({ status: 'from memory' });
  });
});

describe('feeds and depths', () => {
  test('grow with the diameter', () => {
    const sizes = [1, 3, 3.175, 6, 6.35, 10, 12.7, 20, 25.4, 40];
    for (const of of [drillFeed, reamFeed, (d: number) => toothFeed('mild steel', d)]) {
      const feeds = sizes.map((size) => of(size).least);
      expect(feeds).toEqual([...feeds].sort((a, b) => a - b));
    }
  });

  test('a bound belongs to the smaller drills', () => {
    expect(drillFeed(25.4 / 8).most).toBeCloseTo(0.002 * 25.4, 12);
    expect(drillFeed(25.4 / 8 + 0.01).most).toBeCloseTo(0.004 * 25.4, 12);
  });

  test('a finishing feed is finer, a finishing cut shallower', () => {
    for (const metal of cuttingMetals) {
      for (const finish of [true, false]) expectRange(turningFeed(metal, finish), metal);
      expect(turningFeed(metal, true).least, metal).toBeLessThan(turningFeed(metal, false).least);
      expect(finishingDepth.most, metal).toBeLessThan(roughingDepth(metal).least);
      expectRange(toothFeed(metal, 10), metal);
    }
  });

  test('between two cutters of the table the feed lies on the line, below them in proportion', () => {
    const quarter = toothFeed('cast aluminium', 6.35).least;
    const one = toothFeed('cast aluminium', 25.4).least;
    expect(quarter).toBeCloseTo(0.003 * 25.4, 12);
    expect(one).toBeCloseTo(0.009 * 25.4, 12);
    expect(toothFeed('cast aluminium', (6.35 + 25.4) / 2).least).toBeCloseTo((quarter + one) / 2, 12);
    expect(toothFeed('cast aluminium', 3.175).least).toBeCloseTo(quarter / 2, 12);
    expect(toothFeed('cast aluminium', 80).least).toBeCloseTo(one, 12);
  });
});

test('forces lie where those of metals lie, each with its source', () => {
  for (const metal of cuttingMetals) {
    const force = specificForce(metal);
    if (!force) continue;
    expect(force.source, metal).not.toBe('');
    const kc = force.is === 'kienzle' ? force.kc11 : force.kc;
    expect(kc, metal).toBeGreaterThanOrEqual(700);
    expect(kc, metal).toBeLessThanOrEqual(3000);
    if (force.is === 'kienzle') expect(force.mc, metal).toBeLessThan(0.35);
  }
});

test('deeper holes are drilled slower, larger ones reamed with more', () => {
  for (let i = 1; i < deepHoles.length; i++) {
    expect(deepHoles[i]!.diameters).toBeGreaterThan(deepHoles[i - 1]!.diameters);
    expect(deepHoles[i]!.speed).toBeLessThan(deepHoles[i - 1]!.speed);
    expect(reamStock[i]!.least).toBeGreaterThanOrEqual(reamStock[i - 1]!.least);
  }
});
