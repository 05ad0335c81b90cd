import { describe, expect, test } from 'vitest';
import {
  block,
  dimensionOf,
  figures,
  latheFigures,
  round,
  roundFixture,
  sketchSetup,
  turn,
} from '../../../../tests/support/setup-sketch.ts';

const close = (value: number) => expect.closeTo(value, 6);

describe('what turns over bed and gap', () => {
  test('a block about its bore: its corner lies as far off as the hypotenuse of its sides', () => {
    const s = sketchSetup();
    s.machine(latheFigures);
    // √(60² + 80²) = 100: it only just touches.
    block(s, [0, 100], [-60, 60], [-20, 80]);
    s.setup({});
    expect(figures(s, 'over-bed')).toEqual({ has: 100, needs: close(100), state: 'at the limit' });
    expect(s.verdict('over-bed')!.carriedBy).toEqual({ is: 'body', part: s.part.id, body: 'body:b1', copy: 0 });
  });

  test('a millimetre more than the bed allows hits by as much as the hypotenuse grows', () => {
    const s = sketchSetup();
    s.machine(latheFigures);
    block(s, [0, 100], [-60, 60], [-20, 81]);
    s.setup({});
    const verdict = s.verdict('over-bed')!;
    expect(verdict.state).toBe('hits');
    expect(verdict.margin).toBeCloseTo(100 - Math.hypot(60, 81), 9);
    expect(verdict.shares[0]!.dimension).toBe(dimensionOf('Z81'));
    expect(verdict.shares[0]!.sensitivity).toBeCloseTo(-81 / Math.hypot(60, 81), 2);
  });

  test('an eccentric cylinder reaches as far as its radius and its throw together', () => {
    const s = sketchSetup();
    s.machine(latheFigures);
    round(s, [0, 100], 50, [30, 40]);
    s.setup({});
    expect(figures(s, 'over-bed')).toEqual({ has: 100, needs: close(75), state: 'clears' });
  });

  test('an outline of the bed counts before the swing: its nearest point is what is free', () => {
    const s = sketchSetup();
    // A way whose inner edge stands up at 30 across, 40 down: 50 from the line of centres.
    const bed = [
      { across: '-80', down: '90' },
      { across: '30', down: '40' },
      { across: '80', down: '90' },
    ];
    s.machine(latheFigures, { bed });
    round(s, [0, 100], 80);
    s.setup({});
    const verdict = s.verdict('over-bed')!;
    // The side from (−80, 90) to (30, 40) passes the line of centres at less than its corner does.
    const distance = Math.abs(-80 * 40 - 30 * 90) / Math.hypot(110, 50);
    expect(verdict.has).toBeCloseTo(distance, 9);
    expect(verdict.needs).toBeCloseTo(40, 9);
  });

  test('what lies in the gap swings in the gap, and the rest over the bed', () => {
    const s = sketchSetup();
    s.machine({ ...latheFigures, swingInGap: '300', gapLength: '90' });
    // From the point of the head centre, 50 before the nose: the flange lies from 55 to 85.
    round(s, [0, 200], 40);
    round(s, [5, 35], 260);
    s.setup({});
    expect(figures(s, 'in-gap')).toEqual({ has: 150, needs: close(130), state: 'clears' });
    expect(figures(s, 'over-bed')).toEqual({ has: 100, needs: close(20), state: 'clears' });
  });

  test('a flange that stands 5 out of the gap hits the bed', () => {
    const s = sketchSetup();
    s.machine({ ...latheFigures, swingInGap: '300', gapLength: '80' });
    round(s, [0, 200], 40);
    round(s, [5, 35], 260);
    s.setup({});
    expect(figures(s, 'over-bed')).toEqual({ has: 100, needs: close(130), state: 'hits' });
  });

  test('turned end for end the same flange lies at the tailstock', () => {
    const s = sketchSetup();
    s.machine({ ...latheFigures, swingInGap: '300', gapLength: '90' });
    round(s, [0, 200], 40);
    round(s, [5, 35], 260);
    s.setup({ headEnd: 'high' });
    expect(figures(s, 'over-bed')!.state).toBe('hits');
    expect(s.verdict('over-bed')!.remedies).toContainEqual({ is: 'end-for-end' });
    expect(s.verdict('in-gap')!.needs).toBeCloseTo(20, 9);
  });

  test('stock left on the work reaches as much farther', () => {
    const s = sketchSetup();
    s.machine(latheFigures);
    round(s, [0, 100], 150);
    s.setup({ allowance: '3' });
    expect(figures(s, 'over-bed')).toEqual({ has: 100, needs: close(78), state: 'clears' });
  });

  test('a balance weight turns with the work', () => {
    const s = sketchSetup();
    s.machine(latheFigures);
    round(s, [0, 100], 60);
    const weight = {
      ...roundFixture('weight', 'balance weight', [s.place('X', 0), s.place('X', 0, '20')], ''),
      shape: {
        is: 'block',
        across: [
          ['60', '80'],
          ['-15', '15'],
        ] as [[string, string], [string, string]],
      } as const,
    };
    s.setup({
      fixtures: [
        {
          ...weight,
          shape: {
            is: 'block',
            across: [
              ['60', '80'],
              ['-15', '15'],
            ],
          },
        },
      ],
    });
    const verdict = s.verdict('over-bed')!;
    expect(verdict.needs).toBeCloseTo(Math.hypot(80, 15), 9);
    expect(verdict.carriedBy).toEqual({ is: 'fixture', index: 0 });
  });

  test('a fellow part lies where its stations meet, and turns too', () => {
    const s = sketchSetup();
    s.machine(latheFigures);
    round(s, [0, 100], 60);
    const other = s.fellow('c');
    // A block 40 long along its own Z, its Z up along the first part's Y.
    other.body({
      type: 'block',
      x: [other.at('X', 0), other.at('X', 20)],
      y: [other.at('Y', -10), other.at('Y', 10)],
      z: [other.at('Z', 0), other.at('Z', 40)],
    });
    s.setup({
      fellows: [
        {
          part: other.part.id,
          state: { is: 'finished' },
          turn: ['+X', '-Z', '+Y'],
          meets: [
            [s.at('X', 30), other.at('X', 0)],
            [s.at('Y', 30), other.at('Z', 0)],
            [s.at('Z', 0), other.at('Y', 0)],
          ],
        },
      ],
    });
    const verdict = s.verdict('over-bed')!;
    // It stands on the rim at 30 and reaches 40 farther, 10 to each side.
    expect(verdict.needs).toBeCloseTo(Math.hypot(70, 10), 9);
    expect(verdict.carriedBy).toMatchObject({ part: other.part.id });
    expect(verdict.at).toBeGreaterThanOrEqual(30);
  });
});

