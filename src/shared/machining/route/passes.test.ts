import fc from 'fast-check';
import { expect, test } from 'vitest';
import { finishingDepth, roughingDepth } from '../../tables/cutting-feeds.ts';
import { cuttingMetals } from '../../tables/cutting-metals.ts';
import { cutsInPasses, type PassesWanted, planPasses } from './passes.ts';

const wanted = (over: Partial<PassesWanted> = {}): PassesWanted => ({
  process: 'turn',
  metal: 'mild steel',
  takesMm: 3,
  toSize: true,
  chosenMm: undefined,
  motorMm: undefined,
  cutterMm: undefined,
  ...over,
});
const plan = (over: Partial<PassesWanted> = {}) =>
  planPasses(wanted(over)).map(({ kind, count, depth }) => [
    kind,
    count,
    depth && Number(depth.value.toFixed(4)),
    depth?.from,
  ]);

test('roughing in equal cuts, and one light cut to size', () => {
  // 0.03 in = 0.762 mm at most: 2.7 mm in four cuts.
  expect(plan()).toEqual([
    ['rough', 4, 0.675, 'table'],
    ['finish', 1, 0.3, 'table'],
  ]);
  expect(plan({ toSize: false })).toEqual([['rough', 4, 0.75, 'table']]);
});

test('a little stock is one cut', () => {
  expect(plan({ takesMm: 0.2 })).toEqual([['finish', 1, 0.2, 'table']]);
  expect(plan({ takesMm: 0.3 })).toEqual([['finish', 1, 0.3, 'table']]);
  expect(plan({ takesMm: 0 })).toEqual([['only', 1, undefined, undefined]]);
});

test('a weak motor takes more cuts', () => {
  expect(plan({ motorMm: 0.4 })).toEqual([
    ['rough', 7, 0.3857, 'machine'],
    ['finish', 1, 0.3, 'table'],
  ]);
  expect(plan({ motorMm: 4 })).toEqual(plan());
});

test('a cutter goes in by half of its diameter at most', () => {
  expect(plan({ process: 'mill', cutterMm: 1 })[0]).toEqual(['rough', 6, 0.45, 'table']);
});

test('what is chosen holds', () => {
  expect(plan({ chosenMm: 1 })).toEqual([['only', 3, 1, 'chosen']]);
  expect(plan({ chosenMm: 1, takesMm: undefined })).toEqual([['only', undefined, 1, 'chosen']]);
});

test('without the stock the number of cuts is not known, only how deep one may be', () => {
  expect(plan({ takesMm: undefined })).toEqual([['only', undefined, 0.762, 'table']]);
  expect(plan({ takesMm: undefined, metal: undefined })).toEqual([['only', undefined, undefined, undefined]]);
  expect(plan({ metal: undefined })).toEqual([['only', undefined, undefined, undefined]]);
});

test('grinding takes hundredths', () => {
  expect(plan({ process: 'grind', takesMm: 0.1 })).toEqual([['only', 20, 0.005, 'table']]);
  expect(plan({ process: 'grind', takesMm: 0.1, chosenMm: 0.02 })).toEqual([['only', 5, 0.02, 'chosen']]);
  expect(plan({ process: 'grind', takesMm: undefined })).toEqual([['only', undefined, 0.005, 'table']]);
});

test('a drill goes in once', () => {
  for (const process of ['drill', 'ream', 'tap', 'countersink', 'counterbore', 'saw', 'file'] as const) {
    expect(cutsInPasses(process)).toBe(false);
    expect(plan({ process })).toEqual([['only', 1, undefined, undefined]]);
  }
});

test('all cuts together take the stock, none deeper than table and motor allow', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...cuttingMetals),
      fc.double({ min: 0.001, max: 30, noNaN: true }),
      fc.boolean(),
      fc.option(fc.double({ min: 0.05, max: 5, noNaN: true }), { nil: undefined }),
      (metal, takesMm, toSize, motorMm) => {
        const plans = planPasses(wanted({ metal, takesMm, toSize, motorMm }));
        const total = plans.reduce((sum, { count, depth }) => sum + count! * depth!.value, 0);
        expect(total).toBeCloseTo(takesMm, 9);
        for (const { kind, depth } of plans) {
          const most =
            kind === 'finish' ? finishingDepth.most : Math.min(roughingDepth(metal).most, motorMm ?? Infinity);
          expect(depth!.value).toBeLessThanOrEqual(most + 1e-9);
        }
      },
    ),
  );
});
