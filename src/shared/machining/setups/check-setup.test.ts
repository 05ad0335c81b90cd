import { describe, expect, test } from 'vitest';
import { latheFigures, roundFixture, type SetupSketch, sketchSetup } from '../../../../tests/support/setup-sketch.ts';
import type { Axis } from '../../build/station.ts';

/** A block along X, Y and Z. */
function block(s: SetupSketch, x: [number, number], y: [number, number], z: [number, number]) {
  const pair = (axis: Axis, [a, b]: [number, number]) => [s.at(axis, a), s.at(axis, b)] as [never, never];
  return s.body({ type: 'block', x: pair('X', x), y: pair('Y', y), z: pair('Z', z) });
}

/** A cylinder about the line Y = Z = 0. */
function round(s: SetupSketch, x: [number, number], diameter: number, centre: [number, number] = [0, 0]) {
  return s.body({
    type: 'cylinder',
    axis: 'X',
    ends: [s.at('X', x[0]), s.at('X', x[1])],
    centre: [s.at('Y', centre[0]), s.at('Z', centre[1])],
    diameter: s.size('diameter', diameter),
  });
}

const turn = (s: SetupSketch, from: number, to: number, diameter: number, over = {}) =>
  s.operation('turn', 'turn', {
    cut: {
      ends: [s.place('X', from), s.place('X', to)],
      diameter: { written: String(diameter) },
      inner: { written: '' },
    },
    ...over,
  });

describe('what turns over the bed', () => {
  test('a block about its bore: the corner is the hypotenuse of its sides', () => {
    const s = sketchSetup();
    s.machine(latheFigures);
    block(s, [0, 100], [-60, 60], [-20, 80]);
    s.setup({});
    // √(60² + 80²) = 100: it only just touches.
    const verdict = s.verdict('over-bed')!;
    expect(verdict.has).toBe(100);
    expect(verdict.needs).toBeCloseTo(100, 9);
    expect(verdict.margin).toBeCloseTo(0, 9);
    expect(verdict.state).toBe('at the limit');
    console.log(JSON.stringify(s.check().verdicts, undefined, 1));
  });
});
