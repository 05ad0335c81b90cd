import { at, atBench, body, hold, inSetupOf, operation, route, size } from '../plan-sketch.ts';

/** Up to where the caps are screwed on the base; they are bored with it. */
export const bearingCapRoute = route(
  'bearing cap',
  hold(
    {
      name: 'split face shaping',
      machine: 'hand shaper',
      allowance: '2 mm',
      axis: 'X',
      through: ['screw line', 'split face'],
      holding: { as: 'vise', ends: [at('Y', 'front face'), at('Y', 'rear face')], depth: '15 mm' },
      note: 'The bar of two caps in one piece.',
    },
    operation('shape', 'shape split face', {
      makes: [at('Z', 'split face')],
      from: [at('Z', 'crown')],
      cut: { ends: [at('X', 'left end'), at('X', 'right end')], diameter: size('thickness') },
      tool: '10 mm',
      overhang: '15 mm',
      chosen: { rpm: '40' },
    }),
  ),
  hold(
    {
      name: 'side shaping',
      machine: 'hand shaper',
      allowance: '2 mm',
      axis: 'X',
      through: ['screw line', 'split face'],
      holding: { as: 'vise', ends: [at('Z', 'split face'), at('Z', 'crown')], depth: '8 mm' },
      note: 'Turned over once, for the other face.',
    },
    operation('shape', 'shape both faces', {
      makes: [at('Y', 'front face'), at('Y', 'rear face')],
      from: [at('Z', 'split face')],
      cut: { ends: [at('X', 'left end'), at('X', 'right end')], diameter: size('crown height') },
      tool: '10 mm',
      overhang: '15 mm',
      chosen: { rpm: '40' },
    }),
  ),
  hold(
    {
      name: 'screw drilling',
      machine: 'bench drill',
      allowance: '1.5 mm',
      axis: 'Z',
      through: ['right screw', 'screw line'],
      headEnd: 'high',
      holding: { as: 'vise', ends: [at('Y', 'front face'), at('Y', 'rear face')], depth: '15 mm' },
    },
    operation('drill', 'drill screw holes', {
      makes: [body('screw holes')],
      from: [at('Z', 'split face'), at('Y', 'front face')],
      cut: { ends: [at('Z', 'screw seat'), at('Z', 'split face')] },
      tool: size('screw hole'),
      overhang: '55 mm',
    }),
    operation('counterbore', 'spot face screw seats', {
      makes: [body('spot faces'), at('Z', 'screw seat')],
      from: [at('Z', 'split face')],
      cut: { ends: [at('Z', 'screw seat', '1.5 mm'), at('Z', 'screw seat')] },
      tool: size('screw spot face'),
      overhang: '45 mm',
    }),
  ),
  hold(
    {
      name: 'parting',
      machine: 'bandsaw',
      axis: 'Y',
      through: ['left end', 'split face'],
      holding: { as: 'clamped to the table', seat: at('Z', 'split face') },
    },
    operation('saw', 'saw the bar apart', {
      cut: { ends: [at('Y', 'front face'), at('Y', 'rear face')], diameter: size('screw seat height') },
    }),
  ),
);

