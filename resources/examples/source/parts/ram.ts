import { add, block, cut, cylinder, hole, mirror, pocket, revolved, rib, slot } from '../body-sketch.ts';
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
      face('gusset top'),
      face('gusset toe top'),
      tie('gusset depth', 'gusset top', 'boss top', '12', cast),
      tie('gusset toe height', 'body top', 'gusset toe top', '4', cast),
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
      pair(
        'slot centre spacing',
        ['slot left centre', 'slot right centre'],
        'centreline',
        '"slot length" - "slot width"',
        derived,
      ),
      face('gusset toe'),
      tie('gusset length', 'ram line', 'gusset toe', '20', cast),
    ),
    axis(
      'Y',
      face('front face'),
      face('rear face'),
      centre('ram line'),
      tie('thickness', 'front face', 'rear face', '18', within('±0.1')),
      tie('half thickness', 'front face', 'ram line', '"thickness" / 2', derived),
      face('boss front'),
      tie('boss reach', 'boss front', 'ram line', '"boss diameter" / 2', cast, derived),
    ),
  ],
  [
    length('slot width', 'diameter of "crank pin" + 0.04 mm', within('+0.03/0')),
    // H7 of 6 to 10 mm is +0.015/0 (ISO 286-2).
    diameter('ram socket', '"spigot diameter" of ram', within('+0.015/0')),
    // No thicker than the yoke itself: the crank disc passes 1.5 mm behind it.
    diameter('boss diameter', '11/16"', cast),
    thread('clamp thread', 'M4'),
    radius('end radius', '12', cast),
    radius('fillet', '4', cast),
    angle('draft', '2°', cast),
    length('gusset thickness', '8', cast),
  ],
  [
    add(
      'body',
      pocket('Y', ['front face', 'rear face'], ['left end', 'bottom'], ['right end', 'body top'], 'end radius'),
    ),
    add('boss', cylinder('Z', ['socket floor', 'boss top'], ['ram line', 'ram line'], 'boss diameter')),
    add(
      'gussets',
      rib(
        'Y',
        'ram line',
        'gusset thickness',
        ['ram line', 'body top'],
        ['gusset toe', 'body top'],
        ['gusset toe', 'gusset toe top'],
        ['ram line', 'gusset top'],
      ),
      mirror('X', 'ram line'),
    ),
    cut(
      'slot',
      slot(
        'Y',
        ['front face', 'rear face'],
        [
          ['slot left centre', 'slot line'],
          ['slot right centre', 'slot line'],
        ],
        'slot width',
      ),
    ),
    cut('ram socket', hole('Z', ['boss top', 'socket floor'], ['ram line', 'ram line'], 'ram socket')),
    cut('clamp screw hole', hole('Y', ['boss front', 'ram line'], ['ram line', 'clamp line'], 'clamp thread')),
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
    note: 'Used as ground, but for the spigot that stands in the yoke.',
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
      shoulder('spigot shoulder'),
      face('flat lower end'),
      face('flat upper end'),
      // The shoulder bears on the yoke's boss: 40 - 14 = 26.
      tie('spigot length', 'lower end', 'spigot shoulder', '"boss height" of yoke - "socket floor" of yoke', derived),
      tie('flat below clamp', 'yoke clamp line', 'flat lower end', '-"clamp flat length" / 2', derived),
      tie('flat above clamp', 'yoke clamp line', 'flat upper end', '"clamp flat length" / 2', derived),
    ),
    axis(
      'X',
      centre('axis'),
      pair('file width', ['socket left', 'socket right'], 'face', '3/8"', within('+0.008/+0.004')),
      pair('width over bar', ['left', 'right'], 'face', '"diameter"', derived),
    ),
    axis(
      'Y',
      centre('axis'),
      face('front'),
      face('clamp flat'),
      pair('file thickness', ['socket front', 'socket rear'], 'face', '1/8"', within('+0.008/+0.004')),
      tie('front reach', 'front', 'axis', '"diameter" / 2', derived),
      tie('clamp flat distance', 'clamp flat', 'axis', '"spigot diameter" / 2 - "clamp flat depth"', derived),
    ),
  ],
  [
    diameter('diameter', '15.87', measured, within('±0.006'), { note: 'Bar of 5/8 in silver steel as bought.' }),
    length('projection', '5'),
    length('stroke', '2 * throw of "crank disc"', derived),
    // Between the two sockets; with 25 mm in each it is a file of 170 mm.
    length('file free length', '120'),
    thread('clamp thread', 'M5'),
    length('clamp flat depth', '1'),
    length('chamfer', '0.5', within('±0.2')),
    // h6 of 6 to 10 mm is 0/-0.009 (ISO 286-2).
    diameter('spigot diameter', '5/16"', within('0/-0.0004')),
    length('clamp flat length', '8'),
  ],
  [
    add('spigot', cylinder('Z', ['lower end', 'spigot shoulder'], ['axis', 'axis'], 'spigot diameter')),
    add('bar', cylinder('Z', ['spigot shoulder', 'upper end'], ['axis', 'axis'], 'diameter')),
    cut('clamp flat', block(['left', 'right'], ['front', 'clamp flat'], ['flat lower end', 'flat upper end'])),
    cut(
      'file socket',
      block(['socket left', 'socket right'], ['socket front', 'socket rear'], ['socket floor', 'upper end']),
    ),
    cut('clamp screw hole', hole('Y', ['front', 'axis'], ['axis', 'file clamp line'], 'clamp thread')),
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
      shoulder('tip shoulder'),
      tie('tip length', 'tip', 'tip shoulder', '2'),
    ),
    axis('X', centre('axis')),
    axis('Y', centre('axis')),
  ],
  [
    thread('shank thread', '"clamp thread" of ram'),
    diameter('head diameter', '1/2"'),
    diameter('tip diameter', '3.5'),
    length('chamfer', '0.5', within('±0.2')),
  ],
  [
    add(
      'screw',
      revolved(
        'Z',
        ['axis', 'axis'],
        ['tip'],
        ['tip', 'tip diameter'],
        ['tip shoulder', 'tip diameter'],
        ['tip shoulder', 'shank thread'],
        ['under head', 'shank thread'],
        ['under head', 'head diameter'],
        ['head top', 'head diameter'],
        ['head top'],
      ),
    ),
  ],
);
