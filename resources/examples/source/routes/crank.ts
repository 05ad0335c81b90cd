import { steel } from '../materials.ts';
import { at, atBench, body, hold, operation, route, size } from '../plan-sketch.ts';

/** Dog on the flywheel seat, which is turned last, so that both journals come off one setting. */
export const crankshaftRoute = route(
  'crankshaft',
  hold(
    {
      name: 'front centring',
      machine: 'bench lathe',
      allowance: '1 mm',
      axis: 'Y',
      through: ['axis', 'axis'],
      headEnd: 'high',
      holding: {
        as: 'three-jaw chuck',
        ends: [at('Y', 'front end', '35 mm'), at('Y', 'front end', '15 mm')],
        diameter: size('body'),
      },
    },
    operation('face', 'face front end', {
      cut: { ends: [at('Y', 'front end', '-1 mm'), at('Y', 'front end')], diameter: size('body') },
      tool: '8 mm',
      overhang: '12 mm',
    }),
    operation('drill', 'centre front end', {
      cut: { ends: [at('Y', 'front end'), at('Y', 'front end', '5 mm')] },
      tool: '2.5 mm',
      overhang: '25 mm',
    }),
  ),
  hold(
    {
      name: 'rear centring',
      machine: 'bench lathe',
      allowance: '1 mm',
      axis: 'Y',
      through: ['axis', 'axis'],
      holding: {
        as: 'three-jaw chuck',
        ends: [at('Y', 'rear end', '-35 mm'), at('Y', 'rear end', '-15 mm')],
        diameter: size('body'),
      },
    },
    operation('face', 'face rear end', {
      cut: { ends: [at('Y', 'rear end', '1 mm'), at('Y', 'rear end')], diameter: size('body') },
      tool: '8 mm',
      overhang: '12 mm',
    }),
    operation('drill', 'drill end thread', {
      makes: [body('end thread hole')],
      cut: { ends: [at('Y', 'rear end'), at('Y', 'end thread bottom')] },
      tool: '4.2 mm',
      overhang: '35 mm',
    }),
    operation('tap', 'tap end thread', {
      makes: [body('end thread hole')],
      // Not to the bottom.
      cut: { ends: [at('Y', 'rear end'), at('Y', 'rear end', '-10 mm')] },
      tool: size('end thread'),
      overhang: '40 mm',
      chosen: { minutes: '4 min', rpm: '60' },
    }),
    operation('countersink', 'sink for the centre', {
      after: ['tap end thread'],
      cut: { ends: [at('Y', 'rear end'), at('Y', 'rear end', '-2 mm')] },
      tool: '8 mm',
      overhang: '30 mm',
    }),
  ),
  hold(
    {
      name: 'journal turning',
      machine: 'bench lathe',
      // From 3/4 in to the disc's seat of 12.
      allowance: '3.6 mm',
      axis: 'Y',
      through: ['axis', 'axis'],
      headEnd: 'high',
      holding: { as: 'between centres' },
      fixtures: [
        {
          name: 'driving dog',
          what: 'driving dog',
          ends: [at('Y', 'rear end', '-14 mm'), at('Y', 'rear end', '-4 mm')],
          shape: '42 mm',
          material: steel,
        },
      ],
    },
    operation('turn', 'turn front journal', {
      // The end is faced already; its place is told by the shoulder, which is set off from it.
      makes: [size('journal'), at('Y', 'front bearing shoulder'), at('Y', 'front end')],
      cut: { ends: [at('Y', 'front end'), at('Y', 'front bearing shoulder')], diameter: size('journal') },
      tool: '10 mm',
      overhang: '15 mm',
    }),
    operation('turn', 'turn disc seat', {
      makes: [size('disc seat'), at('Y', 'disc shoulder')],
      from: [at('Y', 'front bearing shoulder')],
      cut: { ends: [at('Y', 'front end'), at('Y', 'disc shoulder')], diameter: size('disc seat') },
      tool: '10 mm',
      overhang: '15 mm',
    }),
    operation('turn', 'turn rear journal', {
      makes: [at('Y', 'rear bearing shoulder')],
      from: [at('Y', 'front bearing shoulder')],
      cut: { ends: [at('Y', 'rear bearing shoulder'), at('Y', 'flywheel shoulder')], diameter: size('journal') },
      tool: '10 mm',
      overhang: '15 mm',
      note: 'A left-hand tool: the dog is beyond.',
    }),
  ),
  hold(
    {
      name: 'seat turning',
      machine: 'bench lathe',
      allowance: '1.6 mm',
      axis: 'Y',
      through: ['axis', 'axis'],
      holding: { as: 'between centres' },
      fixtures: [
        {
          name: 'driving dog',
          what: 'driving dog',
          ends: [at('Y', 'front end', '1 mm'), at('Y', 'front end', '11 mm')],
          shape: '38 mm',
          material: steel,
        },
      ],
      note: 'A slip of brass under the screw of the dog.',
    },
    operation('turn', 'turn flywheel seat', {
      makes: [size('flywheel seat'), at('Y', 'flywheel shoulder'), at('Y', 'rear end')],
      from: [at('Y', 'rear bearing shoulder')],
      cut: { ends: [at('Y', 'flywheel shoulder'), at('Y', 'rear end')], diameter: size('flywheel seat') },
      tool: '8 mm',
      overhang: '12 mm',
    }),
  ),
  hold(
    {
      name: 'keyway milling',
      machine: 'small mill',
      axis: 'Y',
      through: ['axis', 'keyway mouth'],
      holding: { as: 'vise', ends: [at('X', 'axis', '-8 mm'), at('X', 'axis', '8 mm')], depth: '12 mm' },
    },
    operation('mill', 'mill keyway', {
      makes: [body('keyway')],
      from: [at('Y', 'flywheel shoulder'), size('flywheel seat')],
      cut: { ends: [at('Y', 'keyway front centre'), at('Y', 'keyway rear centre')], diameter: size('key width') },
      tool: size('key width'),
      overhang: '15 mm',
      teeth: 2,
      chosen: { minutes: '15 min' },
    }),
  ),
);

