import { brass } from '../materials.ts';
import { at, atBench, body, hold, operation, route, size } from '../plan-sketch.ts';

export const yokeRoute = route(
  'yoke',
  hold(
    {
      name: 'front shaping',
      machine: 'hand shaper',
      allowance: '1.5 mm',
      axis: 'X',
      through: ['ram line', 'slot line'],
      holding: { as: 'vise', ends: [at('Z', 'bottom'), at('Z', 'body top')], depth: '10 mm' },
    },
    operation('shape', 'shape front', {
      makes: [at('Y', 'front face')],
      cut: { ends: [at('X', 'left end'), at('X', 'right end')], diameter: '36 mm' },
      tool: '10 mm',
      overhang: '15 mm',
      chosen: { rpm: '40' },
    }),
  ),
  hold(
    {
      name: 'rear shaping',
      machine: 'hand shaper',
      allowance: '1.5 mm',
      axis: 'X',
      through: ['ram line', 'slot line'],
      holding: { as: 'vise', ends: [at('Z', 'bottom'), at('Z', 'body top')], depth: '10 mm' },
      note: 'On a parallel, the front down.',
    },
    operation('shape', 'shape rear', {
      makes: [at('Y', 'rear face')],
      from: [at('Y', 'front face')],
      cut: { ends: [at('X', 'left end'), at('X', 'right end')], diameter: '36 mm' },
      tool: '10 mm',
      overhang: '15 mm',
      chosen: { rpm: '40' },
    }),
  ),
  hold(
    {
      name: 'socket boring',
      machine: 'bench lathe',
      allowance: '1.5 mm',
      axis: 'Z',
      through: ['ram line', 'ram line'],
      holding: { as: 'four-jaw chuck', ends: [at('Z', 'bottom'), at('Z', 'body top')], diameter: size('width') },
    },
    operation('face', 'face boss', {
      makes: [at('Z', 'boss top')],
      from: [at('Y', 'front face')],
      cut: { ends: [at('Z', 'boss top', '1.5 mm'), at('Z', 'boss top')], diameter: size('boss diameter') },
      tool: '8 mm',
      overhang: '12 mm',
    }),
    operation('drill', 'drill socket', {
      makes: [body('ram socket')],
      from: [at('Z', 'boss top')],
      cut: { ends: [at('Z', 'boss top'), at('Z', 'socket floor')] },
      tool: '7.7 mm',
      overhang: '45 mm',
    }),
    operation('ream', 'ream socket', {
      makes: [body('ram socket'), size('ram socket')],
      cut: { ends: [at('Z', 'boss top'), at('Z', 'socket floor')] },
      tool: size('ram socket'),
      overhang: '45 mm',
    }),
  ),
  hold(
    {
      name: 'slot milling',
      machine: 'small mill',
      axis: 'X',
      through: ['front face', 'slot line'],
      holding: { as: 'vise', ends: [at('Z', 'bottom'), at('Z', 'body top')], depth: '12 mm' },
    },
    operation('mill', 'mill slot', {
      makes: [body('slot')],
      from: [at('Y', 'front face'), size('ram socket')],
      cut: { ends: [at('X', 'slot left'), at('X', 'slot right')], diameter: size('slot width') },
      tool: '9 mm',
      overhang: '30 mm',
      teeth: 2,
      chosen: { minutes: '25 min' },
    }),
  ),
  hold(
    {
      name: 'clamp drilling',
      machine: 'bench drill',
      axis: 'Y',
      through: ['ram line', 'clamp line'],
      holding: { as: 'vise', ends: [at('X', 'left end'), at('X', 'right end')], depth: '10 mm' },
    },
    operation('drill', 'drill clamp screw', {
      makes: [body('clamp screw hole')],
      from: [at('Z', 'boss top')],
      // To the wall of the socket.
      cut: { ends: [at('Y', 'boss front'), at('Y', 'ram line', '-4 mm')] },
      tool: '3.3 mm',
      overhang: '35 mm',
    }),
  ),
  atBench(
    operation('tap', 'tap clamp screw', {
      makes: [body('clamp screw hole')],
      cut: { ends: [at('Y', 'boss front'), at('Y', 'ram line', '-4 mm')] },
      chosen: { minutes: '4 min' },
    }),
  ),
);

