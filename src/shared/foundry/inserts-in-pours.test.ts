import { beforeAll, describe, expect, test } from 'vitest';
import { block, cylinder } from '../../../tests/support/placed-bodies.ts';
import { type PourSketch, pourBody, sketchPour, sprue } from '../../../tests/support/sketch-pour.ts';
import type { Insert, Pour } from '../build/pour.ts';
import type { Kernel } from '../solid/manifold/kernel.ts';
import { loadKernel } from '../solid/manifold/load-kernel.ts';
import { checkPour, type PourCheck } from './pour-check.ts';

let kernel: Kernel;
beforeAll(async () => {
  kernel = await loadKernel();
});

// A boss of 0.50 kg round an arbor of 25 × 60 mm: the case that is worked out by hand in tests/outside. A foot of 8 mm lies under it.
const bossRadius = Math.sqrt((0.5 / 2680e-9 / 60 + (Math.PI / 4) * 25 ** 2) / Math.PI);
const column = {
  name: 'column',
  bodies: [
    { shape: block([-60, 60], [-50, 50], [0, 8]) },
    { shape: block([-10, 10], [-30, 30], [0, 60]) },
    { shape: cylinder('X', [0, 90], [-30, 30], bossRadius) },
  ],
};
const boss = pourBody('column', 2);
const arbor = (record: Partial<Insert> = {}) => ({
  name: 'arbor',
  diameter: 25,
  length: 60,
  record: { around: boss, ...record },
});
const sketch = (pour: Partial<Pour> = {}, record: Partial<Insert> = {}, up: '+Z' | '-Z' = '-Z'): PourSketch => ({
  castings: [{ ...column, up }],
  inserts: [arbor(record)],
  pour: { temperature: '740', ambient: '20', gating: { ...sprue, spot: 'bottom' }, ...pour },
});
const check = (...given: Parameters<typeof sketch>): PourCheck => checkPour(sketchPour(kernel, sketch(...given)));
const cold = (found: PourCheck) => found.verdicts.find(({ code }) => code === 'insert-cold');

