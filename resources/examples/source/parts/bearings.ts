import { add, core, cut, cylinder, hole, leave, mirror, prism } from '../body-sketch.ts';
import { aluminium } from '../materials.ts';
import {
  angle,
  axis,
  cast,
  centre,
  count,
  derived,
  diameter,
  face,
  measured,
  pair,
  part,
  radius,
  tie,
  within,
} from '../sketch.ts';

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
      pair('crown width', ['crown left', 'crown right'], 'face', '2 * "crown radius"', cast, derived),
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
    // Clearance hole of ISO 273, fine series: the cap is narrow.
    diameter('screw hole', '5.3'),
    diameter('screw spot face', '10'),
    count('screw holes', '2'),
    radius('fillet', '3', cast),
    angle('draft', '2°', cast),
    diameter('bore as cast', '"bearing bore as cast" of base', cast),
  ],
  [
    add(
      'bar',
      prism(
        'Y',
        ['front face', 'rear face'],
        ['left end', 'split face'],
        ['right end', 'split face'],
        ['right end', 'screw seat', 'fillet'],
        ['left end', 'screw seat', 'fillet'],
      ),
    ),
    add(
      'crown',
      prism(
        'Y',
        ['front face', 'rear face'],
        ['crown left', 'split face'],
        ['crown right', 'split face'],
        ['crown right', 'crown', 'crown radius'],
        ['crown left', 'crown', 'crown radius'],
      ),
    ),
    core('bore as cast', cylinder('Y', ['front face', 'rear face'], ['bore line', 'split face'], 'bore as cast')),
    cut('bore', cylinder('Y', ['front face', 'rear face'], ['bore line', 'split face'], 'bore')),
    // The spot facer runs down the flanks of the crown.
    cut(
      'spot faces',
      cylinder('Z', ['screw seat', 'crown'], ['right screw', 'screw line'], 'screw spot face'),
      mirror('X', 'bore line'),
    ),
    cut(
      'screw holes',
      hole('Z', ['screw seat', 'split face'], ['right screw', 'screw line'], 'screw hole'),
      mirror('X', 'bore line'),
    ),
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
  [
    axis(
      'Y',
      face('front face'),
      face('rear face'),
      face('front seal'),
      face('rear seal'),
      tie('width', 'front face', 'rear face', '12', within('0/-0.12')),
      tie('front seal thickness', 'front face', 'front seal', '1'),
      tie('rear seal thickness', 'rear seal', 'rear face', '1'),
    ),
    axis('X', centre('axis')),
    axis('Z', centre('axis')),
  ],
  [
    diameter('bore', '17', within('0/-0.008')),
    diameter('outside', '40', within('0/-0.011')),
    // Measured on a worn one, cut open.
    diameter('inner ring', '24.5', measured),
    diameter('outer ring', '33', measured),
  ],
  [
    add('rings and seals', cylinder('Y', ['front face', 'rear face'], ['axis', 'axis'], 'outside', 'bore')),
    // Empty here: what the balls and their cage weigh, the grooves of the rings make up for.
    leave('room for balls', cylinder('Y', ['front seal', 'rear seal'], ['axis', 'axis'], 'outer ring', 'inner ring')),
  ],
);
