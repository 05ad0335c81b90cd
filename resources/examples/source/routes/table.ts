import { steel } from '../materials.ts';
import { at, atBench, body, type FixtureSketch, hold, operation, route, size } from '../plan-sketch.ts';

export const tableRoute = route(
  'table',
  hold(
    {
      name: 'top shaping',
      machine: 'hand shaper',
      allowance: '2 mm',
      axis: 'X',
      through: ['file line', 'top face'],
      holding: { as: 'clamped to the table', seat: at('Z', 'rim underside') },
      note: 'The lugs hang between two parallels.',
    },
    operation('shape', 'shape top', {
      makes: [at('Z', 'top face')],
      from: [at('Z', 'rim underside')],
      cut: { ends: [at('X', 'left edge'), at('X', 'right edge')], diameter: size('depth') },
      tool: '12 mm',
      overhang: '18 mm',
      chosen: { rpm: '40' },
    }),
  ),
  hold(
    {
      name: 'lug milling',
      machine: 'small mill',
      allowance: '1.5 mm',
      axis: 'Y',
      through: ['file line', 'pivot line'],
      holding: { as: 'clamped to the table', seat: at('Z', 'top face') },
    },
    operation('mill', 'mill outsides of lugs', {
      makes: [at('X', 'left lug outside'), at('X', 'right lug outside')],
      from: [at('Z', 'top face')],
      cut: { ends: [at('Y', 'lug front'), at('Y', 'lug rear')], diameter: '24 mm' },
      tool: '16 mm',
      overhang: '45 mm',
      teeth: 4,
    }),
  ),
  hold(
    {
      name: 'trunnion boring',
      machine: 'bench lathe',
      axis: 'X',
      through: ['file line', 'pivot line'],
      holding: { as: 'face plate', seat: at('X', 'left edge', '-3 mm') },
      fixtures: [
        {
          name: 'angle plate',
          what: 'angle plate',
          ends: [at('X', 'left edge', '-3 mm'), at('X', 'right edge', '-15 mm')],
          // Its face lies against the top face, 27 above the pivots.
          shape: [
            [-50, 50],
            [27, 42],
          ],
          material: 'grey iron',
        },
        {
          name: 'balance weight',
          what: 'balance weight',
          ends: [at('X', 'left edge', '-3 mm'), at('X', 'left edge', '37 mm')],
          shape: [
            [-35, 35],
            [-80, -45],
          ],
          material: steel,
        },
      ],
      note: 'Top against an angle plate: both bores at one setting, in line and level with the top.',
    },
    operation('drill', 'drill right trunnion', {
      makes: [body('pivot holes'), at('Z', 'pivot line')],
      from: [at('Z', 'top face'), at('X', 'right lug outside')],
      cut: { ends: [at('X', 'right lug outside'), at('X', 'right lug inside')] },
      tool: '6.8 mm',
      overhang: '50 mm',
      chosen: { rpm: '200' },
    }),
    operation('drill', 'drill left trunnion', {
      from: [at('Z', 'top face')],
      after: ['drill right trunnion'],
      cut: { ends: [at('X', 'left lug inside'), at('X', 'left lug outside')] },
      tool: '6.8 mm',
      overhang: '125 mm',
      chosen: { rpm: '200' },
      note: 'A long drill, through the bore of the right lug.',
    }),
  ),
  hold(
    {
      name: 'slot milling',
      machine: 'small mill',
      axis: 'Y',
      through: ['file line', 'top face'],
      holding: { as: 'clamped to the table', seat: at('Z', 'top face') },
    },
    operation('drill', 'drill file slot', {
      cut: { ends: [at('Y', 'file line', '-6 mm'), at('Y', 'file line', '6 mm')] },
      tool: '10 mm',
      overhang: '60 mm',
    }),
    operation('mill', 'mill file slot', {
      makes: [body('file slot')],
      from: [at('Z', 'top face'), at('X', 'right lug outside')],
      cut: { ends: [at('Y', 'slot front'), at('Y', 'slot rear')], diameter: size('slot width') },
      tool: '10 mm',
      overhang: '40 mm',
      teeth: 2,
      chosen: { minutes: '12 min' },
    }),
  ),
  atBench(
    operation('file', 'square the corners of the slot', {
      makes: [body('file slot')],
      chosen: { minutes: '20 min' },
    }),
    operation('tap', 'tap trunnions', { makes: [body('pivot holes')], chosen: { minutes: '8 min' } }),
  ),
);

