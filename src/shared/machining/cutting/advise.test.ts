import { describe, expect, test } from 'vitest';
import { edges, processes } from '../../build/operation.ts';
import { cuttingMetals } from '../../tables/cutting-metals.ts';
import { type AdviceWanted, adviseCut } from './advise.ts';

const wanted = (over: Partial<AdviceWanted> = {}): AdviceWanted => ({
  found: { metal: 'mild steel', by: 'name' },
  process: 'turn',
  edge: 'HSS',
  diameterMm: 40,
  pitchMm: undefined,
  finish: false,
  machine: { slowest: undefined, fastest: undefined },
  teeth: 4,
  depthMm: undefined,
  breadthMm: undefined,
  ...over,
});

test('for every metal, process and edge there is an answer, or none at all', () => {
  for (const metal of cuttingMetals) {
    for (const process of processes) {
      for (const edge of edges) {
        const advice = adviseCut(wanted({ found: { metal, by: 'name' }, process, edge, pitchMm: 1.25 }));
        const isHand = ['scrape', 'lap', 'file'].includes(process);
        const isUnsawn = process === 'saw' && ['magnesium', 'chilled iron'].includes(metal);
        expect(advice === undefined, `${process} ${metal}`).toBe(isHand || isUnsawn);
        if (!advice) continue;
        expect(advice.speed.value).toBeGreaterThan(0);
        if (process !== 'saw') expect(advice.rpm!.value).toBeGreaterThan(0);
        expect(advice.rpmTable === undefined).toBe(process === 'saw');
        if (advice.load) expect(advice.load.motorKw).toBeGreaterThan(advice.load.powerKw);
      }
    }
  }
});

describe('what the machine cannot', () => {
  test('is said once, and is no harm where it is only slow', () => {
    expect(adviseCut(wanted({ machine: { slowest: 50, fastest: 100 } }))!.warnings[0]).toContain('slower is no harm');
    expect(adviseCut(wanted({ machine: { slowest: 300, fastest: 900 } }))!.warnings[0]).not.toContain('faster than');
    expect(adviseCut(wanted({ machine: { slowest: 900, fastest: 2000 } }))!.warnings[0]).toContain('faster than');
    expect(adviseCut(wanted({ machine: { slowest: 50, fastest: 2000 } }))!.warnings).toEqual([]);
  });

  test('of a wheel only the fastest counts', () => {
    const wheel = (fastest: number | undefined) =>
      adviseCut(wanted({ process: 'grind', diameterMm: 150, machine: { slowest: undefined, fastest } }))!;
    expect(wheel(undefined).rpm!.value).toBeCloseTo((1000 * 5500 * 0.3048) / (Math.PI * 150), 8);
    expect(wheel(2800).rpm).toMatchObject({ value: 2800, from: 'machine' });
    expect(wheel(2800).speed.value).toBeCloseTo((Math.PI * 150 * 2800) / 1000, 8);
    expect(wheel(9000).rpm!.from).toBe('table');
    expect(adviseCut(wanted({ process: 'grind', diameterMm: undefined }))).toBeUndefined();
  });
});

test('a small cutter goes no deeper than half of its diameter unless told', () => {
  const mill = (over: Partial<AdviceWanted>) => adviseCut(wanted({ process: 'mill', ...over }))!.load!;
  expect(mill({ diameterMm: 1 }).depthMm).toBe(0.5);
  expect(mill({ diameterMm: 20 }).depthMm).toBeCloseTo(0.762, 12);
  expect(mill({ diameterMm: 20, depthMm: 3, breadthMm: 5 })).toMatchObject({ depthMm: 3, breadthMm: 5 });
});
