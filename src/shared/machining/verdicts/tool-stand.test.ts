import { describe, expect, test } from 'vitest';
import {
  figures,
  latheFigures,
  round,
  roundFixture,
  sketchSetup,
  turn,
} from '../../../../tests/support/setup-sketch.ts';

const close = (value: number) => expect.closeTo(value, 6);

// Slide 40 to each side at 55, wings 60 before and 70 behind at 90, block 50 wide, top slide 50 from stop to stop.

describe('how the saddle stands for a cut', () => {
  test('large work is faced with the tool led: the slide keeps out from under it', () => {
    const s = sketchSetup();
    s.machine(latheFigures);
    round(s, [0, 30], 160);
    s.setup({ holding: { as: 'face plate', seat: s.place('X', 0), tailCentre: false } });
    const end = s.place('X', 30);
    s.operation('face', 'face', { cut: { ends: [end, end], diameter: { written: '160' }, inner: { written: '' } } });
    // 25 by the block and 20⅚ by the top slide: 30 + 45⅚ − 40 is past the work by more than the 3 that are kept.
    expect(figures(s, 'over-cross-slide', 'face')).toBeUndefined();
    expect(figures(s, 'over-saddle', 'face')).toEqual({ has: 90, needs: close(80), state: 'clears' });
  });

  test('a rim is turned over its whole width as far as the tool can be led, and no farther', () => {
    const wide = (mm: number) => {
      const s = sketchSetup();
      s.machine(latheFigures);
      round(s, [0, mm], 160);
      s.setup({
        fixtures: [roundFixture('arbor', 'mandrel', [s.place('X', 0, '-40'), s.place('X', mm, '120')], '20')],
      });
      turn(s, 'rim', 0, mm, 160);
      return figures(s, 'over-cross-slide', 'rim');
    };
    // 25 + 25 − 40: ten before the edge the slide begins.
    expect(wide(9.5)).toEqual({ has: 55, needs: close(10), state: 'clears' });
    expect(wide(10.5)).toEqual({ has: 55, needs: close(80), state: 'hits' });
  });

  test('without a top slide it is led by the block alone', () => {
    const { topSlideTravel: _, ...without } = latheFigures;
    const s = sketchSetup();
    s.machine(without);
    round(s, [0, 30], 160);
    s.setup({ holding: { as: 'face plate', seat: s.place('X', 0), tailCentre: false } });
    const end = s.place('X', 30);
    s.operation('face', 'face', { cut: { ends: [end, end], diameter: { written: '160' }, inner: { written: '' } } });
    // 25 − 40: the slide reaches 15 in under the work.
    expect(figures(s, 'over-cross-slide', 'face')).toEqual({ has: 55, needs: close(80), state: 'hits' });
  });

  test('close to a chuck that does not pass over the slide', () => {
    const s = sketchSetup();
    s.machine({ ...latheFigures, threeJawDiameter: '120', jawReach: '10' });
    round(s, [0, 60], 30);
    const holding = {
      as: 'three-jaw chuck',
      ends: [s.place('X', 0), s.place('X', 20)],
      diameter: s.amount(30),
      inside: false,
      tailCentre: false,
    } as const;
    s.setup({ holding: { ...holding, ends: [...holding.ends] } });
    turn(s, 'near', 30, 60, 30);
    // Jaws end at 20; square, the slide would begin at −10 and the jaws reach 70 from the line. Led, it begins at 20 and more.
    expect(s.verdict('over-cross-slide', 'near')).toMatchObject({ state: 'clears', needs: close(15) });
  });

  test('what is gained over the slide is lost at the tailstock', () => {
    const at = (barrelTravel: string) => {
      const s = sketchSetup();
      s.machine({ ...latheFigures, barrelTravel });
      round(s, [0, 30], 160);
      s.setup({
        fixtures: [roundFixture('arbor', 'mandrel', [s.place('X', 0, '-60'), s.place('X', 30, '10')], '20')],
      });
      const end = s.place('X', 30);
      const inner = { written: '20' };
      s.operation('face', 'face', { cut: { ends: [end, end], diameter: { written: '160' }, inner } });
      return figures(s, 'barrel-travel', 'face')!;
    };
    // Square the barrel's front stands 10 + 40 behind the edge, and 70 of saddle want 20 out. To be clear of the work, and 3 besides, the saddle stands
    // 25 + 20⅚ aside, and wants so much more.
    expect(at('80')).toEqual({ has: 80, needs: close(20 + 25 + (25 * 5) / 6), state: 'clears' });
    // Clear of the work with nothing to spare it wants 20 + 40 at least.
    expect(at('50').state).toBe('hits');
  });

  test('where there is room, the tool stands square', () => {
    const s = sketchSetup();
    s.machine(latheFigures);
    round(s, [0, 200], 40);
    s.setup({});
    turn(s, 'cut', 100, 190, 40);
    expect(figures(s, 'barrel-travel', 'cut')!.needs).toBeCloseTo(190 + 70 - (200 + 40), 9);
  });
});
