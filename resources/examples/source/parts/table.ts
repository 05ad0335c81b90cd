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
  shoulder,
  thread,
  tie,
  within,
} from '../sketch.ts';

/**
 * The tilting table. Its top face is at Z 300 of the machine: 28 (base) + 197 (guide column) + 48 (pivot line of the
 * trunnion brackets) + 27 (pivot line to top face).
 */
export const table = part(
  {
    name: 'table',
    number: 'BFM-03',
    sheet: '3',
    make: 'cast',
    material: aluminium,
    note: 'Faced on the face plate, held by the lugs. Poured face down.',
  },
  [
    axis(
      'Z',
      face('top face'),
      face('plate underside'),
      face('rim underside'),
      centre('pivot line'),
      face('lug bottom'),
      tie('plate thickness', 'plate underside', 'top face', '3/8"', cast),
      tie('rim depth', 'rim underside', 'top face', '15', cast),
      tie('pivot depth', 'pivot line', 'top face', '27', within('±0.1')),
      tie('lug bottom depth', 'lug bottom', 'pivot line', '"lug radius"', cast, derived),
    ),
    axis(
      'X',
      centre('file line'),
      pair('width', ['left edge', 'right edge'], 'face', '130', cast),
      pair('lug spread', ['left lug outside', 'right lug outside'], 'face', '80', within('0/-0.1')),
      pair('lug gap', ['left lug inside', 'right lug inside'], 'face', '52', cast),
      pair('slot width', ['slot left', 'slot right'], 'face', '"file width" of ram + 3 mm', derived),
    ),
    axis(
      'Y',
      centre('file line'),
      pair('depth', ['front edge', 'rear edge'], 'face', 'width', cast, derived),
      // The file passes the slot with the table tilted: 27 mm × tan 10° each way, the file's own thickness, and 4 mm.
      pair(
        'slot length',
        ['slot front', 'slot rear'],
        'face',
        'round(2 * "pivot depth" * tan(tilt) + "file thickness" of ram + 4 mm, 0.5 mm)',
        derived,
      ),
    ),
  ],
  [
    angle('tilt', '10°'),
    radius('lug radius', '12', cast),
    thread('pivot thread', 'M8'),
    count('pivot holes', '2'),
    radius('corner radius', '12', cast),
    length('rim wall', '7', cast),
    length('rib thickness', '1/4"', cast),
    count('ribs', '4'),
    radius('rib fillet', '4', cast),
    angle('draft', '2°', cast),
  ],
);

/** Stands on the column's flange, its inner face half a millimetre outside the table's lug. */
export const trunnionBracket = part(
  {
    name: 'trunnion bracket',
    number: 'BFM-04',
    sheet: '4',
    make: 'cast',
    material: aluminium,
    quantity: 2,
    note: 'One left, one right, from one pattern. Pivot holes reamed with both brackets clamped to an angle plate.',
  },
  [
    axis(
      'Z',
      face('foot'),
      face('foot top'),
      centre('pivot line'),
      face('crown'),
      tie('foot thickness', 'foot', 'foot top', '10', cast),
      tie('pivot height', 'foot', 'pivot line', '48', within('±0.05')),
      tie('crown height', 'pivot line', 'crown', '"boss diameter" / 2', cast, derived),
    ),
    axis(
      'X',
      face('inner face'),
      face('cheek outside'),
      face('boss outside'),
      centre('foot screws'),
      face('foot outside'),
      tie('cheek thickness', 'inner face', 'cheek outside', '12', cast),
      tie('boss width', 'inner face', 'boss outside', '16'),
      tie('screw line', 'inner face', 'foot screws', '23', within('±0.15')),
      tie('foot width', 'inner face', 'foot outside', '32', cast),
    ),
    axis(
      'Y',
      centre('pivot line'),
      pair('foot length', ['foot front', 'foot rear'], 'face', '60', cast),
      pair('screw pitch', ['front screw', 'rear screw'], 'centreline', '36', within('±0.15')),
    ),
  ],
  [
    diameter('pivot bore', '3/8"', within('+0.0006/0')),
    // Small enough to pass under the table's plate and rim when it tilts: 27 - 15 = 12.
    diameter('boss diameter', '22', cast),
    diameter('foot screw hole', '6.6'),
    diameter('foot screw spot face', '12'),
    count('foot screws', '2'),
    length('side play', '0.5'),
    radius('cheek fillet', '5', cast),
    angle('draft', '2°', cast),
  ],
);

/** A shouldered pin: the journal turns in the bracket, the thread is screwed home into the table's lug. */
export const tablePivot = part(
  {
    name: 'table pivot',
    number: 'BFM-14',
    sheet: '10',
    make: 'stock',
    material: silverSteel,
    quantity: 2,
    note: '',
  },
  [
    axis(
      'X',
      shoulder('journal shoulder'),
      face('thread end'),
      shoulder('head shoulder'),
      face('head end'),
      tie('thread length', 'thread end', 'journal shoulder', '12'),
      // The head stands 0.2 mm clear of the bracket, so that the table stays free to tilt.
      tie(
        'journal length',
        'journal shoulder',
        'head shoulder',
        '"boss width" of "trunnion bracket" + "side play" of "trunnion bracket" + 0.2 mm',
        within('+0.1/0'),
        derived,
      ),
      tie('head length', 'head shoulder', 'head end', '8'),
    ),
  ],
  [
    diameter('journal', '3/8"', within('-0.0003/-0.0009')),
    diameter('head', '3/4"', measured),
    thread('end thread', '"pivot thread" of table'),
    length('slot width', '2'),
    length('slot depth', '3'),
    length('chamfer', '0.5', within('±0.2')),
  ],
);
