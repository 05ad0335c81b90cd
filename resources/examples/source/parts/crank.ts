import { add, block, cut, hole, mirror, revolved, slot } from '../body-sketch.ts';
import { silverSteel, steel } from '../materials.ts';
import {
  angle,
  axis,
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

/** Y 40 of the machine is the datum: the shoulder that bears on the front bearing's rear face. */
export const crankshaft = part(
  {
    name: 'crankshaft',
    number: 'BFM-10',
    sheet: '9',
    make: 'stock',
    material: silverSteel,
    note: 'Turned between centres; both journals at one setting.',
  },
  [
    axis(
      'Y',
      shoulder('front bearing shoulder'),
      face('front end'),
      shoulder('disc shoulder'),
      shoulder('rear bearing shoulder'),
      shoulder('flywheel shoulder'),
      face('rear end'),
      centre('key line'),
      // Both bearings stand in the middle of their pedestals: 60 - 12 = 48.
      tie(
        'bearing span',
        'front bearing shoulder',
        'rear bearing shoulder',
        '"pedestal spacing" of base - width of "crankshaft bearing"',
        within('±0.05'),
        derived,
      ),
      tie('front journal length', 'disc shoulder', 'front bearing shoulder', '17.5'),
      tie('disc seat length', 'front end', 'disc shoulder', 'thickness of "crank disc"', derived),
      tie(
        'rear journal length',
        'rear bearing shoulder',
        'flywheel shoulder',
        'width of "crankshaft bearing" + 7 mm',
        derived,
      ),
      // One millimetre short of the hub, so that the end washer draws the flywheel home.
      tie('flywheel seat length', 'flywheel shoulder', 'rear end', '"hub length" of flywheel - 1 mm', derived),
      tie('key distance', 'flywheel shoulder', 'key line', '18'),
      centre('keyway front centre'),
      centre('keyway rear centre'),
      face('end thread bottom'),
      tie('keyway front reach', 'keyway front centre', 'key line', '("keyway length" - "key width") / 2', derived),
      tie('keyway rear reach', 'key line', 'keyway rear centre', '("keyway length" - "key width") / 2', derived),
      tie('end thread depth', 'end thread bottom', 'rear end', '16'),
    ),
    axis('X', centre('axis')),
    axis(
      'Z',
      centre('axis'),
      face('keyway floor'),
      face('keyway mouth'),
      tie('keyway mouth height', 'axis', 'keyway mouth', '"flywheel seat" / 2', derived),
      tie('keyway floor height', 'axis', 'keyway floor', '"flywheel seat" / 2 - "keyway depth"', derived),
    ),
  ],
  [
    diameter('body', '3/4"', measured, within('±0.0005')),
    // k6 of 10 to 18 mm is +0.012/+0.001, h6 is 0/-0.011 (ISO 286-2).
    diameter('journal', 'bore of "crankshaft bearing"', within('+0.012/+0.001')),
    diameter('disc seat', '12', within('+0.012/+0.001')),
    diameter('flywheel seat', '16', within('0/-0.011')),
    length('key width', '"key width" of flywheel'),
    length('keyway depth', '2.5', within('+0.1/0')),
    length('keyway length', '1"'),
    thread('end thread', 'M5'),
    radius('shoulder radius', '0.5', within('±0.1')),
    length('chamfer', '1'),
    angle('drill point', '118°'),
  ],
  [
    add(
      'shaft',
      revolved(
        'Y',
        ['axis', 'axis'],
        ['front end'],
        ['front end', 'disc seat'],
        ['disc shoulder', 'disc seat'],
        ['disc shoulder', 'journal'],
        ['front bearing shoulder', 'journal'],
        ['front bearing shoulder', 'body'],
        ['rear bearing shoulder', 'body'],
        ['rear bearing shoulder', 'journal'],
        ['flywheel shoulder', 'journal'],
        ['flywheel shoulder', 'flywheel seat'],
        ['rear end', 'flywheel seat'],
        ['rear end'],
      ),
    ),
    cut(
      'keyway',
      slot(
        'Z',
        ['keyway floor', 'keyway mouth'],
        [
          ['axis', 'keyway front centre'],
          ['axis', 'keyway rear centre'],
        ],
        'key width',
      ),
    ),
    cut(
      'end thread hole',
      hole('Y', ['rear end', 'end thread bottom'], ['axis', 'axis'], 'end thread', { point: 'drill point' }),
    ),
  ],
);

/** Carries the crank pin in front of the front pedestal: Y 10.5 to 22.5 of the machine. */
export const crankDisc = part(
  {
    name: 'crank disc',
    number: 'BFM-11',
    sheet: '9',
    make: 'stock',
    material: steel,
    note: 'Pressed on the shaft and cross-pinned, then faced true in place.',
  },
  [
    axis(
      'Y',
      face('front face'),
      face('rear face'),
      tie('thickness', 'front face', 'rear face', '12'),
      face('front chamfer end'),
      face('rear chamfer end'),
      centre('cross pin line'),
      tie('front chamfer', 'front face', 'front chamfer end', '"edge chamfer"', derived),
      tie('rear chamfer', 'rear chamfer end', 'rear face', '"edge chamfer"', derived),
      tie('cross pin distance', 'front face', 'cross pin line', '"thickness" / 2', derived),
    ),
    axis(
      'Z',
      centre('shaft line'),
      centre('pin line'),
      tie('throw', 'shaft line', 'pin line', '16', within('±0.05')),
      face('bottom'),
      tie('bottom reach', 'bottom', 'shaft line', '"outside" / 2', derived),
    ),
    axis('X', centre('shaft line')),
  ],
  [
    diameter('outside', '60'),
    diameter('shaft bore', '"disc seat" of crankshaft', within('+0.018/0')),
    thread('pin thread', 'M8'),
    diameter('cross pin', '1/8"', within('+0.0005/0')),
    length('edge chamfer', '1'),
    diameter('face diameter', '"outside" - 2 * "edge chamfer"'),
  ],
  [
    add(
      'disc',
      revolved(
        'Y',
        ['shaft line', 'shaft line'],
        ['front face'],
        ['front face', 'face diameter'],
        ['front chamfer end', 'outside'],
        ['rear chamfer end', 'outside'],
        ['rear face', 'face diameter'],
        ['rear face'],
      ),
    ),
    cut('shaft bore', hole('Y', ['rear face', 'front face'], ['shaft line', 'shaft line'], 'shaft bore')),
    cut('pin hole', hole('Y', ['front face', 'rear face'], ['shaft line', 'pin line'], 'pin thread')),
    cut('cross pin hole', hole('Z', ['bottom', 'shaft line'], ['shaft line', 'cross pin line'], 'cross pin')),
  ],
);

/** The pin stands forward of the disc through the yoke's slot; its shank is screwed into the disc. */
export const crankPin = part(
  {
    name: 'crank pin',
    number: 'BFM-12',
    sheet: '9',
    make: 'stock',
    material: silverSteel,
    note: 'Hardened and polished.',
  },
  [
    axis(
      'Y',
      shoulder('shoulder'),
      face('journal end'),
      face('shank end'),
      centre('undercut line'),
      // Yoke, the gap between yoke and disc, and 2 mm beyond: 18 + 1.5 + 2 = 21.5.
      tie('journal length', 'journal end', 'shoulder', 'thickness of yoke + "side gap" + 2 mm', derived),
      tie('shank length', 'shoulder', 'shank end', 'thickness of "crank disc" - 0.5 mm', derived),
      tie('undercut distance', 'shoulder', 'undercut line', '1'),
      face('undercut end'),
      face('flat end'),
      tie('undercut width', 'shoulder', 'undercut end', '2 * "undercut distance"', derived),
      // On the 2 mm that stand out of the yoke.
      tie('flat length', 'journal end', 'flat end', '2'),
    ),
    axis(
      'X',
      centre('axis'),
      pair('flat across', ['flat left', 'flat right'], 'face', '8'),
      pair('width over pin', ['left', 'right'], 'face', '"diameter"', derived),
    ),
    axis('Z', centre('axis'), pair('height over pin', ['bottom', 'top'], 'face', '"diameter"', derived)),
  ],
  [
    diameter('diameter', '3/8"', measured, within('0/-0.0004')),
    thread('shank thread', '"pin thread" of "crank disc"'),
    length('side gap', '1.5'),
    diameter('undercut diameter', '6'),
    length('chamfer', '0.5', within('±0.2')),
  ],
  [
    add(
      'pin',
      revolved(
        'Y',
        ['axis', 'axis'],
        ['journal end'],
        ['journal end', 'diameter'],
        ['shoulder', 'diameter'],
        ['shoulder', 'undercut diameter'],
        ['undercut end', 'undercut diameter'],
        ['undercut end', 'shank thread'],
        ['shank end', 'shank thread'],
        ['shank end'],
      ),
    ),
    cut(
      'spanner flats',
      block(['flat right', 'right'], ['journal end', 'flat end'], ['bottom', 'top']),
      mirror('X', 'axis'),
    ),
  ],
);
