import { aluminium, silverSteel } from '../materials.ts';
import {
  angle,
  axis,
  cast,
  centre,
  count,
  derived,
  diameter,
  face,
  length,
  measured,
  pair,
  part,
  radius,
  thread,
  tie,
  within,
} from '../sketch.ts';

/**
 * Rises behind the table and carries the guide of the upper rod over it. Its seat lies on the column's arm seat (Y 30 of
 * the machine) and its lower screws at Z 169: 28 (base) + 197 (column) - 16 - 40.
 */
export const overArm = part(
  {
    name: 'over-arm',
    number: 'BFM-05',
    sheet: '5',
    make: 'cast',
    material: aluminium,
    note: 'The rod bore is bored after the seat is flat, the arm on an angle plate; it is too long in the throat to be passed over.',
  },
  [
    axis(
      'Z',
      centre('lower screws'),
      centre('upper screws'),
      face('pad bottom'),
      face('pad top'),
      face('boss lower face'),
      face('boss upper face'),
      face('arm underside'),
      face('arm top'),
      tie('screw pitch', 'lower screws', 'upper screws', '"arm screw pitch" of "guide column"', derived),
      tie('pad foot', 'lower screws', 'pad bottom', '-15', cast),
      tie('pad length', 'pad bottom', 'pad top', '70', cast),
      // The rod's end stays 6 mm under its guide at the top of the stroke: 40 + 16 + 5 + 32 + 120 + 6 = 219.
      tie(
        'boss height',
        'lower screws',
        'boss lower face',
        '"arm screw pitch" of "guide column" - "arm screw depth" of "guide column"' +
          ' + projection of ram + stroke of ram + "file free length" of ram + 6 mm',
        derived,
      ),
      tie('boss length', 'boss lower face', 'boss upper face', '50'),
      tie('arm depth', 'arm underside', 'arm top', '30', cast),
      tie('arm setback', 'boss upper face', 'arm top', '-6', cast),
    ),
    axis(
      'X',
      centre('rod line'),
      pair('pad width', ['pad left', 'pad right'], 'face', '"arm pad width" of "guide column"', cast, derived),
      pair('post width', ['post left', 'post right'], 'face', '26', cast),
      pair(
        'screw spacing',
        ['left screws', 'right screws'],
        'centreline',
        '"arm screw spacing" of "guide column"',
        derived,
      ),
    ),
    axis(
      'Y',
      face('seat'),
      face('pad rear'),
      centre('rod line'),
      face('post front'),
      face('post rear'),
      tie('pad thickness', 'seat', 'pad rear', '12', cast),
      tie('rod reach', 'rod line', 'seat', '"arm seat distance" of "guide column"', within('±0.1'), derived),
      tie('throat', 'rod line', 'post front', '72', cast),
      tie('post thickness', 'post front', 'post rear', '18', cast),
    ),
  ],
  [
    diameter('rod bore', 'diameter of "upper rod" + "running clearance" of "guide column"', within('+0.02/0')),
    diameter('boss diameter', '1-3/8"', cast),
    diameter('screw hole', '9'),
    count('screw holes', '4'),
    diameter('oil hole bore', '1/8"'),
    length('web thickness', '8', cast),
    radius('elbow radius', '30', cast),
    radius('fillet', '6', cast),
    angle('draft', '2°', cast),
  ],
);

/** Slides in the over-arm and keeps the upper end of the file in line; the file pulls it along with the ram. */
export const upperRod = part(
  {
    name: 'upper rod',
    number: 'BFM-13',
    sheet: '10',
    make: 'stock',
    material: silverSteel,
    note: '',
  },
  [
    axis(
      'Z',
      face('lower end'),
      face('socket floor'),
      centre('clamp line'),
      face('upper end'),
      // Guided over its whole stroke, with 18 mm to spare: 50 + 32 + 18 = 100.
      tie('length', 'lower end', 'upper end', '"boss length" of "over-arm" + stroke of ram + 18 mm', derived),
      tie('socket depth', 'lower end', 'socket floor', '"socket depth" of ram', derived),
      tie('clamp height', 'lower end', 'clamp line', '"clamp depth" of ram', derived),
    ),
  ],
  [
    diameter('diameter', '12.69', measured, within('±0.006'), { note: 'Half-inch silver steel as bought.' }),
    length('file width', '"file width" of ram', within('+0.2/+0.1')),
    length('file thickness', '"file thickness" of ram', within('+0.2/+0.1')),
    thread('clamp thread', '"clamp thread" of ram'),
    length('chamfer', '0.5', within('±0.2')),
  ],
);