describe('an arbor that is cast in', () => {
  test('masses come from the solids: 0.231 kg of steel in 0.50 kg of metal', () => {
    const [insert] = check().inserts;
    expect(insert?.mass?.value).toBeCloseTo(0.2312, 4);
    expect(insert?.metal?.value).toBeCloseTo(0.5, 3);
    expect(insert?.ratio?.value).toBeCloseTo(0.462, 3);
    expect(insert?.heat).toMatchObject({ value: 0.56, status: 'derived' });
  });
  test('cold, it is some 8 % frozen by the hot steel’s capacity (worked out by hand), and 397 °C at first contact', () => {
    const [insert] = check().inserts;
    // superheat 61.2 kJ, arbor 76.8 kJ: 15.6 kJ short
    expect(insert?.margin?.value).toBeCloseTo(0.5 * 0.963 * 127 - 0.2312 * 0.56 * 593, 1);
    expect(insert?.solidFraction?.value).toBeGreaterThan(0.06);
    expect(insert?.solidFraction?.value).toBeLessThan(0.085);
    expect(insert?.contact?.value).toBeCloseTo(397, 0);
    expect(insert?.fuses).toBe(false);
  });
  test('boss first, then the thin foot: it stops, and turns to clear by preheat or by turning over', () => {
    const found = check();
    expect(found.inserts[0]).toMatchObject({ fed: 'after', turnOver: '+Z' });
    expect(cold(found)?.state).toBe('stop');
    const ways = cold(found)!.ways;
    expect(ways.map(({ is }) => is)).toEqual(['preheat', 'turn over', 'lighter insert']);
    const [preheat] = ways;
    if (preheat?.is !== 'preheat') throw new Error('no preheat');
    expect(cold(check({}, { preheat: `${preheat.toC} °C` }))?.state).toBe('clear');
    expect(cold(check({}, { preheat: `${preheat.toC - 10}` }))?.state).not.toBe('clear');
    const turned = check({}, {}, '+Z');
    expect(turned.inserts[0]?.fed).toBe('before');
    expect(cold(turned)?.state).toBe('clear');
    expect(turned.inserts[0]?.solidFraction?.value).toBeCloseTo(found.inserts[0]!.solidFraction!.value, 9);
  });
  test('a little preheated, hotter metal within the band clears it, and the band’s lower end is raised by it', () => {
    const warm = check({}, { preheat: '150' });
    expect(cold(warm)?.state).not.toBe('clear');
    const hotter = cold(warm)!.ways.find((way) => way.is === 'hotter');
    if (hotter?.is !== 'hotter') throw new Error('hotter metal does not help');
    expect(hotter.toC).toBeLessThanOrEqual(warm.temperature.most!.value);
    expect(cold(check({ temperature: `${hotter.toC}` }, { preheat: '150' }))?.state).toBe('clear');
    expect(warm.temperature.reasons.at(-1)).toMatchObject({ code: 'insert', insert: 0 });
    expect(warm.temperature.least!.value).toBeCloseTo(hotter.toC, 9);
  });
  test('metal that is only just liquid is a caution', () => {
    const states = [20, 120, 160, 200, 260].map((preheat) => cold(check({}, { preheat: `${preheat}` }))?.state);
    expect(states[0]).toBe('stop');
    expect(states.at(-1)).toBe('clear');
    expect(states).toContain('caution');
  });
  test('no band reaches a cold heavy arbor: said so, and the band stays', () => {
    const heavy: PourSketch = { ...sketch(), inserts: [{ ...arbor(), diameter: 40 }] };
    const found = checkPour(sketchPour(kernel, heavy));
    expect(found.temperature.reasons.at(-1)).toMatchObject({ code: 'insert', beyond: true });
    expect(found.temperature.least?.value).toBe(690);
    expect(cold(found)?.ways.some(({ is }) => is === 'hotter')).toBe(false);
  });
  test('in foam the metal comes cooler, and preheat beyond what foam stands is marked', () => {
    const foam: PourSketch = {
      ...sketch(),
      castings: [{ ...column, up: '+Z', moulding: 'foam in dry sand', foamDensity: '20 kg/m³' }],
      pour: { temperature: '760', ambient: '20', gating: { ...sprue, spot: 'top' } },
    };
    const found = checkPour(sketchPour(kernel, foam));
    // through foam from the top the boss comes first, the foot after it
    expect(found.inserts[0]?.fed).toBe('after');
    expect(found.inserts[0]?.arrives?.value).toBeCloseTo(760 - (20 * 1800) / (2400 * 0.963), 6);
    const preheat = cold(found)?.ways.find((way) => way.is === 'preheat');
    expect(preheat).toMatchObject({ overFoam: true });
    expect(found.foam?.gas?.value).toBeCloseTo(found.charge.castingsVolume!.value * 20e-9 * 1000 * 0.61, 6);
  });
  test('what is not said is named, and nothing is cleared', () => {
    const found = check({}, { around: undefined, material: 'kryptonite', part: undefined });
    expect(cold(found)?.state).toBe('unknown');
    expect(cold(found)?.unknown).toEqual(
      expect.arrayContaining([
        { is: 'field', field: 'inserts/0/mass' },
        { is: 'field', field: 'inserts/0/around' },
        { is: 'material', name: 'kryptonite' },
      ]),
    );
  });
  test('a mass that is written is taken as it is; so much of a long arbor as lies in the metal', () => {
    const [written] = check({}, { part: undefined, mass: '231 g' }).inserts;
    expect(written?.mass).toMatchObject({ value: 0.231, status: 'written' });
    const [half] = check({}, { length: '30' }).inserts;
    expect(half?.mass?.value).toBeCloseTo(0.1156, 4);
  });
});