describe('where the saddle must stand', () => {
  // Wings reach 60 before the edge and 70 behind it, at a radius of 90; the slide 40 each way, at 55.
  test('a flange on each side of the cut hits the slide, though it clears the bed', () => {
    const s = sketchSetup();
    s.machine(latheFigures);
    round(s, [0, 300], 40);
    round(s, [80, 90], 140);
    round(s, [160, 170], 140);
    s.setup({});
    turn(s, 'far', 230, 280, 40);
    turn(s, 'near', 100, 150, 40);
    expect(figures(s, 'over-bed')).toEqual({ has: 100, needs: close(70), state: 'clears' });
    expect(figures(s, 'over-cross-slide', 'far')).toEqual({ has: 55, needs: close(20), state: 'clears' });
    // Wherever the top slide lets the saddle stand, 80 of slide and 50 of cut find no room in the 70 between.
    expect(figures(s, 'over-cross-slide', 'near')).toEqual({ has: 55, needs: close(70), state: 'hits' });
    expect(figures(s, 'over-saddle', 'near')).toEqual({ has: 90, needs: close(70), state: 'clears' });
    expect(s.verdict('over-cross-slide', 'near')!.at).toBeGreaterThanOrEqual(80);
  });

  test('the slide comes exactly to two flanges: what touches a stretch does not lie in it', () => {
    const s = sketchSetup();
    s.machine(latheFigures);
    round(s, [0, 300], 40);
    round(s, [80, 90], 140);
    round(s, [230, 240], 140);
    s.setup({});
    // 130 − 40 = 90 and 190 + 40 = 230, where the flanges end.
    turn(s, 'cut', 130, 190, 40);
    expect(figures(s, 'over-cross-slide', 'cut')).toEqual({ has: 55, needs: close(20), state: 'at the limit' });
  });

  test('wings look ahead and behind by what the saddle reaches, also end for end', () => {
    const s = sketchSetup();
    s.machine({ ...latheFigures, swingOverSaddle: '130' });
    round(s, [0, 300], 40);
    round(s, [10, 20], 140);
    s.setup({ headEnd: 'low' });
    turn(s, 'cut', 85, 100, 40);
    // Towards the headstock 60: down to 25, and the flange ends at 20.
    expect(figures(s, 'over-saddle', 'cut')).toEqual({ has: 65, needs: close(20), state: 'clears' });
    const turned = sketchSetup();
    turned.machine({ ...latheFigures, swingOverSaddle: '130', saddleTail: '130' });
    round(turned, [0, 300], 40);
    round(turned, [10, 20], 140);
    turned.setup({ headEnd: 'high' });
    turn(turned, 'cut', 85, 100, 40);
    // Now the flange lies towards the tailstock, where the saddle reaches 130: down to −45, or to 5 when the tool is led and the top slide run out.
    expect(figures(turned, 'over-saddle', 'cut')).toEqual({ has: 65, needs: close(70), state: 'hits' });
  });

  test('a boring bar moves the saddle out by its free length', () => {
    const s = sketchSetup();
    s.machine(latheFigures);
    round(s, [0, 60], 150);
    s.setup({ holding: { as: 'face plate', seat: s.place('X', 0), tailCentre: false } });
    const cut = {
      ends: [s.place('X', 10), s.place('X', 60)],
      diameter: { written: '30' },
      inner: { written: '' },
    } as const;
    s.operation('bore', 'bore', {
      cut: { ...cut, ends: [...cut.ends] },
      tool: { edge: 'HSS', diameter: { written: '12' }, overhang: '80', teeth: 1, angle: '' },
    });
    // Deepest at 10: block's front at 90, its middle at 115, the slide from 75: past the work, which ends at 60.
    expect(figures(s, 'over-cross-slide', 'bore')).toBeUndefined();
    // Wings from 115 − 60 = 55: over the last 5 of the work.
    expect(figures(s, 'over-saddle', 'bore')).toEqual({ has: 90, needs: close(75), state: 'clears' });
    expect(figures(s, 'tool-reach', 'bore')).toEqual({ has: 80, needs: close(50), state: 'clears' });
  });
});
