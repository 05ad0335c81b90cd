import { describe, expect, test } from 'vitest';
import {
  block,
  figures,
  latheFigures,
  round,
  type SetupSketch,
  sketchSetup,
} from '../../../../tests/support/setup-sketch.ts';

const close = (value: number) => expect.closeTo(value, 6);

describe('held in a chuck, on the plate, in a steady', () => {
  const held = (s: SetupSketch, over = {}) => ({
    as: 'three-jaw chuck' as const,
    ends: [s.place('X', 0), s.place('X', 30)] as [ReturnType<typeof s.place>, ReturnType<typeof s.place>],
    diameter: s.amount(60),
    inside: false,
    tailCentre: false,
    ...over,
  });

  test('range of the jaws, from without and in a bore', () => {
    const s = sketchSetup();
    s.machine(latheFigures);
    round(s, [0, 100], 60);
    s.setup({ holding: held(s) });
    expect(figures(s, 'jaw-range')).toEqual({ has: 90, needs: close(60), state: 'clears' });
    const inside = sketchSetup();
    inside.machine(latheFigures);
    round(inside, [0, 100], 60);
    inside.setup({ holding: held(inside, { inside: true, diameter: inside.amount(28) }) });
    expect(figures(inside, 'jaw-range')).toEqual({ has: close(28), needs: 30, state: 'hits' });
  });

  test('jaws close no deeper than they are; a third of what stands free is wanted', () => {
    const s = sketchSetup();
    s.machine(latheFigures);
    round(s, [0, 140], 60);
    s.setup({ holding: held(s) });
    // 30 could be gripped, the jaws are 20 deep: 120 stand free.
    expect(figures(s, 'grip-length')).toEqual({ has: close(20), needs: close(40), state: 'hits' });
    const centred = sketchSetup();
    centred.machine(latheFigures);
    round(centred, [0, 140], 60);
    centred.setup({ holding: held(centred, { tailCentre: true }) });
    expect(figures(centred, 'grip-length')).toMatchObject({ needs: close(12) });
  });

  test('what reaches back behind the jaws passes into the spindle', () => {
    const s = sketchSetup();
    s.machine(latheFigures);
    round(s, [0, 100], 60);
    round(s, [-50, 0], 19);
    s.setup({ holding: held(s) });
    expect(figures(s, 'through-spindle')).toMatchObject({ has: 10, needs: close(9.5) });
  });

  test('on the face plate: its seat against the plate', () => {
    const s = sketchSetup();
    s.machine(latheFigures);
    block(s, [0, 50], [-60, 60], [-80, 80]);
    s.setup({ holding: { as: 'face plate', seat: s.place('X', 0), tailCentre: false } });
    expect(figures(s, 'face-plate')).toEqual({ has: 90, needs: close(100), state: 'hits' });
  });

  test('in the steady: what it carries, and what lies within its width', () => {
    const s = sketchSetup();
    s.machine(latheFigures);
    round(s, [0, 200], 40);
    round(s, [155, 165], 58);
    s.setup({ holding: { as: 'steady', at: s.place('X', 150), diameter: s.amount(40) } });
    // Its jaws are 20 wide: the collar that begins at 155 lies in them, and the steady opens to 60.
    expect(figures(s, 'steady-range')).toMatchObject({ has: 30, needs: close(29) });
  });
});