export const crankDiscRoute = route(
  'crank disc',
  hold(
    {
      name: 'turning from the bar',
      machine: 'bench lathe',
      allowance: '1 mm',
      axis: 'Y',
      through: ['shaft line', 'shaft line'],
      headEnd: 'high',
      holding: {
        as: 'three-jaw chuck',
        ends: [at('Y', 'rear face', '30 mm'), at('Y', 'rear face', '6 mm')],
        diameter: '62 mm',
      },
      fixtures: [
        {
          name: 'rest of the bar',
          what: 'other',
          ends: [at('Y', 'rear face'), at('Y', 'rear face', '30 mm')],
          shape: '62 mm',
          material: steel,
        },
      ],
    },
    operation('face', 'face front', {
      makes: [at('Y', 'front face')],
      leaves: '0.3 mm',
      cut: { ends: [at('Y', 'front face', '-1 mm'), at('Y', 'front face')], diameter: size('outside') },
      tool: '8 mm',
      overhang: '12 mm',
    }),
    operation('turn', 'turn outside', {
      makes: [size('outside')],
      from: [at('Y', 'front face')],
      cut: { ends: [at('Y', 'front face'), at('Y', 'rear face')], diameter: size('outside') },
      tool: '8 mm',
      overhang: '12 mm',
    }),
    operation('turn', 'chamfer front', {
      makes: [at('Y', 'front chamfer end')],
      from: [at('Y', 'front face')],
      cut: { ends: [at('Y', 'front face'), at('Y', 'front chamfer end')], diameter: size('outside') },
      tool: '8 mm',
      overhang: '12 mm',
    }),
    operation('drill', 'drill shaft bore', {
      makes: [body('shaft bore')],
      from: [at('Y', 'front face')],
      cut: { ends: [at('Y', 'front face'), at('Y', 'rear face')] },
      tool: '11.7 mm',
      overhang: '45 mm',
      chosen: { rpm: '400', feed: '0.1 mm' },
    }),
    operation('ream', 'ream shaft bore', {
      makes: [body('shaft bore'), size('shaft bore')],
      cut: { ends: [at('Y', 'front face'), at('Y', 'rear face')] },
      tool: size('shaft bore'),
      overhang: '45 mm',
    }),
    operation('face', 'part off', {
      makes: [at('Y', 'rear face')],
      leaves: '0.5 mm',
      cut: {
        ends: [at('Y', 'rear face', '0.5 mm'), at('Y', 'rear face', '3.5 mm')],
        diameter: size('outside'),
        inner: size('shaft bore'),
      },
      tool: '20 mm',
      overhang: '28 mm',
      chosen: { depth: '3 mm', feed: '0.04 mm', rpm: '150' },
    }),
  ),
  hold(
    {
      name: 'rear facing',
      machine: 'bench lathe',
      allowance: '0.5 mm',
      axis: 'Y',
      through: ['shaft line', 'shaft line'],
      holding: {
        as: 'three-jaw chuck',
        ends: [at('Y', 'front face'), at('Y', 'front face', '7 mm')],
        diameter: size('outside'),
      },
    },
    operation('face', 'face rear', {
      makes: [at('Y', 'rear face')],
      from: [at('Y', 'front face')],
      cut: {
        ends: [at('Y', 'rear face', '0.5 mm'), at('Y', 'rear face')],
        diameter: size('outside'),
        inner: size('shaft bore'),
      },
      tool: '8 mm',
      overhang: '12 mm',
    }),
    operation('turn', 'chamfer rear', {
      makes: [at('Y', 'rear chamfer end'), body('disc')],
      from: [at('Y', 'rear face')],
      cut: { ends: [at('Y', 'rear chamfer end'), at('Y', 'rear face')], diameter: size('outside') },
      tool: '8 mm',
      overhang: '12 mm',
    }),
  ),
  hold(
    {
      name: 'pin drilling',
      machine: 'bench drill',
      axis: 'Y',
      through: ['shaft line', 'pin line'],
      holding: { as: 'clamped to the table', seat: at('Y', 'rear face') },
    },
    operation('drill', 'drill pin hole', {
      makes: [body('pin hole')],
      from: [at('Y', 'rear face'), size('shaft bore')],
      cut: { ends: [at('Y', 'front face'), at('Y', 'rear face')] },
      tool: '6.8 mm',
      overhang: '45 mm',
      note: 'The throw is set off with a button in the bore.',
    }),
  ),
  hold(
    {
      name: 'cross drilling',
      machine: 'bench drill',
      fellows: [
        {
          part: 'crankshaft',
          state: 'finished',
          meets: [
            ['shaft line', 'axis'],
            ['rear face', 'disc shoulder'],
            ['shaft line', 'axis'],
          ],
        },
      ],
      axis: 'Z',
      through: ['shaft line', 'cross pin line'],
      holding: { as: 'vise', ends: [at('Y', 'front face'), at('Y', 'rear face')], depth: '20 mm' },
    },
    operation('drill', 'drill cross pin', {
      makes: [body('cross pin hole')],
      from: [at('Y', 'rear face')],
      cut: { ends: [at('Z', 'bottom'), at('Z', 'shaft line')] },
      tool: '3 mm',
      overhang: '45 mm',
    }),
    operation('ream', 'ream cross pin', {
      makes: [body('cross pin hole'), size('cross pin')],
      cut: { ends: [at('Z', 'bottom'), at('Z', 'shaft line')] },
      tool: size('cross pin'),
      overhang: '45 mm',
    }),
  ),
  hold(
    {
      name: 'facing in place',
      machine: 'bench lathe',
      allowance: '0.3 mm',
      fellows: [
        {
          part: 'crankshaft',
          state: 'finished',
          meets: [
            ['shaft line', 'axis'],
            ['rear face', 'disc shoulder'],
            ['shaft line', 'axis'],
          ],
        },
      ],
      axis: 'Y',
      through: ['shaft line', 'shaft line'],
      headEnd: 'high',
      holding: {
        as: 'three-jaw chuck',
        // The shaft's body begins 17.5 behind the disc and is 48 long.
        ends: [at('Y', 'rear face', '62 mm'), at('Y', 'rear face', '20 mm')],
        diameter: '3/4"',
      },
    },
    operation('face', 'face front true', {
      makes: [at('Y', 'front face')],
      from: [at('Y', 'rear face')],
      cut: { ends: [at('Y', 'front face', '-0.3 mm'), at('Y', 'front face')], diameter: size('outside') },
      tool: '8 mm',
      overhang: '12 mm',
    }),
  ),
  atBench(operation('tap', 'tap pin hole', { makes: [body('pin hole')], chosen: { minutes: '6 min' } })),
);