export const baseRoute = route(
  'base',
  hold(
    {
      name: 'underside shaping',
      machine: 'hand shaper',
      allowance: '2 mm',
      axis: 'Y',
      through: ['ram line', 'underside'],
      holding: { as: 'clamped to the table', seat: at('Z', 'crank line', '2 mm') },
      note: 'On its pedestals, packed until it stands without rocking.',
    },
    operation('shape', 'shape underside', {
      makes: [at('Z', 'underside')],
      cut: { ends: [at('Y', 'front face'), at('Y', 'rear face')], diameter: '160 mm' },
      tool: '12 mm',
      overhang: '18 mm',
      chosen: { rpm: '40' },
    }),
  ),
  hold(
    {
      name: 'seat milling',
      machine: 'small mill',
      allowance: '2 mm',
      axis: 'X',
      through: ['ram line', 'column seat'],
      holding: { as: 'clamped to the table', seat: at('Z', 'underside') },
    },
    operation('mill', 'mill column seats', {
      makes: [at('Z', 'column seat')],
      from: [at('Z', 'underside')],
      // From 13 before the front screws to 14 behind the rear ones: 13 + 34 + 14.
      cut: { ends: [at('X', 'left pad outside'), at('X', 'right pad outside')], diameter: '61 mm' },
      tool: '20 mm',
      overhang: '75 mm',
      teeth: 4,
      note: 'The cutter passes before the pedestals, so it stands out by their height.',
    }),
    operation('mill', 'mill split faces', {
      makes: [at('Z', 'crank line')],
      from: [at('Z', 'underside'), at('Z', 'column seat')],
      cut: { ends: [at('X', 'pedestal left'), at('X', 'pedestal right')], diameter: '76 mm' },
      tool: '20 mm',
      overhang: '75 mm',
      teeth: 4,
    }),
    operation('mill', 'mill pedestal faces', {
      makes: [
        at('Y', 'front pedestal front'),
        at('Y', 'front pedestal rear'),
        at('Y', 'rear pedestal front'),
        at('Y', 'rear pedestal rear'),
      ],
      from: [at('Z', 'underside')],
      cut: { ends: [at('X', 'pedestal left'), at('X', 'pedestal right')], diameter: '62 mm' },
      tool: '20 mm',
      overhang: '75 mm',
      teeth: 4,
    }),
  ),
  hold(
    {
      name: 'screw drilling',
      machine: 'bench drill',
      axis: 'Z',
      through: ['right cap screws', 'front cap line'],
      headEnd: 'high',
      holding: { as: 'clamped to the table', seat: at('Z', 'underside') },
    },
    operation('drill', 'drill column screws', {
      makes: [body('front column screw holes'), body('rear column screw holes')],
      from: [at('Z', 'column seat')],
      cut: { ends: [at('Z', 'column seat'), at('Z', 'column screw bottom')] },
      tool: '6.8 mm',
      overhang: '90 mm',
      chosen: { feed: '0.1 mm' },
      note: 'The chuck stays above the pedestals.',
    }),
    operation('drill', 'drill cap screws', {
      makes: [body('cap screw holes')],
      from: [at('Z', 'crank line')],
      cut: { ends: [at('Z', 'crank line'), at('Z', 'cap screw bottom')] },
      tool: '4.2 mm',
      overhang: '55 mm',
    }),
    operation('drill', 'drill bench bolts', {
      makes: [body('bench bolt holes')],
      from: [at('Z', 'underside')],
      cut: { ends: [at('Z', 'bench lug top'), at('Z', 'underside')] },
      tool: size('bench bolt hole'),
      overhang: '90 mm',
      chosen: { rpm: '1200', feed: '0.1 mm' },
    }),
  ),
  atBench(
    operation('tap', 'tap column screws', {
      makes: [body('front column screw holes'), body('rear column screw holes')],
      cut: { ends: [at('Z', 'column seat'), at('Z', 'column seat', '-16 mm')] },
      chosen: { minutes: '12 min' },
    }),
    operation('tap', 'tap cap screws', {
      makes: [body('cap screw holes')],
      cut: { ends: [at('Z', 'crank line'), at('Z', 'crank line', '-10 mm')] },
      chosen: { minutes: '12 min' },
    }),
  ),
  hold(
    {
      name: 'line boring',
      machine: 'small mill',
      // 32 as cast, 40 bored.
      allowance: '4 mm',
      fellows: [
        {
          part: 'bearing cap',
          state: { after: 'saw the bar apart' },
          meets: [
            ['ram line', 'bore line'],
            ['front pedestal front', 'front face'],
            ['crank line', 'split face'],
          ],
        },
        {
          part: 'bearing cap',
          state: { after: 'saw the bar apart' },
          meets: [
            ['ram line', 'bore line'],
            ['rear pedestal front', 'front face'],
            ['crank line', 'split face'],
          ],
        },
      ],
      axis: 'Y',
      through: ['ram line', 'crank line'],
      holding: { as: 'clamped to the table', seat: at('Y', 'rear face') },
      note: 'Its underside against an angle plate, the front up.',
    },
    operation('bore', 'bore bearing seats', {
      makes: [body('bearing bores')],
      from: [at('Z', 'crank line'), at('Z', 'underside'), at('Y', 'front pedestal front')],
      cut: { ends: [at('Y', 'front pedestal front'), at('Y', 'rear pedestal rear')], diameter: size('bearing bore') },
      tool: '20 mm',
      overhang: '80 mm',
      note: 'Both pedestals in one pass, to the outside of the bearing that is in the hand.',
    }),
  ),
);

export const capsWithBase = route(
  'bearing cap',
  inSetupOf(
    'base',
    'line boring',
    operation('bore', 'bore with the base', {
      makes: [body('bore')],
      from: [at('Z', 'split face')],
      cut: { ends: [at('Y', 'front face'), at('Y', 'rear face')], diameter: size('bore') },
      tool: '20 mm',
      overhang: '80 mm',
    }),
  ),
);