/** Both alike. */
export const trunnionBracketRoute = route(
  'trunnion bracket',
  hold(
    {
      name: 'foot shaping',
      machine: 'hand shaper',
      allowance: '2 mm',
      axis: 'Y',
      through: ['inner face', 'foot'],
      holding: { as: 'vise', ends: [at('X', 'inner face'), at('X', 'cheek outside')], depth: '30 mm' },
    },
    operation('shape', 'shape foot', {
      makes: [at('Z', 'foot')],
      cut: { ends: [at('Y', 'foot front'), at('Y', 'foot rear')], diameter: size('foot width') },
      tool: '10 mm',
      overhang: '15 mm',
      chosen: { rpm: '40' },
    }),
  ),
  hold(
    {
      name: 'inner face shaping',
      machine: 'hand shaper',
      allowance: '2 mm',
      axis: 'Z',
      through: ['inner face', 'pivot line'],
      holding: { as: 'vise', ends: [at('Y', 'foot front'), at('Y', 'foot rear')], depth: '15 mm' },
    },
    operation('shape', 'shape inner face', {
      makes: [at('X', 'inner face')],
      from: [at('Z', 'foot')],
      cut: { ends: [at('Z', 'foot'), at('Z', 'crown')], diameter: size('foot length') },
      tool: '10 mm',
      overhang: '15 mm',
      chosen: { rpm: '40' },
    }),
  ),
  hold(
    {
      name: 'pivot boring',
      machine: 'bench lathe',
      allowance: '2 mm',
      axis: 'X',
      through: ['pivot line', 'pivot line'],
      holding: { as: 'face plate', seat: at('X', 'inner face', '-5 mm') },
      fixtures: [
        {
          name: 'parallel',
          what: 'packing',
          ends: [at('X', 'inner face', '-5 mm'), at('X', 'inner face')],
          shape: [
            [-30, 30],
            [-48, -38],
          ],
          material: steel,
        },
        {
          name: 'stop under the foot',
          what: 'other',
          ends: [at('X', 'inner face', '-5 mm'), at('X', 'inner face', '15 mm')],
          shape: [
            [-20, 20],
            [-60, -48],
          ],
          material: steel,
        },
        {
          name: 'balance weight',
          what: 'balance weight',
          ends: [at('X', 'inner face', '-5 mm'), at('X', 'inner face', '20 mm')],
          shape: [
            [-20, 20],
            [45, 65],
          ],
          material: steel,
        },
      ],
      note: 'Strapped down by the foot, which rests on the stop: the second bracket comes to the same height.',
    },
    operation('drill', 'drill pivot bore', {
      makes: [body('pivot bore')],
      from: [at('X', 'inner face'), at('Z', 'foot')],
      cut: { ends: [at('X', 'boss outside', '2 mm'), at('X', 'inner face')] },
      tool: '9.2 mm',
      overhang: '50 mm',
      chosen: { rpm: '500', feed: '0.12 mm' },
    }),
    operation('ream', 'ream pivot bore', {
      makes: [body('pivot bore'), at('Z', 'pivot line')],
      from: [at('X', 'inner face'), at('Z', 'foot')],
      cut: { ends: [at('X', 'boss outside', '2 mm'), at('X', 'inner face')] },
      tool: size('pivot bore'),
      overhang: '55 mm',
      chosen: { rpm: '250' },
    }),
    operation('counterbore', 'face boss', {
      makes: [at('X', 'boss outside')],
      from: [at('X', 'inner face')],
      cut: { ends: [at('X', 'boss outside', '2 mm'), at('X', 'boss outside')] },
      tool: size('boss diameter'),
      overhang: '45 mm',
      chosen: { rpm: '250', feed: '0.06 mm' },
      note: 'With a pilot in the bore; from the saddle the foot would strike the tool’s block.',
    }),
  ),
  hold(
    {
      name: 'screw drilling',
      machine: 'bench drill',
      axis: 'Z',
      through: ['foot screws', 'rear screw'],
      headEnd: 'high',
      holding: { as: 'clamped to the table', seat: at('Z', 'foot') },
    },
    operation('drill', 'drill foot screws', {
      makes: [body('foot screw holes')],
      from: [at('Z', 'foot'), at('X', 'inner face')],
      cut: { ends: [at('Z', 'foot top'), at('Z', 'foot')] },
      tool: size('foot screw hole'),
      overhang: '65 mm',
      chosen: { feed: '0.1 mm' },
      note: 'The chuck stays above the boss.',
    }),
    operation('counterbore', 'spot face foot screws', {
      makes: [body('foot screw holes')],
      cut: { ends: [at('Z', 'foot top'), at('Z', 'foot top', '-1 mm')] },
      tool: size('foot screw spot face'),
      overhang: '65 mm',
    }),
  ),
);

