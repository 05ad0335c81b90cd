import { steel } from '../materials.ts';
import { at, atBench, body, hold, operation, route, size } from '../plan-sketch.ts';

export const flywheelRoute = route(
  'flywheel',
  hold(
    {
      name: 'boring',
      machine: 'bench lathe',
      allowance: '1.5 mm',
      axis: 'Y',
      through: ['axis', 'axis'],
      headEnd: 'high',
      holding: { as: 'face plate', seat: at('Y', 'rim rear', '17.5 mm') },
      fixtures: [
        {
          name: 'packing behind the rim',
          what: 'packing',
          // The hub stands out 14 behind the rim.
          ends: [at('Y', 'rim rear', '1.5 mm'), at('Y', 'rim rear', '17.5 mm')],
          shape: '160 mm',
          material: '',
        },
      ],
      note: 'Three pieces of packing under the rim, bolts through the holes of the web.',
    },
    operation('face', 'face hub in front', {
      makes: [at('Y', 'hub front')],
      cut: { ends: [at('Y', 'hub front', '-1.5 mm'), at('Y', 'hub front')], diameter: size('hub diameter') },
      tool: '8 mm',
      overhang: '12 mm',
    }),
    operation('face', 'face rim in front', {
      makes: [at('Y', 'rim front')],
      from: [at('Y', 'hub front')],
      cut: {
        ends: [at('Y', 'rim front', '-1.5 mm'), at('Y', 'rim front')],
        diameter: size('rim diameter'),
        inner: size('rim inside diameter'),
      },
      tool: '8 mm',
      overhang: '12 mm',
    }),
    operation('drill', 'drill bore', {
      makes: [body('bore')],
      from: [at('Y', 'hub front')],
      leaves: '0.75 mm',
      cut: { ends: [at('Y', 'hub front'), at('Y', 'hub rear')] },
      tool: '14.5 mm',
      overhang: '60 mm',
    }),
    operation('bore', 'bore hub', {
      makes: [body('bore')],
      from: [at('Y', 'hub front')],
      leaves: '0.1 mm',
      cut: { ends: [at('Y', 'hub front'), at('Y', 'hub rear')], diameter: size('bore') },
      tool: '12 mm',
      overhang: '48 mm',
      note: 'So that the reamer finds a true hole.',
    }),
    operation('ream', 'ream bore', {
      makes: [body('bore'), size('bore')],
      from: [at('Y', 'hub front')],
      cut: { ends: [at('Y', 'hub front'), at('Y', 'hub rear')] },
      tool: size('bore'),
      overhang: '60 mm',
    }),
  ),
  hold(
    {
      name: 'rim turning',
      machine: 'bench lathe',
      allowance: '1.5 mm',
      axis: 'Y',
      through: ['axis', 'axis'],
      holding: { as: 'between centres' },
      fixtures: [
        {
          name: 'mandrel',
          what: 'mandrel',
          ends: [at('Y', 'hub front', '-60 mm'), at('Y', 'hub rear', '40 mm')],
          shape: size('bore'),
          material: steel,
        },
        {
          name: 'driving dog',
          what: 'driving dog',
          ends: [at('Y', 'hub front', '-54 mm'), at('Y', 'hub front', '-42 mm')],
          shape: '45 mm',
          material: '',
        },
      ],
    },
    operation('turn', 'turn rim', {
      makes: [size('rim diameter')],
      from: [size('bore')],
      cut: { ends: [at('Y', 'rim front'), at('Y', 'rim rear')], diameter: size('rim diameter') },
      tool: '8 mm',
      overhang: '12 mm',
      note: 'Top slide along the bed and run out towards the headstock, so that the saddle stays clear of the rim.',
    }),
    operation('face', 'face rim behind', {
      makes: [at('Y', 'rim rear')],
      from: [at('Y', 'rim front')],
      cut: {
        ends: [at('Y', 'rim rear', '1.5 mm'), at('Y', 'rim rear')],
        diameter: size('rim diameter'),
        inner: size('rim inside diameter'),
      },
      tool: '8 mm',
      overhang: '12 mm',
    }),
    operation('face', 'face hub behind', {
      makes: [at('Y', 'hub rear')],
      from: [at('Y', 'hub front')],
      cut: {
        ends: [at('Y', 'hub rear', '1.5 mm'), at('Y', 'hub rear')],
        diameter: size('hub diameter'),
        inner: size('bore'),
      },
      tool: '8 mm',
      overhang: '12 mm',
    }),
    operation('turn', 'turn belt groove', {
      makes: [body('belt groove')],
      from: [at('Y', 'rim front')],
      cut: { ends: [at('Y', 'groove front'), at('Y', 'groove rear')], diameter: size('groove diameter') },
      tool: '10 mm',
      overhang: '15 mm',
      note: 'Plunged with a parting tool, then each side with the top slide set over by half the angle.',
    }),
  ),
  hold(
    {
      name: 'grub screw drilling',
      machine: 'bench drill',
      axis: 'Z',
      through: ['axis', 'grub screw line'],
      headEnd: 'high',
      holding: { as: 'vise', ends: [at('Y', 'rim front'), at('Y', 'rim rear')], depth: '30 mm' },
    },
    operation('drill', 'drill grub screw', {
      makes: [body('grub screw hole')],
      from: [at('Y', 'hub rear')],
      // To the wall of the bore.
      cut: { ends: [at('Z', 'hub top'), at('Z', 'axis', '8 mm')] },
      tool: '5 mm',
      overhang: '90 mm',
      note: 'The chuck stays outside of the rim.',
    }),
  ),
  atBench(
    operation('tap', 'tap grub screw', {
      makes: [body('grub screw hole')],
      cut: { ends: [at('Z', 'hub top'), at('Z', 'hub top', '-12 mm')] },
      chosen: { minutes: '6 min' },
    }),
    operation('file', 'cut keyway', {
      makes: [body('keyway')],
      from: [size('bore')],
      chosen: { minutes: '45 min' },
      note: 'Pushed through with a broach in a slotted bush, or filed.',
    }),
  ),
);
