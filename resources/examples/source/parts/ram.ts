import { brass, silverSteel, zincAlloy } from '../materials.ts';
import {
  angle,
  axis,
  cast,
  centre,
  derived,
  diameter,
  face,
  length,
  measured,
  pair,
  part,
  radius,
  shoulder,
  thread,
  tie,
  within,
} from '../sketch.ts';

/** Turns the crank pin's circle into the ram's stroke; its slot line is on the crank line at half stroke, Z 95. */
export const yoke = part(
  {
    name: 'yoke',
    number: 'BFM-08',
    sheet: '7',
    make: 'cast',
    material: zincAlloy,
    note: 'Two in one mould, one to spare.',
  },
  [
    axis(
      'Z',
      centre('slot line'),
      face('bottom'),
      face('body top'),
      face('socket floor'),
      face('boss top'),
      centre('clamp line'),
      tie('body depth', 'bottom', 'slot line', '18', cast),
      tie('body rise', 'slot line', 'body top', '18', cast),
      tie('socket floor', 'slot line', 'socket floor', '14'),
      tie('boss height', 'slot line', 'boss top', '40'),
      tie('clamp depth', 'clamp line', 'boss top', '10'),
    ),
    axis(
      'X',
      centre('ram line'),
      pair('width', ['left end', 'right end'], 'face', '66', cast),
      // Both ends of the throw, the pin itself, and 2 mm beyond it each way.
      pair(
        'slot length',
        ['slot left', 'slot right'],
        'face',
        '2 * throw of "crank disc" + diameter of "crank pin" + 4 mm',
        derived,
      ),
    ),
    axis('Y', centre('ram line'), pair('thickness', ['front face', 'rear face'], 'face', '18', within('±0.1'))),
  ],
  [
    length('slot width', 'diameter of "crank pin" + 0.04 mm', within('+0.03/0')),
    // H7 of 10 to 18 mm is +0.018/0 (ISO 286-2).
    diameter('ram socket', 'diameter of ram', within('+0.018/0')),
    diameter('boss diameter', '1-1/8"', cast),
    thread('clamp thread', 'M6'),
    radius('end radius', '12', cast),
    radius('fillet', '4', cast),
    angle('draft', '2°', cast),
  ],
);

/** Lower end in the yoke (Z 109 at half stroke), upper end with the file's socket above the column (Z 246). */
export const ram = part(
  {
    name: 'ram',
    number: 'BFM-09',
    sheet: '8',
    make: 'stock',
    material: silverSteel,
    note: 'Not turned: used as ground.',
  },
  [
    axis(
      'Z',
      face('lower end'),
      centre('yoke clamp line'),
      centre('file clamp line'),
      face('socket floor'),
      face('upper end'),
      // From the socket in the yoke at the bottom of the stroke to 5 mm above the column:
      // 127 + 70 - 67 + 16 - 14 + 5 = 137.
      tie(
        'length',
        'lower end',
        'upper end',
        '"lower guide height" of "guide column" + "guide length" of "guide column" - "crank height" of base' +
          ' + throw of "crank disc" - "socket floor" of yoke + projection',
        derived,
      ),
      tie('socket depth', 'socket floor', 'upper end', '25'),
      tie('clamp depth', 'file clamp line', 'upper end', '10'),
      // The flat for the yoke's clamp screw: 40 - 10 - 14 = 16 above the lower end.
      tie(
        'yoke clamp height',
        'lower end',
        'yoke clamp line',
        '"boss height" of yoke - "clamp depth" of yoke - "socket floor" of yoke',
        derived,
      ),
    ),
  ],
  [
    diameter('diameter', '15.87', measured, within('±0.006'), { note: 'Bar of 5/8 in silver steel as bought.' }),
    length('projection', '5'),
    length('stroke', '2 * throw of "crank disc"', derived),
    // Between the two sockets; with 25 mm in each it is a file of 170 mm.
    length('file free length', '120'),
    length('file width', '3/8"', within('+0.008/+0.004')),
    length('file thickness', '1/8"', within('+0.008/+0.004')),
    thread('clamp thread', 'M5'),
    length('clamp flat depth', '1'),
    length('chamfer', '0.5', within('±0.2')),
  ],
);

/** Thumb screw that pinches the file, one in the ram and one in the upper rod. */
export const clampScrew = part(
  {
    name: 'clamp screw',
    number: 'BFM-15',
    sheet: '10',
    make: 'stock',
    material: brass,
    quantity: 2,
    note: '',
  },
  [
    axis(
      'Z',
      shoulder('under head'),
      face('tip'),
      face('head top'),
      // Through half the ram and to the file: the shank may not bottom before it grips.
      tie('shank length', 'tip', 'under head', 'round(diameter of ram / 2 + 4 mm, 0.5 mm)', derived),
      tie('head height', 'under head', 'head top', '8'),
    ),
  ],
  [
    thread('shank thread', '"clamp thread" of ram'),
    diameter('head diameter', '1/2"'),
    length('tip length', '2'),
    diameter('tip diameter', '3.5'),
    length('chamfer', '0.5', within('±0.2')),
  ],
);
