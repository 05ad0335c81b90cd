import { describe, expect, test, vi } from 'vitest';
import { dimensionId, partId, sketch, stationId } from '../../../tests/support/sketch-build.ts';
import type { Dimension } from '../build/dimension.ts';
import { createDrawing } from './create-drawing.ts';

// These take well under a second each unless something goes with the square of the depth, or over the stack.
vi.setConfig({ testTimeout: 60_000 });

const DEEP = 100_000;

function chain(length: number, overall?: string) {
  const build = sketch().part('bed').station('s0', { datum: true });
  for (let i = 1; i <= length; i++)
    build.station(`s${i}`).between(`d${i}`, `s${i - 1}`, `s${i}`, '2', { limits: '±0.1' });
  if (overall !== undefined) build.between('overall', 's0', `s${length}`, overall, { limits: '±0.1' });
  return build;
}

describe('an axis of very many stations', () => {
  test('a chain is placed, and its last path is read when asked for', () => {
    const build = chain(DEEP).build();
    const drawing = createDrawing(build);
    const [x] = drawing.axesOf(partId('bed'));
    const last = x!.stations.at(-1)!;
    expect(last.at).toBe(2 * DEEP);
    expect(last.band.plus).toBeCloseTo(0.1 * DEEP, 3);
    expect(last.path).toHaveLength(DEEP);
    expect(last.path[0]).toBe(dimensionId('d1'));
    expect(Object.keys(last)).toContain('path');
    const from = build.get(dimensionId('d1')) as Dimension;
    drawing.update({ added: [], removed: [], updated: [[from, { ...from, value: '3' }]] });
    expect(drawing.axesOf(partId('bed'))[0]!.stations.at(-1)!.at).toBe(2 * DEEP + 1);
    expect(drawing.touches(dimensionId('d1')).stations).toHaveLength(DEEP);
    expect(drawing.hangsOn(stationId(`s${DEEP}`)).dimensions).toHaveLength(DEEP);
    expect(drawing.distance(stationId('s0'), stationId(`s${DEEP}`))!.value).toBe(2 * DEEP + 1);
  });

  test('one loop as long as the axis that does not close', () => {
    const [x] = createDrawing(chain(DEEP, '300000').build()).axesOf(partId('bed'));
    expect(x!.conflicts).toHaveLength(1);
    expect(x!.conflicts[0]!.dimensions).toHaveLength(DEEP + 1);
  });

  test('a ladder of loops has short loops, and one wrong rung is found', () => {
    const rungs = 10_000;
    const build = sketch().part('bed').station('a0', { datum: true }).station('b0').between('r0', 'a0', 'b0', '5');
    for (let i = 1; i <= rungs; i++) {
      build.station(`a${i}`).station(`b${i}`);
      build.between(`p${i}`, `a${i - 1}`, `a${i}`, '1').between(`q${i}`, `b${i - 1}`, `b${i}`, '1');
      build.between(`r${i}`, `a${i}`, `b${i}`, i === 7_000 ? '50' : '5');
    }
    const [x] = createDrawing(build.build()).axesOf(partId('bed'));
    expect(x!.loops).toHaveLength(rungs);
    expect(x!.loops.filter(({ edges }) => edges.length > 6)).toEqual([]);
    expect(x!.conflicts).toHaveLength(1);
    expect(x!.conflicts[0]!.suspects).toEqual([{ dimension: dimensionId('r7000'), wouldBe: 5, slip: 'decimal-point' }]);
  });

  test('a formula that hangs on a hundred thousand others, one after another', () => {
    const build = sketch().part('bed').size('f0', 'length', '1');
    for (let i = 1; i <= DEEP; i++) build.size(`f${i}`, 'length', `f${i - 1} + 1 mm`);
    const drawing = createDrawing(build.build());
    expect(drawing.dimension(dimensionId(`f${DEEP}`)).value).toBe(DEEP + 1);
    const from = build.build().get(dimensionId('f0')) as Dimension;
    const change = drawing.update({ added: [], removed: [], updated: [[from, { ...from, value: '' }]] });
    expect(change.dimensions).toHaveLength(DEEP + 1);
    expect(drawing.dimension(dimensionId(`f${DEEP}`)).problem).toEqual({ why: 'waiting', causes: [dimensionId('f0')] });
    const ring = drawing.update({
      added: [],
      removed: [],
      updated: [[from, { ...from, value: `f${DEEP} + 1 mm` }]],
    });
    expect(ring.dimensions).toHaveLength(DEEP + 1);
    expect(drawing.rings()[0]).toHaveLength(DEEP + 1);
  });
});