/** Held by the head, which stays as bought; a centre steadies it, for it stands out by more than four times its thread. */
export const tablePivotRoute = route(
  'table pivot',
  hold(
    {
      name: 'end facing',
      machine: 'bench lathe',
      allowance: '1 mm',
      axis: 'X',
      through: ['axis', 'axis'],
      headEnd: 'high',
      holding: {
        as: 'three-jaw chuck',
        ends: [at('X', 'head end', '22 mm'), at('X', 'head end', '2 mm')],
        diameter: size('head'),
      },
      fixtures: [restOfBar(120)],
    },
    operation('face', 'face end', {
      cut: { ends: [at('X', 'thread end', '-1 mm'), at('X', 'thread end')], diameter: size('head') },
      tool: '8 mm',
      overhang: '12 mm',
    }),
    operation('drill', 'centre', {
      cut: { ends: [at('X', 'thread end'), at('X', 'thread end', '3.5 mm')] },
      tool: '2 mm',
      overhang: '25 mm',
    }),
  ),
  hold(
    {
      name: 'journal turning',
      machine: 'bench lathe',
      // From the bar of 3/4 in to the thread.
      allowance: '5.6 mm',
      axis: 'X',
      through: ['axis', 'axis'],
      headEnd: 'high',
      holding: {
        as: 'three-jaw chuck',
        ends: [at('X', 'head end', '25 mm'), at('X', 'head end', '5 mm')],
        diameter: size('head'),
        tailCentre: true,
      },
      fixtures: [restOfBar(120)],
    },
    operation('turn', 'turn journal', {
      makes: [size('journal'), at('X', 'head shoulder')],
      cut: { ends: [at('X', 'thread end'), at('X', 'head shoulder')], diameter: size('journal') },
      tool: '12 mm',
      overhang: '18 mm',
    }),
    operation('turn', 'turn for thread', {
      // The end is faced already; its place is told by the shoulder, which is set off from it.
      makes: [at('X', 'journal shoulder'), at('X', 'thread end'), body('pin')],
      cut: { ends: [at('X', 'thread end'), at('X', 'journal shoulder')], diameter: size('end thread') },
      tool: '12 mm',
      overhang: '18 mm',
    }),
  ),
  hold(
    {
      name: 'threading',
      machine: 'bench lathe',
      allowance: '0.5 mm',
      axis: 'X',
      through: ['axis', 'axis'],
      headEnd: 'high',
      holding: {
        as: 'three-jaw chuck',
        ends: [at('X', 'head end', '25 mm'), at('X', 'head end', '5 mm')],
        diameter: size('head'),
      },
      fixtures: [restOfBar(120)],
      note: 'The centre taken away; the die in the tailstock, turned by hand.',
    },
    operation('tap', 'cut thread with the die', {
      makes: [size('end thread')],
      from: [at('X', 'journal shoulder')],
      cut: { ends: [at('X', 'thread end'), at('X', 'journal shoulder')] },
      tool: size('end thread'),
      overhang: '30 mm',
      chosen: { rpm: '60', minutes: '5 min' },
    }),
    operation('face', 'part off', {
      makes: [at('X', 'head end')],
      leaves: '0.3 mm',
      cut: { ends: [at('X', 'head end', '0.3 mm'), at('X', 'head end', '2.3 mm')], diameter: size('head') },
      tool: '12 mm',
      overhang: '18 mm',
      chosen: { depth: '2 mm', feed: '0.03 mm', rpm: '300' },
    }),
  ),
  hold(
    {
      name: 'head facing',
      machine: 'bench lathe',
      allowance: '0.3 mm',
      axis: 'X',
      through: ['axis', 'axis'],
      holding: {
        as: 'three-jaw chuck',
        ends: [at('X', 'journal shoulder', '1 mm'), at('X', 'head shoulder', '-1 mm')],
        diameter: size('journal'),
      },
      note: 'A slip of brass between the journal and the jaws.',
    },
    operation('face', 'face head', {
      makes: [at('X', 'head end')],
      from: [at('X', 'head shoulder')],
      cut: { ends: [at('X', 'head end', '0.3 mm'), at('X', 'head end')], diameter: size('head') },
      tool: '8 mm',
      overhang: '12 mm',
    }),
  ),
  atBench(
    operation('saw', 'saw screwdriver slot', {
      makes: [body('screwdriver slot')],
      cut: { ends: [at('Z', 'head bottom'), at('Z', 'head top')], diameter: size('slot depth') },
      chosen: { minutes: '4 min' },
    }),
  ),
);

function restOfBar(length: number): FixtureSketch {
  const ends = [at('X', 'head end'), at('X', 'head end', `${length} mm`)] as const;
  return { name: 'rest of the bar', what: 'other', ends, shape: size('head'), material: steel };
}
