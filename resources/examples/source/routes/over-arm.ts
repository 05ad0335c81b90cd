import { at, atBench, body, hold, operation, route, size } from '../plan-sketch.ts';

/** Bored on the mill: on a lathe the post would sweep where the saddle must stand. */
export const overArmRoute = route(
  'over-arm',
  hold(
    {
      name: 'seat milling',
      machine: 'small mill',
      allowance: '2 mm',
      axis: 'Z',
      through: ['rod line', 'seat'],
      holding: { as: 'clamped to the table', seat: at('Y', 'post rear') },
    },
    operation('mill', 'mill seat', {
      makes: [at('Y', 'seat')],
      from: [at('Y', 'post rear')],
      cut: { ends: [at('Z', 'pad bottom'), at('Z', 'pad top')], diameter: size('pad width') },
      tool: '50 mm',
      overhang: '75 mm',
      teeth: 4,
      note: 'The spindle passes before the boss, which stands 47 over the seat.',
    }),
  ),
  hold(
    {
      name: 'pad drilling',
      machine: 'small mill',
      axis: 'Y',
      through: ['right screws', 'upper screws'],
      holding: { as: 'clamped to the table', seat: at('Y', 'post rear') },
      note: 'In the same clamping as the seat.',
    },
    operation('drill', 'drill pad screws', {
      makes: [body('lower screw holes'), body('upper screw holes')],
      from: [at('Y', 'seat')],
      cut: { ends: [at('Y', 'seat'), at('Y', 'pad rear')] },
      tool: size('screw hole'),
      overhang: '70 mm',
    }),
  ),
  hold(
    {
      name: 'boss facing',
      machine: 'small mill',
      allowance: '2 mm',
      axis: 'Z',
      through: ['rod line', 'rod line'],
      headEnd: 'high',
      holding: { as: 'clamped to the table', seat: at('Z', 'pad bottom') },
      fixtures: [
        {
          name: 'angle plate',
          what: 'angle plate',
          ends: [at('Z', 'pad bottom'), at('Z', 'pad top', '40 mm')],
          // Before the seat, which lies 30 behind the rod.
          shape: [
            [-40, 40],
            [10, 30],
          ],
          material: 'grey iron',
        },
      ],
      note: 'Upright, seat against the angle plate.',
    },
    operation('face', 'face boss above', {
      makes: [at('Z', 'boss upper face')],
      from: [at('Y', 'seat'), at('Z', 'lower screws')],
      cut: { ends: [at('Z', 'boss upper face', '2 mm'), at('Z', 'boss upper face')], diameter: size('boss diameter') },
      tool: '12 mm',
      overhang: '15 mm',
    }),
  ),
  hold(
    {
      name: 'rod boring',
      machine: 'small mill',
      allowance: '2 mm',
      axis: 'Z',
      through: ['rod line', 'rod line'],
      holding: { as: 'clamped to the table', seat: at('Z', 'boss upper face') },
      note: 'Stood on its boss, the pad in the air and steadied from the angle plate.',
    },
    operation('face', 'face boss below', {
      makes: [at('Z', 'boss lower face')],
      from: [at('Z', 'boss upper face')],
      cut: { ends: [at('Z', 'boss lower face', '-2 mm'), at('Z', 'boss lower face')], diameter: size('boss diameter') },
      tool: '12 mm',
      overhang: '18 mm',
    }),
    operation('drill', 'drill rod bore', {
      makes: [body('rod bore')],
      from: [at('Y', 'seat')],
      leaves: '0.2 mm',
      cut: { ends: [at('Z', 'boss lower face'), at('Z', 'boss upper face')] },
      tool: '12.3 mm',
      overhang: '65 mm',
      chosen: { rpm: '800', feed: '0.1 mm' },
    }),
    operation('ream', 'ream rod bore', {
      makes: [body('rod bore'), size('rod bore')],
      from: [at('Y', 'seat')],
      leaves: '0.015 mm',
      cut: { ends: [at('Z', 'boss lower face'), at('Z', 'boss upper face')] },
      tool: '1/2"',
      overhang: '65 mm',
    }),
  ),
  hold(
    {
      name: 'oil hole drilling',
      machine: 'small mill',
      axis: 'Y',
      through: ['rod line', 'oil hole'],
      holding: { as: 'clamped to the table', seat: at('Y', 'post rear') },
    },
    operation('drill', 'drill oil hole', {
      makes: [body('oil hole')],
      // To the wall of the rod's bore.
      cut: { ends: [at('Y', 'boss front'), at('Y', 'rod line', '-6.4 mm')] },
      tool: size('oil hole bore'),
      overhang: '35 mm',
    }),
  ),
  atBench(
    operation('lap', 'lap rod bore', {
      makes: [size('rod bore')],
      chosen: { minutes: '30 min' },
      note: 'To the rod as measured.',
    }),
  ),
);

export const upperRodRoute = route(
  'upper rod',
  hold(
    {
      name: 'lower facing',
      machine: 'bench lathe',
      allowance: '0.5 mm',
      axis: 'Z',
      through: ['axis', 'axis'],
      headEnd: 'high',
      holding: {
        as: 'three-jaw chuck',
        ends: [at('Z', 'lower end', '35 mm'), at('Z', 'lower end', '15 mm')],
        diameter: size('diameter'),
      },
    },
    operation('face', 'face lower end', {
      makes: [at('Z', 'lower end')],
      cut: { ends: [at('Z', 'lower end', '-0.5 mm'), at('Z', 'lower end')], diameter: size('diameter') },
      tool: '8 mm',
      overhang: '10 mm',
    }),
  ),
  hold(
    {
      name: 'upper facing',
      machine: 'bench lathe',
      allowance: '0.5 mm',
      axis: 'Z',
      through: ['axis', 'axis'],
      holding: {
        as: 'three-jaw chuck',
        ends: [at('Z', 'upper end', '-35 mm'), at('Z', 'upper end', '-15 mm')],
        diameter: size('diameter'),
      },
    },
    operation('face', 'face upper end', {
      makes: [at('Z', 'upper end')],
      from: [at('Z', 'lower end')],
      cut: { ends: [at('Z', 'upper end', '0.5 mm'), at('Z', 'upper end')], diameter: size('diameter') },
      tool: '8 mm',
      overhang: '10 mm',
    }),
  ),
  hold(
    {
      name: 'clamp drilling',
      machine: 'bench drill',
      axis: 'Y',
      through: ['axis', 'clamp line'],
      holding: { as: 'vise', ends: [at('X', 'axis', '-6.345 mm'), at('X', 'axis', '6.345 mm')], depth: '10 mm' },
    },
    operation('drill', 'drill clamp screw', {
      makes: [body('clamp screw hole')],
      from: [at('Z', 'lower end')],
      cut: { ends: [at('Y', 'front'), at('Y', 'axis')] },
      tool: '4.2 mm',
      overhang: '40 mm',
    }),
  ),
  atBench(
    operation('file', 'file socket', {
      makes: [body('file socket')],
      from: [at('Z', 'lower end')],
      chosen: { minutes: '45 min' },
      note: 'Three holes of 3 mm beside one another, drilled and filed out to the file’s tang.',
    }),
    operation('tap', 'tap clamp screw', { makes: [body('clamp screw hole')], chosen: { minutes: '4 min' } }),
  ),
);