export const ramRoute = route(
  'ram',
  hold(
    {
      name: 'spigot turning',
      machine: 'bench lathe',
      // From 5/8 in to 5/16 in.
      allowance: '4 mm',
      axis: 'Z',
      through: ['axis', 'axis'],
      headEnd: 'high',
      holding: {
        as: 'three-jaw chuck',
        ends: [at('Z', 'spigot shoulder', '32 mm'), at('Z', 'spigot shoulder', '12 mm')],
        diameter: size('diameter'),
      },
    },
    operation('face', 'face lower end', {
      makes: [at('Z', 'lower end')],
      cut: { ends: [at('Z', 'lower end', '-1 mm'), at('Z', 'lower end')], diameter: size('diameter') },
      tool: '8 mm',
      overhang: '12 mm',
      chosen: { depth: '1 mm' },
    }),
    operation('turn', 'turn spigot', {
      makes: [size('spigot diameter'), at('Z', 'spigot shoulder')],
      from: [at('Z', 'lower end')],
      cut: { ends: [at('Z', 'lower end'), at('Z', 'spigot shoulder')], diameter: size('spigot diameter') },
      tool: '8 mm',
      overhang: '12 mm',
    }),
  ),
  hold(
    {
      name: 'upper facing',
      machine: 'bench lathe',
      allowance: '1 mm',
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
      cut: { ends: [at('Z', 'upper end', '1 mm'), at('Z', 'upper end')], diameter: size('diameter') },
      tool: '8 mm',
      overhang: '12 mm',
    }),
  ),
  hold(
    {
      name: 'clamp drilling',
      machine: 'bench drill',
      axis: 'Y',
      through: ['axis', 'file clamp line'],
      holding: { as: 'vise', ends: [at('X', 'left'), at('X', 'right')], depth: '12 mm' },
    },
    operation('drill', 'drill clamp screw', {
      makes: [body('clamp screw hole')],
      from: [at('Z', 'upper end')],
      cut: { ends: [at('Y', 'front'), at('Y', 'axis')] },
      tool: '4.2 mm',
      overhang: '40 mm',
    }),
  ),
  hold(
    {
      name: 'flat milling',
      machine: 'small mill',
      axis: 'Z',
      through: ['axis', 'clamp flat'],
      holding: { as: 'vise', ends: [at('X', 'left'), at('X', 'right')], depth: '10 mm' },
      note: 'Squared up by the clamp screw, a rod in its hole.',
    },
    operation('mill', 'mill clamp flat', {
      makes: [body('clamp flat')],
      from: [at('Z', 'lower end')],
      cut: { ends: [at('Z', 'flat lower end'), at('Z', 'flat upper end')], diameter: size('spigot diameter') },
      tool: '6 mm',
      overhang: '20 mm',
      teeth: 2,
      chosen: { minutes: '6 min' },
    }),
  ),
  atBench(
    operation('file', 'file socket', {
      makes: [body('file socket')],
      from: [at('Z', 'upper end')],
      chosen: { minutes: '45 min' },
      note: 'Three holes of 3 mm beside one another, drilled and filed out to the file’s tang.',
    }),
    operation('tap', 'tap clamp screw', { makes: [body('clamp screw hole')], chosen: { minutes: '4 min' } }),
  ),
);

