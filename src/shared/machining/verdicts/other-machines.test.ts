import { describe, expect, test } from 'vitest';
import { block, figures, type SetupSketch, sketchSetup, stationOf } from '../../../../tests/support/setup-sketch.ts';
import type { MachineId } from '../../base/ids.ts';

const close = (value: number) => expect.closeTo(value, 6);

describe('on other machines', () => {
  const drillPress = {
    throat: '120',
    daylight: '300',
    quillTravel: '60',
    chuckLeast: '1',
    chuckMost: '13',
    chuckLength: '70',
    tableLength: '250',
    tableWidth: '200',
  };

  function drilling(more: Parameters<SetupSketch['operation']>[2] = {}) {
    const s = sketchSetup();
    s.machine(drillPress, { type: 'drill press' });
    // 100 tall along X, the hole 30 deep from the top (low X is up, to the spindle).
    block(s, [0, 100], [-40, 100], [-50, 50]);
    s.setup({ holding: { as: 'clamped to the table', seat: s.place('X', 100) } });
    s.operation('hole', 'drill', {
      cut: { ends: [s.place('X', 0), s.place('X', 30)], diameter: { written: '' }, inner: { written: '' } },
      tool: { edge: 'HSS', diameter: { written: '10' }, overhang: '90', teeth: 2, angle: '' },
      ...more,
    });
    return s;
  }

  test('drill press: throat, daylight with the drill in, quill, chuck, table', () => {
    const s = drilling();
    expect(figures(s, 'in-throat')).toEqual({ has: 120, needs: close(40), state: 'clears' });
    expect(figures(s, 'daylight')).toEqual({ has: 300, needs: close(260), state: 'clears' });
    expect(figures(s, 'quill-travel')).toMatchObject({ has: 60, needs: close(30) });
    expect(figures(s, 'chuck-range')).toMatchObject({ has: 13, needs: 10 });
    expect(figures(s, 'on-table')).toMatchObject({ has: 200, needs: close(100) });
  });

  test('shaper: stroke with its overrun, under the ram, across', () => {
    const s = sketchSetup();
    s.machine(
      { stroke: '200', underRam: '90', headTravel: '60', tableTravel: '150', tableLength: '300', tableWidth: '200' },
      { type: 'shaper' },
    );
    block(s, [0, 180], [-60, 60], [0, 80]);
    s.setup({
      holding: { as: 'clamped to the table', seat: { station: stationOf('Z', 0), beyond: '' } },
      allowance: '2',
    });
    s.operation('top', 'shape', {
      cut: { ends: [s.place('X', 0), s.place('X', 180)], diameter: s.amount(120), inner: { written: '' } },
    });
    expect(figures(s, 'stroke')).toEqual({ has: 200, needs: close(205), state: 'hits' });
    // 80 and a skin of 2 above and below.
    expect(figures(s, 'under-ram')).toMatchObject({ has: 90, needs: close(82) });
    expect(figures(s, 'table-travel')).toMatchObject({ has: 150, needs: close(120) });
    expect(figures(s, 'head-travel')).toMatchObject({ has: 60, needs: close(2) });
  });

  test('mill: travel with the cutter clear of both ends', () => {
    const s = sketchSetup();
    s.machine(
      {
        travelX: '200',
        travelY: '100',
        travelZ: '150',
        daylight: '250',
        throat: '130',
        tableLength: '400',
        tableWidth: '130',
      },
      { type: 'milling machine' },
    );
    block(s, [0, 180], [-40, 40], [0, 60]);
    s.setup({ holding: { as: 'clamped to the table', seat: { station: stationOf('Z', 0), beyond: '' } } });
    s.operation('top', 'mill', {
      cut: { ends: [s.place('X', 0), s.place('X', 180)], diameter: s.amount(80), inner: { written: '' } },
      tool: { edge: 'HSS', diameter: { written: '16' }, overhang: '50', teeth: 4, angle: '' },
    });
    expect(figures(s, 'travel-x')).toMatchObject({ has: 200, needs: close(196) });
    expect(figures(s, 'travel-y')).toMatchObject({ has: 100, needs: close(80) });
    expect(figures(s, 'daylight')).toMatchObject({ has: 250, needs: close(110) });
    expect(figures(s, 'in-throat')).toMatchObject({ has: 130, needs: close(40) });
  });

  test('in a vise the one that fits best counts; without any it says so', () => {
    const s = drilling();
    s.setup({});
    const vise = sketchSetup();
    vise.machine(drillPress, { type: 'drill press' });
    vise.machine({ opening: '60', jawDepth: '30' }, { type: 'vise', id: 'machine:small' as MachineId });
    vise.machine({ opening: '110', jawDepth: '40' }, { type: 'vise', id: 'machine:large' as MachineId });
    block(vise, [0, 50], [-40, 60], [-20, 20]);
    vise.setup({
      holding: { as: 'vise', ends: [vise.place('Y', -40), vise.place('Y', 60)], depth: { written: '25' } },
    });
    expect(figures(vise, 'in-vise')).toEqual({ has: 110, needs: close(100), state: 'clears' });
    const none = sketchSetup();
    none.machine(drillPress, { type: 'drill press' });
    block(none, [0, 50], [-40, 60], [-20, 20]);
    none.setup({
      holding: { as: 'vise', ends: [none.place('Y', -40), none.place('Y', 60)], depth: { written: '25' } },
    });
    expect(none.verdict('in-vise')).toMatchObject({ state: 'unknown', unknown: [{ is: 'field', field: 'vise' }] });
  });

  test('bandsaw, plate, grinder', () => {
    const s = sketchSetup();
    s.machine({ cutHeight: '100', throat: '150', viseOpening: '120' }, { type: 'bandsaw' });
    block(s, [0, 180], [-30, 40], [0, 95]);
    s.setup({ holding: { as: 'clamped to the table', seat: { station: stationOf('Z', 0), beyond: '' } } });
    expect(figures(s, 'saw-height')).toMatchObject({ has: 100, needs: close(95) });
    expect(figures(s, 'in-throat')).toMatchObject({ has: 150, needs: close(30) });
    const plate = sketchSetup();
    plate.machine({ plateLength: '300', plateWidth: '200' }, { type: 'surface plate' });
    block(plate, [0, 180], [-30, 40], [0, 95]);
    plate.setup({
      line: { axis: 'X' },
      holding: { as: 'clamped to the table', seat: { station: stationOf('Z', 0), beyond: '' } },
    });
    expect(figures(plate, 'on-plate')).toMatchObject({ has: 300, needs: close(180) });
    const grinder = sketchSetup();
    grinder.machine({ travelX: '300', travelY: '120', underWheel: '200' }, { type: 'grinder' });
    block(grinder, [0, 180], [-30, 40], [0, 95]);
    grinder.setup({ holding: { as: 'clamped to the table', seat: { station: stationOf('Z', 0), beyond: '' } } });
    expect(figures(grinder, 'under-wheel')).toMatchObject({ has: 200, needs: close(95) });
  });
});
