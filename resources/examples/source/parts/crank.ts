import { aluminium, silverSteel, steel, zincAlloy } from '../materials.ts';
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
  shoulder,
  thread,
  tie,
  within,
} from '../sketch.ts';

/** Overhung behind the base, so that its rim passes the bench with 10 mm to spare: 95 - 170 / 2. */
export const flywheel = part(
  {
    name: 'flywheel',
    number: 'BFM-06',
    sheet: '6',
    make: 'cast',
    material: zincAlloy,
    note: 'Rim turned between centres on a mandrel after the bore is reamed. The groove takes a 6 mm round belt.',
  },
  [
    axis(
      'Y',
      face('hub front'),
      face('rim front'),
      face('web front'),
      face('web rear'),
      face('rim rear'),
      face('hub rear'),
      centre('groove line'),
      centre('grub screw line'),
      tie('hub length', 'hub front', 'hub rear', '40'),
      tie('rim setback', 'hub front', 'rim front', '6'),
      tie('rim width', 'rim front', 'rim rear', '28'),
      tie('web setback', 'rim front', 'web front', '("rim width" - "web thickness") / 2', cast, derived),
      tie('web thickness', 'web front', 'web rear', '10', cast),
      tie('groove offset', 'rim front', 'groove line', '"rim width" / 2', derived),
      tie('grub screw distance', 'grub screw line', 'hub rear', '3/8"'),
    ),
    axis('X', centre('axis')),
    axis('Z', centre('axis')),
  ],
  [
    diameter('rim diameter', '170'),
    diameter('rim inside diameter', '138', cast),
    diameter('hub diameter', '44', cast),
    diameter('bore', '"flywheel seat" of crankshaft', within('+0.018/0')),
    diameter('groove diameter', '157'),
    angle('groove angle', '40°', within('±1°')),
    length('groove width', '8'),
    count('web holes', '5'),
    diameter('web hole diameter', '28', cast),
    diameter('web hole circle', '90', cast),
    length('key width', '3/16"', within('+0.001/0')),
    // Keyway in the hub, measured from the bore's wall.
    length('keyway depth', '2.3', within('+0.1/0')),
    thread('grub screw', 'M6'),
    radius('hub fillet', '6', cast),
    radius('rim fillet', '6', cast),
    angle('draft', '2°', cast),
  ],
);

/** Closes a pedestal of the base over its bearing. The split is on the crank line. */
export const bearingCap = part(
  {
    name: 'bearing cap',
    number: 'BFM-07',
    sheet: '6',
    make: 'cast',
    material: aluminium,
    quantity: 2,
    note: 'Cast as one bar with a sawing allowance between, drilled, then parted.',
  },
  [
    axis(
      'Z',
      face('split face'),
      face('screw seat'),
      face('crown'),
      tie('screw seat height', 'split face', 'screw seat', '14'),
      tie('crown height', 'split face', 'crown', '"crown radius"', cast, derived),
    ),
    axis(
      'X',
      centre('bore line'),
      pair('width', ['left end', 'right end'], 'face', '"pedestal width" of base', cast, derived),
      pair('screw spacing', ['left screw', 'right screw'], 'centreline', '"cap screw spacing" of base', derived),
    ),
    axis(
      'Y',
      face('front face'),
      face('rear face'),
      centre('screw line'),
      tie('thickness', 'front face', 'rear face', '"pedestal thickness" of base', derived),
      tie('screw offset', 'front face', 'screw line', 'thickness / 2', derived),
    ),
  ],
  [
    diameter('bore', '"bearing bore" of base', within('+0.025/0'), { note: 'Bored with the base.' }),
    radius('crown radius', '1-1/4"', cast),
    diameter('screw hole', '6.6'),
    diameter('screw spot face', '11'),
    count('screw holes', '2'),
    radius('fillet', '3', cast),
    angle('draft', '2°', cast),
  ],
);

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
    ),
    axis('X', centre('axis')),
    axis('Z', centre('axis')),
  ],
  [
    diameter('body', '3/4"', measured, within('±0.0005')),
    // k6 of 10 to 18 mm is +0.012/+0.001, h6 is 0/-0.011 (ISO 286-2).
    diameter('journal', 'bore of "crankshaft bearing"', within('+0.012/+0.001')),
    diameter('disc seat', '15', within('+0.012/+0.001')),
    diameter('flywheel seat', '16', within('0/-0.011')),
    length('key width', '"key width" of flywheel'),
    length('keyway depth', '2.5', within('+0.1/0')),
    length('keyway length', '1"'),
    thread('end thread', 'M6'),
    length('end thread depth', '16'),
    radius('shoulder radius', '0.5', within('±0.1')),
    length('chamfer', '1'),
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
    axis('Y', face('front face'), face('rear face'), tie('thickness', 'front face', 'rear face', '12')),
    axis('Z', centre('shaft line'), centre('pin line'), tie('throw', 'shaft line', 'pin line', '16', within('±0.05'))),
    axis('X', centre('shaft line')),
  ],
  [
    diameter('outside', '60'),
    diameter('shaft bore', '"disc seat" of crankshaft', within('+0.018/0')),
    thread('pin thread', 'M8'),
    diameter('cross pin', '1/8"', within('+0.0005/0')),
    length('edge chamfer', '1'),
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
    ),
    axis('X', centre('axis')),
    axis('Z', centre('axis')),
  ],
  [
    diameter('diameter', '3/8"', measured, within('0/-0.0004')),
    thread('shank thread', '"pin thread" of "crank disc"'),
    length('side gap', '1.5'),
    diameter('undercut diameter', '6'),
    length('flat across', '8'),
    length('chamfer', '0.5', within('±0.2')),
  ],
);

/** Boundary dimensions of diameter series 2, bore 17 mm (ISO 15; from memory). */
export const crankshaftBearing = part(
  {
    name: 'crankshaft bearing',
    number: 'BFM-16',
    sheet: '',
    make: 'bought',
    material: '',
    quantity: 2,
    note: 'Deep-groove ball bearing 17 × 40 × 12, sealed both sides.',
  },
  [],
  [
    diameter('bore', '17', within('0/-0.008')),
    diameter('outside', '40', within('0/-0.011')),
    length('width', '12', within('0/-0.12')),
  ],
);