/** The tip is turned with the head in the jaws: close to them it does not give way. */
export const clampScrewRoute = route(
  'clamp screw',
  hold(
    {
      name: 'shank turning',
      machine: 'bench lathe',
      // From 1/2 in to M5.
      allowance: '3.9 mm',
      axis: 'Z',
      through: ['axis', 'axis'],
      headEnd: 'high',
      holding: {
        as: 'three-jaw chuck',
        ends: [at('Z', 'head top', '25 mm'), at('Z', 'head top', '5 mm')],
        diameter: size('head diameter'),
      },
      fixtures: [
        {
          name: 'rest of the bar',
          what: 'other',
          ends: [at('Z', 'head top'), at('Z', 'head top', '80 mm')],
          shape: size('head diameter'),
          material: brass,
        },
      ],
    },
    operation('face', 'face tip', {
      makes: [at('Z', 'tip')],
      cut: { ends: [at('Z', 'tip', '-1 mm'), at('Z', 'tip')], diameter: size('head diameter') },
      tool: '8 mm',
      overhang: '12 mm',
      chosen: { depth: '1 mm' },
    }),
    operation('turn', 'rough the shank', {
      leaves: '0.25 mm',
      makes: [at('Z', 'under head')],
      from: [at('Z', 'tip')],
      cut: { ends: [at('Z', 'tip'), at('Z', 'under head')], diameter: '5.5 mm' },
      tool: '8 mm',
      overhang: '12 mm',
    }),
    operation('face', 'part off', {
      makes: [at('Z', 'head top')],
      leaves: '0.3 mm',
      cut: { ends: [at('Z', 'head top', '0.3 mm'), at('Z', 'head top', '2.3 mm')], diameter: size('head diameter') },
      tool: '8 mm',
      overhang: '12 mm',
      chosen: { depth: '2 mm', feed: '0.03 mm', rpm: '600' },
    }),
  ),
  hold(
    {
      name: 'head facing',
      machine: 'bench lathe',
      allowance: '0.3 mm',
      axis: 'Z',
      through: ['axis', 'axis'],
      holding: {
        as: 'three-jaw chuck',
        ends: [at('Z', 'tip', '2 mm'), at('Z', 'under head', '-0.5 mm')],
        diameter: '5.5 mm',
      },
    },
    operation('face', 'face head', {
      makes: [at('Z', 'head top')],
      cut: { ends: [at('Z', 'head top', '0.3 mm'), at('Z', 'head top')], diameter: size('head diameter') },
      tool: '8 mm',
      overhang: '12 mm',
    }),
  ),
  hold(
    {
      name: 'tip turning',
      machine: 'bench lathe',
      allowance: '1 mm',
      axis: 'Z',
      through: ['axis', 'axis'],
      headEnd: 'high',
      holding: {
        as: 'three-jaw chuck',
        ends: [at('Z', 'head top'), at('Z', 'under head', '0.5 mm')],
        diameter: size('head diameter'),
      },
      note: 'A slip of brass under the jaws.',
    },
    operation('turn', 'turn shank', {
      makes: [at('Z', 'under head')],
      from: [at('Z', 'tip')],
      cut: { ends: [at('Z', 'tip'), at('Z', 'under head')], diameter: size('shank thread') },
      tool: '8 mm',
      overhang: '12 mm',
    }),
    operation('turn', 'turn tip', {
      makes: [size('tip diameter'), at('Z', 'tip shoulder'), body('screw')],
      from: [at('Z', 'tip')],
      cut: { ends: [at('Z', 'tip'), at('Z', 'tip shoulder')], diameter: size('tip diameter') },
      tool: '8 mm',
      overhang: '12 mm',
    }),
    operation('tap', 'cut thread with the die', {
      makes: [size('shank thread')],
      from: [at('Z', 'tip shoulder')],
      cut: { ends: [at('Z', 'tip shoulder'), at('Z', 'under head')] },
      tool: size('shank thread'),
      overhang: '25 mm',
      chosen: { rpm: '60', minutes: '4 min' },
      note: 'Die in the tailstock, turned by hand.',
    }),
  ),
);
