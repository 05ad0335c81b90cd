import { describe, expect, test } from 'vitest';
import {
  block,
  dimensionOf,
  latheFigures,
  round,
  sketchSetup,
  stationOf,
  theMachine,
  turn,
} from '../../../../tests/support/setup-sketch.ts';
import type { MachineId } from '../../base/ids.ts';

const close = (value: number) => expect.closeTo(value, 6);

describe('what is not known', () => {
  test('no machine, no line: nothing is judged', () => {
    const s = sketchSetup();
    round(s, [0, 100], 60);
    s.setup({ machine: undefined, line: { axis: 'X' } });
    const check = s.check();
    expect(check.unknown).toEqual([{ is: 'line' }, { is: 'machine' }]);
    expect(check.verdicts).toEqual([]);
    expect(check.profile).toBeUndefined();
  });

  test('a station that no dimension places', () => {
    const s = sketchSetup();
    s.machine(latheFigures);
    round(s, [0, 100], 60);
    s.loose('Y', 'stray');
    s.setup({ line: { axis: 'X', through: [stationOf('Y', 'stray'), s.at('Z', 0)] } });
    expect(s.check().unknown).toEqual([{ is: 'station', station: stationOf('Y', 'stray') }]);
    expect(s.check().verdicts).toEqual([]);
  });

  test('a figure of the machine: only the verdicts that need it', () => {
    const s = sketchSetup();
    const { swingOverCrossSlide: _, ...rest } = latheFigures;
    s.machine(rest);
    round(s, [0, 100], 60);
    s.setup({});
    turn(s, 'cut', 40, 60, 60);
    expect(s.verdict('over-cross-slide')).toMatchObject({
      state: 'unknown',
      unknown: [{ is: 'figure', machine: theMachine, key: 'swingOverCrossSlide' }],
    });
    expect(s.verdict('over-saddle')!.state).toBe('clears');
  });

  test('how far the work stands from the nose does not matter where it passes over the bed anyway', () => {
    const s = sketchSetup();
    const { headCentreLength: _, ...rest } = latheFigures;
    s.machine({ ...rest, swingInGap: '300', gapLength: '90' });
    round(s, [0, 100], 60);
    s.setup({});
    expect(s.verdict('over-bed')!.state).toBe('clears');
    const wide = sketchSetup();
    wide.machine({ ...rest, swingInGap: '300', gapLength: '90' });
    round(wide, [0, 100], 260);
    wide.setup({});
    expect(wide.verdict('over-bed')).toMatchObject({
      state: 'unknown',
      unknown: [{ is: 'figure', machine: theMachine, key: 'headCentreLength' }],
    });
  });

  test('a cut without its ends', () => {
    const s = sketchSetup();
    s.machine(latheFigures);
    round(s, [0, 100], 60);
    s.setup({});
    s.operation('cut', 'turn');
    expect(s.verdict('over-saddle', 'cut')).toMatchObject({
      state: 'unknown',
      unknown: [{ is: 'field', field: 'cut' }],
    });
  });
});

describe('ways out', () => {
  test('the least change of one dimension clears, limits counted, and a step less does not', () => {
    const s = sketchSetup();
    s.machine(latheFigures);
    block(s, [0, 100], [-60, 60], [-20, 90]);
    s.setup({});
    const remedy = s.verdict('over-bed')!.remedies[0]!;
    expect(remedy).toMatchObject({ is: 'dimension', dimension: dimensionOf('Z90'), from: 90 });
    const to = remedy.is === 'dimension' ? remedy.to : Number.NaN;
    const tried = (z: number) => {
      const again = sketchSetup();
      again.machine(latheFigures);
      block(again, [0, 100], [-60, 60], [-20, z]);
      again.setup({});
      return again.verdict('over-bed')!.state;
    };
    expect(tried(to)).toBe('clears');
    expect(tried(Math.round((to + 0.2) * 10) / 10)).toBe('at the limit');
  });

  test('another machine on which all of it clears', () => {
    const s = sketchSetup();
    s.machine(latheFigures);
    s.machine({ ...latheFigures, swingOverBed: '230' }, { id: 'machine:large' as MachineId, name: 'large lathe' });
    s.machine({ ...latheFigures, swingOverBed: '210' }, { id: 'machine:other' as MachineId, name: 'other lathe' });
    block(s, [0, 100], [-60, 60], [-20, 90]);
    s.setup({});
    const machines = s.verdict('over-bed')!.remedies.filter(({ is }) => is === 'machine');
    expect(machines).toEqual([{ is: 'machine', machine: 'machine:large' }]);
  });

  test('after an operation that takes the stock off', () => {
    const s = sketchSetup();
    s.machine(latheFigures);
    round(s, [0, 100], 196);
    s.operation('rough', 'turn', { setup: undefined, makes: [s.size('diameter', 196)] });
    s.setup({ allowance: '5' });
    expect(s.verdict('over-bed')).toMatchObject({ state: 'hits', needs: close(103) });
    expect(s.verdict('over-bed')!.remedies).toContainEqual({ is: 'after', operation: 'operation:rough' });
  });

  test('the face plate, with what lies on it, where the work is too long between centres', () => {
    const s = sketchSetup();
    s.machine({ ...latheFigures, betweenCentres: '110' });
    round(s, [0, 120], 60);
    s.setup({});
    const verdict = s.check().verdicts.find(({ remedies }) => remedies.some(({ is }) => is === 'holding'));
    const seat = { station: stationOf('X', 0), beyond: '' };
    expect(verdict?.remedies).toContainEqual({ is: 'holding', holding: { as: 'face plate', seat, tailCentre: false } });
  });

  test('a dimension behind a formula is the one that is changed', () => {
    const s = sketchSetup();
    s.machine(latheFigures);
    s.body({
      type: 'cylinder',
      axis: 'X',
      ends: [s.at('X', 0), s.at('X', 100)],
      centre: [s.at('Y', 0), s.at('Z', 0)],
      diameter: s.size('diameter', '2 * "length 101"'),
    });
    s.size('length', 101);
    s.setup({});
    const remedy = s.verdict('over-bed')!.remedies[0]!;
    expect(remedy).toMatchObject({ is: 'dimension', dimension: dimensionOf('length-101'), from: 101 });
    expect(remedy.is === 'dimension' && remedy.to).toBeLessThanOrEqual(100);
  });
});