export const crankPinRoute = route(
  'crank pin',
  hold(
    {
      name: 'shank turning',
      machine: 'bench lathe',
      // From 3/8 in to the undercut.
      allowance: '1.8 mm',
      axis: 'Y',
      through: ['axis', 'axis'],
      headEnd: 'low',
      holding: {
        as: 'three-jaw chuck',
        ends: [at('Y', 'shoulder', '-24 mm'), at('Y', 'shoulder', '-4 mm')],
        diameter: size('diameter'),
      },
      fixtures: [
        {
          name: 'rest of the bar',
          what: 'other',
          ends: [at('Y', 'journal end', '-60 mm'), at('Y', 'journal end')],
          shape: size('diameter'),
          material: steel,
        },
      ],
    },
    operation('face', 'face shank end', {
      makes: [at('Y', 'shank end')],
      cut: { ends: [at('Y', 'shank end', '0.5 mm'), at('Y', 'shank end')], diameter: size('diameter') },
      tool: '8 mm',
      overhang: '12 mm',
      chosen: { depth: '0.5 mm' },
    }),
    operation('turn', 'turn shank', {
      makes: [at('Y', 'shoulder')],
      from: [at('Y', 'shank end')],
      cut: { ends: [at('Y', 'shoulder'), at('Y', 'shank end')], diameter: size('shank thread') },
      tool: '8 mm',
      overhang: '12 mm',
    }),
    operation('turn', 'undercut', {
      makes: [size('undercut diameter'), at('Y', 'undercut end')],
      from: [at('Y', 'shoulder')],
      cut: { ends: [at('Y', 'shoulder'), at('Y', 'undercut end')], diameter: size('undercut diameter') },
      tool: '8 mm',
      overhang: '12 mm',
    }),
    operation('tap', 'cut thread with the die', {
      makes: [size('shank thread')],
      cut: { ends: [at('Y', 'undercut end'), at('Y', 'shank end')] },
      tool: size('shank thread'),
      overhang: '30 mm',
      chosen: { rpm: '60', minutes: '5 min' },
      note: 'Die in the tailstock, turned by hand.',
    }),
  ),
  hold(
    {
      name: 'end facing',
      machine: 'bench lathe',
      allowance: '0.5 mm',
      axis: 'Y',
      through: ['axis', 'axis'],
      headEnd: 'high',
      holding: {
        as: 'three-jaw chuck',
        ends: [at('Y', 'shoulder'), at('Y', 'journal end', '4 mm')],
        diameter: size('diameter'),
      },
      note: 'A slip of brass between the journal and the jaws; the shank goes into the chuck.',
    },
    operation('face', 'face journal end', {
      makes: [at('Y', 'journal end'), body('pin')],
      from: [at('Y', 'shoulder')],
      cut: { ends: [at('Y', 'journal end', '-0.5 mm'), at('Y', 'journal end')], diameter: size('diameter') },
      tool: '8 mm',
      overhang: '12 mm',
    }),
  ),
  atBench(
    operation('file', 'file spanner flats', {
      makes: [body('spanner flats')],
      from: [at('Y', 'journal end')],
      chosen: { minutes: '15 min' },
      note: 'Then hardened, and polished.',
    }),
  ),
);
