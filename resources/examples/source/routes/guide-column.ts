import { at, atBench, body, hold, operation, route, size } from '../plan-sketch.ts';

/** Foot first: all else is measured from it, and the ram's bore is square with it because it is bored standing on it. */
export const guideColumnRoute = route(
  'guide column',
  hold(
    {
      name: 'foot milling',
      machine: 'small mill',
      allowance: '2 mm',
      axis: 'X',
      through: ['bore line', 'foot'],
      holding: { as: 'clamped to the table', seat: at('Z', 'top face', '2 mm') },
    },
    operation('mill', 'mill foot', {
      makes: [at('Z', 'foot')],
      cut: { ends: [at('X', 'foot left'), at('X', 'foot right')], diameter: size('foot length') },
      tool: '50 mm',
      overhang: '45 mm',
      teeth: 4,
    }),
  ),
  hold(
    {
      name: 'boring',
      machine: 'bench lathe',
      allowance: '2 mm',
      axis: 'Z',
      through: ['bore line', 'bore line'],
      holding: { as: 'face plate', seat: at('Z', 'foot') },
    },
    operation('face', 'face top', {
      makes: [at('Z', 'top face')],
      from: [at('Z', 'foot')],
      // Across the corners of the flange.
      cut: {
        ends: [at('Z', 'top face', '2 mm'), at('Z', 'top face')],
        diameter: '167 mm',
        inner: size('ram bore as cast'),
      },
      tool: '10 mm',
      overhang: '12 mm',
    }),
    operation('drill', 'drill ram bore', {
      makes: [body('ram bore')],
      from: [at('Z', 'foot')],
      leaves: '0.45 mm',
      cut: { ends: [at('Z', 'top face'), at('Z', 'lower guide')] },
      tool: '15 mm',
      overhang: '85 mm',
      chosen: { rpm: '500', feed: '0.12 mm' },
      note: 'Opens out the cored hole.',
    }),
    operation('ream', 'ream ram bore', {
      makes: [body('ram bore'), size('ram bore')],
      from: [at('Z', 'foot')],
      leaves: '0.02 mm',
      cut: { ends: [at('Z', 'top face'), at('Z', 'lower guide')] },
      tool: '5/8"',
      overhang: '85 mm',
      chosen: { rpm: '300' },
    }),
  ),
  hold(
    {
      name: 'seat shaping',
      machine: 'hand shaper',
      allowance: '2 mm',
      axis: 'Z',
      through: ['bore line', 'arm seat'],
      holding: { as: 'clamped to the table', seat: at('Y', 'foot front') },
      note: 'The foot against a square stop.',
    },
    operation('shape', 'shape arm seat', {
      makes: [at('Y', 'arm seat')],
      from: [at('Z', 'foot'), size('ram bore')],
      cut: { ends: [at('Z', 'lower guide'), at('Z', 'top face')], diameter: size('flange width') },
      tool: '12 mm',
      overhang: '18 mm',
      chosen: { rpm: '40' },
    }),
  ),
  hold(
    {
      name: 'column screw drilling',
      machine: 'bench drill',
      axis: 'Z',
      through: ['right column screws', 'front column screws'],
      holding: { as: 'clamped to the table', seat: at('Z', 'top face') },
    },
    operation('drill', 'drill column screws', {
      makes: [body('front column screw holes'), body('rear column screw holes')],
      from: [at('Z', 'foot')],
      cut: { ends: [at('Z', 'foot'), at('Z', 'foot top')] },
      tool: size('column screw hole'),
      overhang: '40 mm',
      chosen: { rpm: '1200', feed: '0.1 mm' },
    }),
    operation('counterbore', 'spot face column screws', {
      makes: [body('front column screw holes'), body('rear column screw holes')],
      cut: { ends: [at('Z', 'foot top', '-1 mm'), at('Z', 'foot top')] },
      overhang: '40 mm',
      note: 'A cutter pinned on its bar from behind: the flange leaves no room from above.',
    }),
  ),
  hold(
    {
      name: 'trunnion screw drilling',
      machine: 'bench drill',
      axis: 'Z',
      through: ['right trunnion screws', 'rear trunnion screws'],
      headEnd: 'high',
      holding: { as: 'clamped to the table', seat: at('Z', 'foot') },
    },
    operation('drill', 'drill trunnion screws', {
      makes: [body('trunnion screw holes')],
      from: [at('Z', 'top face'), size('ram bore')],
      cut: { ends: [at('Z', 'top face'), at('Z', 'flange underside')] },
      tool: '5 mm',
      overhang: '50 mm',
    }),
  ),
  hold(
    {
      name: 'arm screw drilling',
      machine: 'bench drill',
      axis: 'Y',
      through: ['right arm screws', 'upper arm screws'],
      headEnd: 'high',
      holding: { as: 'clamped to the table', seat: at('Y', 'foot front') },
    },
    operation('drill', 'drill arm screws', {
      makes: [body('lower arm screw holes'), body('upper arm screw holes')],
      from: [at('Y', 'arm seat'), at('Z', 'top face')],
      cut: { ends: [at('Y', 'arm seat'), at('Y', 'arm screw bottom')] },
      tool: '6.8 mm',
      overhang: '50 mm',
      chosen: { feed: '0.1 mm' },
    }),
  ),
  hold(
    {
      name: 'oil hole drilling',
      machine: 'bench drill',
      axis: 'Y',
      through: ['bore line', 'oil hole'],
      holding: { as: 'clamped to the table', seat: at('Y', 'arm seat') },
    },
    operation('drill', 'drill oil hole', {
      makes: [body('oil hole')],
      // To the wall of the ram's bore.
      cut: { ends: [at('Y', 'guide boss front'), at('Y', 'bore line', '-8 mm')] },
      tool: size('oil hole bore'),
      overhang: '35 mm',
    }),
  ),
  atBench(
    operation('tap', 'tap trunnion screws', {
      makes: [body('trunnion screw holes')],
      cut: { ends: [at('Z', 'top face'), at('Z', 'top face', '-12 mm')] },
      chosen: { minutes: '10 min' },
    }),
    operation('tap', 'tap arm screws', {
      makes: [body('lower arm screw holes'), body('upper arm screw holes')],
      chosen: { minutes: '12 min' },
    }),
    operation('file', 'file lower guide', {
      makes: [at('Z', 'lower guide')],
      from: [at('Z', 'top face')],
      chosen: { minutes: '15 min' },
    }),
    operation('lap', 'lap ram bore', {
      makes: [size('ram bore')],
      chosen: { minutes: '30 min' },
      note: 'To the ram as measured.',
    }),
  ),
);
