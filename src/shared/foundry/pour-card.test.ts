import { beforeAll, expect, test } from 'vitest';
import { block, cylinder } from '../../../tests/support/placed-bodies.ts';
import { machineOf, type PourSketch, pourBody, sketchPour, sprue } from '../../../tests/support/sketch-pour.ts';
import type { PourId } from '../base/ids.ts';
import { defaultPour } from '../build/pour.ts';
import type { Kernel } from '../solid/manifold/kernel.ts';
import { loadKernel } from '../solid/manifold/load-kernel.ts';
import { figureWords } from './figure-words.ts';
import { pourCard } from './pour-card.ts';
import { checkPour } from './pour-check.ts';

let kernel: Kernel;
beforeAll(async () => {
  kernel = await loadKernel();
});

const sketch: PourSketch = {
  castings: [
    {
      name: 'post',
      bodies: [{ shape: block([-50, 50], [-40, 40], [0, 10]) }, { shape: cylinder('Z', [0, 0], [0, 60], 24) }],
    },
  ],
  inserts: [{ name: 'spindle', diameter: 12, length: 60, record: { around: pourBody('post', 1), preheat: '200' } }],
  machines: [
    machineOf('pot', 'crucible', { capacity: '1.2 l' }),
    machineOf('tub', 'furnace', { heatRate: '1.5 kW', highest: '1000' }),
    machineOf('box', 'flask', { insideLength: '300', insideWidth: '250', copeHeight: '100', dragHeight: '100' }),
  ],
  pour: {
    name: 'Post, second attempt',
    temperature: '735',
    gating: sprue,
    crucible: machineOf('pot', 'crucible', {}).id,
    furnace: machineOf('tub', 'furnace', {}).id,
    flask: machineOf('box', 'flask', {}).id,
  },
};
const nameOf = (id: string): string => id.split(':')[1]!;
const cardOf = (given: PourSketch) => {
  const check = checkPour(sketchPour(kernel, given));
  return { check, card: pourCard(check, 'mm', nameOf) };
};

test('a card holds the figures of the check, in big type and in the sequence', () => {
  const { check, card } = cardOf(sketch);
  const big = new Map(card.figures.map((one) => [one.id, one]));
  expect(card).toMatchObject({
    title: 'Post, second attempt',
    alloy: '356 (AlSi7Mg)',
    castings: [{ name: 'post', up: '+Z' }],
  });
  expect(big.get('temperature')?.text).toBe('735 °C');
  expect(big.get('temperature')?.beneath).toMatch(/^\d{3} °C to \d{3} °C$/);
  expect(big.get('charge')?.text).toBe(figureWords(check.charge.charge!, 'mm'));
  expect(card.steps.map(({ phase }) => phase)).toEqual(
    [...card.steps.map(({ phase }) => phase)].sort((a, b) => order(a) - order(b)),
  );
  const words = card.steps.map((one) => one.words).join('\n');
  expect(words).toContain(
    `Weigh ${figureWords(check.charge.charge!, 'mm')} of clean, dry metal. Put it into pot loosely`,
  );
  expect(words).toContain('Bring spindle to 200 °C');
  expect(words).toContain('pour at 735 °C');
  expect(words).not.toMatch(/NaN|undefined|Infinity/);
});
const order = (phase: string): number => ['before', 'melt', 'pour', 'after'].indexOf(phase);

test('every card warns of wear, water, fumes, floor, a second person and local codes', () => {
  const ids = cardOf(sketch).card.cautions.map(({ id }) => id);
  expect(ids).toEqual(
    expect.arrayContaining(['wear', 'dry-tools', 'dry-mould', 'fumes', 'floor', 'second-person', 'codes']),
  );
  expect(ids).not.toContain('foam-fumes');
  const foam = cardOf({
    ...sketch,
    castings: sketch.castings.map((one) => ({ ...one, moulding: 'foam in dry sand' as const })),
  });
  expect(foam.card.cautions.map(({ id }) => id)).toContain('foam-fumes');
  const brass = cardOf({ ...sketch, pour: { ...sketch.pour, alloy: 'red brass' } });
  expect(brass.card.cautions.map(({ id }) => id)).toContain('zinc-fumes');
});
test('what is not known is a dash; what speaks against pouring stands on the card, stops first', () => {
  const { card } = cardOf({ castings: [], pour: defaultPour('pour:none' as PourId, 'Nothing yet', 1) });
  expect(card.figures.find(({ id }) => id === 'charge')).toMatchObject({ text: '—', figure: undefined });
  expect(card.unknownCount).toBeGreaterThan(0);
  const cold = cardOf({ ...sketch, pour: { ...sketch.pour, temperature: '560' } }).card;
  expect(cold.against[0]?.state).toBe('stop');
  const states = cold.against.map(({ state }) => state);
  expect(states).toEqual([...states].sort((a, b) => (a === b ? 0 : a === 'stop' ? -1 : 1)));
});
test('figures in words, in both systems', () => {
  const say = (value: number, unit: Parameters<typeof figureWords>[0]['unit'], system: 'mm' | 'in' = 'mm') =>
    figureWords({ value, unit }, system);
  expect([say(14.26, 'mm'), say(25.4, 'mm', 'in'), say(2.684, 'kg'), say(0.0234, 'kg')]).toEqual([
    '14.3 mm',
    '1 in',
    '2.68 kg',
    '23 g',
  ]);
  expect([say(72, 'min'), say(60, 'min'), say(4.25, 'min'), say(300, 's'), say(7.31, 's')]).toEqual([
    '1 h 12 min',
    '1 h',
    '4.3 min',
    '5 min',
    '7.31 s',
  ]);
  expect([say(645.16, 'mm²', 'in'), say(16_387.064, 'mm³', 'in'), say(500, 'mm/s'), say(304.8, 'mm/s', 'in')]).toEqual([
    '1 in²',
    '1 in³',
    '0.5 m/s',
    '1 ft/s',
  ]);
});
