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

describe('room for the tool', () => {
  test('between a flange and the tailstock the block is led by its edge on the better side', () => {
    const s = sketchSetup();
    s.machine(latheFigures);
    round(s, [0, 200], 30);
    round(s, [90, 100], 120);
    s.setup({});
    turn(s, 'cut', 100, 140, 30);
    // With the edge at the head side of the block nothing of the flange stands before it.
    expect(s.verdict('tool-reach', 'cut')?.state).toBe('clears');
  });

  test('between two flanges nearer than the block is wide, only the reach of the tool helps', () => {
    const s = sketchSetup();
    s.machine(latheFigures);
    round(s, [0, 200], 30);
    round(s, [90, 100], 120);
    round(s, [130, 140], 120);
    s.setup({});
    turn(s, 'cut', 100, 130, 30);
    // Whichever way it is set, one flange stands beside the edge: 60 − 15 against a reach of 20.
    expect(figures(s, 'tool-reach', 'cut')).toEqual({ has: 20, needs: close(45), state: 'hits' });
  });

  test('the reach said for the operation counts before the machine’s', () => {
    const s = sketchSetup();
    s.machine(latheFigures);
    round(s, [0, 200], 30);
    round(s, [90, 100], 120);
    round(s, [130, 140], 120);
    s.setup({});
    turn(s, 'cut', 100, 130, 30, {
      tool: { edge: 'HSS', diameter: { written: '' }, overhang: '48', teeth: 1, angle: '' },
    });
    expect(figures(s, 'tool-reach', 'cut')).toMatchObject({ has: 48, needs: close(45) });
  });

  test('facing the tail end by the centre: the block meets the barrel', () => {
    const s = sketchSetup();
    s.machine(latheFigures);
    round(s, [0, 200], 60);
    s.setup({});
    const cut = { ends: [s.place('X', 200), s.place('X', 200)], diameter: { written: '60' }, inner: { written: '8' } };
    s.operation('face', 'face', { cut: { ...cut, ends: [cut.ends[0]!, cut.ends[1]!] } });
    // Led on its tail side the block stands over the work and must reach 30 − 4 = 26, with 20. Led on its head side it takes 50 of the 40 that
    // the centre stands out; beside the barrel it has 4 + 20 against 15. So the last way: 9 are left.
    expect(figures(s, 'tool-block-tail', 'face')).toEqual({ has: close(24), needs: 15, state: 'clears' });
  });

  test('a fat barrel and a short centre leave no room', () => {
    const s = sketchSetup();
    s.machine({ ...latheFigures, barrelDiameter: '60', tailCentreLength: '30' });
    round(s, [0, 200], 60);
    s.setup({});
    const end = s.place('X', 200);
    s.operation('face', 'face', { cut: { ends: [end, end], diameter: { written: '60' }, inner: { written: '8' } } });
    // Beside the barrel 4 + 20 against 30: 6 wanting. Over the work 20 against 26: 6 wanting as well. In the middle 25 of the 30 that the centre stands out,
    // and half of the block over the work.
    const check = s.check();
    const wanting = check.verdicts.filter(({ kind, state }) => kind !== 'between-centres' && state === 'hits');
    expect(wanting.map(({ margin }) => margin)).toEqual([close(-6)]);
  });

  test('by the jaws: along the bed, or over them', () => {
    const s = sketchSetup();
    s.machine(latheFigures);
    round(s, [0, 120], 60);
    const holding = {
      as: 'three-jaw chuck',
      ends: [s.place('X', 0), s.place('X', 20)],
      diameter: s.amount(60),
      inside: false,
      tailCentre: false,
    } as const;
    s.setup({ holding: { ...holding, ends: [...holding.ends] } });
    turn(s, 'far', 80, 120, 60);
    turn(s, 'near', 25, 120, 60);
    // The jaws end at 20. Far from them the block stands square, 80 − 25; near them the edge leads on the head side: 35, and 5, are left along the bed.
    expect(s.verdict('tool-block-head', 'far')).toMatchObject({ margin: close(35), state: 'clears' });
    expect(s.verdict('tool-block-head', 'near')).toMatchObject({ margin: close(5), state: 'clears' });
  });
});

describe('between head and tailstock', () => {
  test('the length between the points, the arbor’s where there is one', () => {
    const s = sketchSetup();
    s.machine(latheFigures);
    round(s, [0, 100], 60);
    s.setup({ fixtures: [roundFixture('arbor', 'arbor', [s.place('X', 0, '-60'), s.place('X', 100, '40')], '25')] });
    expect(figures(s, 'between-centres')).toMatchObject({ has: 400, needs: close(200) });
    // 60 past the driven face, one diameter wanted; 40 past the other, a quarter wanted: 33.75 is the less that is left.
    expect(figures(s, 'arbor-length')).toMatchObject({ has: close(40), needs: close(6.25) });
  });

  test('a dog says itself how much arbor it takes', () => {
    const s = sketchSetup();
    s.machine(latheFigures);
    round(s, [0, 100], 60);
    s.setup({
      fixtures: [
        roundFixture('arbor', 'arbor', [s.place('X', 0, '-30'), s.place('X', 100, '40')], '25'),
        roundFixture('dog', 'driving dog', [s.place('X', 0, '-28'), s.place('X', 0, '-4')], '70'),
      ],
    });
    expect(figures(s, 'arbor-length')).toEqual({ has: close(30), needs: close(24), state: 'clears' });
  });

  test('near the tail end the barrel must reach over the saddle', () => {
    const s = sketchSetup();
    s.machine(latheFigures);
    round(s, [0, 200], 60);
    s.setup({});
    turn(s, 'end', 150, 198, 60);
    // The saddle reaches to 198 + 70 = 268; with the barrel in its front stands at 200 + 40 = 240.
    expect(figures(s, 'barrel-travel', 'end')).toEqual({ has: 60, needs: close(28), state: 'clears' });
    expect(figures(s, 'between-centres')).toMatchObject({ has: close(372), needs: close(200) });
  });

  test('in the chuck with a centre: measured from the nose', () => {
    const s = sketchSetup();
    s.machine(latheFigures);
    round(s, [0, 420], 60);
    s.setup({
      holding: {
        as: 'three-jaw chuck',
        ends: [s.place('X', 0), s.place('X', 20)],
        diameter: s.amount(60),
        inside: false,
        tailCentre: true,
      },
    });
    // Jaws' ends at 20 and 80 before the nose: the work ends 480 from the nose, and the centre reaches to 50 + 400.
    expect(figures(s, 'between-centres')).toEqual({ has: 450, needs: close(480), state: 'hits' });
  });
});
