import {
  add,
  block,
  cut,
  cylinder,
  fillet,
  hole,
  leave,
  mirror,
  pocket,
  prism,
  revolved,
  rib,
} from '../body-sketch.ts';
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
    note: 'Shaped on top, standing on its rim; the trunnions are bored at one setting. Poured face down.',
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
      pair('hollow width', ['hollow left', 'hollow right'], 'face', '"width" - 2 * "rim wall"', cast, derived),
      centre('right lug line'),
      tie('lug line', 'file line', 'right lug line', '("lug spread" + "lug gap") / 4', cast, derived),
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
      pair('hollow depth', ['hollow front', 'hollow rear'], 'face', '"depth" - 2 * "rim wall"', cast, derived),
      pair('lug width', ['lug front', 'lug rear'], 'face', '2 * "lug radius"', cast, derived),
      pair('cross rib spacing', ['front cross rib', 'rear cross rib'], 'centreline', '56', cast),
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
    radius('hollow corner radius', '"corner radius" - "rim wall"', cast),
  ],
  [
    add(
      'slab',
      pocket(
        'Z',
        ['rim underside', 'top face'],
        ['left edge', 'front edge'],
        ['right edge', 'rear edge'],
        'corner radius',
      ),
    ),
    leave(
      'hollow',
      pocket(
        'Z',
        ['rim underside', 'plate underside'],
        ['hollow left', 'hollow front'],
        ['hollow right', 'hollow rear'],
        'hollow corner radius',
      ),
    ),
    add(
      'ribs over lugs',
      rib(
        'X',
        'right lug line',
        'rib thickness',
        ['hollow front', 'rim underside'],
        ['hollow rear', 'rim underside'],
        ['hollow rear', 'plate underside'],
        ['hollow front', 'plate underside'],
      ),
      mirror('X', 'file line'),
    ),
    add(
      'cross ribs',
      rib(
        'Y',
        'rear cross rib',
        'rib thickness',
        ['hollow left', 'rim underside'],
        ['hollow right', 'rim underside'],
        ['hollow right', 'plate underside'],
        ['hollow left', 'plate underside'],
      ),
      mirror('Y', 'file line'),
    ),
    add(
      'lugs',
      block(['right lug inside', 'right lug outside'], ['lug front', 'lug rear'], ['pivot line', 'plate underside']),
      mirror('X', 'file line'),
    ),
    add(
      'rounded ends of lugs',
      cylinder('X', ['right lug inside', 'right lug outside'], ['file line', 'pivot line'], 'lug radius'),
      mirror('X', 'file line'),
    ),
    add(
      'fillets before and behind lugs',
      fillet('X', ['right lug inside', 'right lug outside'], ['lug rear', 'plate underside'], 'rib fillet', [1, -1]),
      mirror('X', 'file line'),
      mirror('Y', 'file line'),
    ),
    add(
      'fillets outside lugs',
      fillet('Y', ['lug front', 'lug rear'], ['right lug outside', 'plate underside'], 'rib fillet', [1, -1]),
      mirror('X', 'file line'),
    ),
    add(
      'fillets inside lugs',
      fillet('Y', ['lug front', 'lug rear'], ['right lug inside', 'plate underside'], 'rib fillet', [-1, -1]),
      mirror('X', 'file line'),
    ),
    cut(
      'pivot holes',
      hole('X', ['right lug outside', 'right lug inside'], ['file line', 'pivot line'], 'pivot thread'),
      mirror('X', 'file line'),
    ),
    cut('file slot', block(['slot left', 'slot right'], ['slot front', 'slot rear'], ['plate underside', 'top face'])),
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
      face('gusset top'),
      face('fillet top'),
      face('foot top'),
      centre('pivot line'),
      face('crown'),
      tie('foot thickness', 'foot', 'foot top', '10', cast),
      tie('pivot height', 'foot', 'pivot line', '48', within('±0.05')),
      tie('crown height', 'pivot line', 'crown', '"boss diameter" / 2', cast, derived),
      tie('gusset height', 'foot top', 'gusset top', '24', cast),
      // The cheek narrows above its fillet.
      tie('fillet height', 'foot top', 'fillet top', '"cheek fillet"', cast, derived),
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
      tie('foot width', 'inner face', 'foot outside', '33', cast),
      face('gusset toe'),
      tie('gusset margin', 'foot outside', 'gusset toe', '-3', cast),
    ),
    axis(
      'Y',
      centre('pivot line'),
      pair('foot length', ['foot front', 'foot rear'], 'face', '60', cast),
      pair('screw pitch', ['front screw', 'rear screw'], 'centreline', '36', within('±0.15')),
      pair('cheek foot width', ['cheek front', 'cheek rear'], 'face', '46', cast),
      pair('cheek top width', ['boss front', 'boss rear'], 'face', '"boss diameter"', cast, derived),
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
    // Small enough to leave the washers of the foot screws flat: 23 - 12 / 2 - 12 = 5.
    radius('cheek fillet', '4', cast),
    angle('draft', '2°', cast),
    length('spot face depth', '1', within('±0.3')),
    radius('foot corner radius', '6', cast),
    length('gusset thickness', '5/16"', cast),
  ],
  [
    add(
      'foot',
      prism(
        'Z',
        ['foot', 'foot top'],
        ['inner face', 'foot front'],
        ['foot outside', 'foot front', 'foot corner radius'],
        ['foot outside', 'foot rear', 'foot corner radius'],
        ['inner face', 'foot rear'],
      ),
    ),
    add(
      'cheek',
      prism(
        'X',
        ['inner face', 'cheek outside'],
        ['cheek rear', 'foot top'],
        ['cheek rear', 'fillet top'],
        ['boss rear', 'pivot line'],
        ['boss front', 'pivot line'],
        ['cheek front', 'fillet top'],
        ['cheek front', 'foot top'],
      ),
    ),
    add('pivot boss', cylinder('X', ['inner face', 'boss outside'], ['pivot line', 'pivot line'], 'boss diameter')),
    add(
      'gusset',
      rib(
        'Y',
        'pivot line',
        'gusset thickness',
        ['cheek outside', 'foot top'],
        ['gusset toe', 'foot top'],
        ['cheek outside', 'gusset top'],
      ),
    ),
    add(
      'cheek fillet',
      fillet('Y', ['cheek front', 'cheek rear'], ['cheek outside', 'foot top'], 'cheek fillet', [1, 1]),
    ),
    cut('pivot bore', hole('X', ['inner face', 'boss outside'], ['pivot line', 'pivot line'], 'pivot bore')),
    cut(
      'foot screw holes',
      hole('Z', ['foot top', 'foot'], ['foot screws', 'rear screw'], 'foot screw hole', {
        counterbore: { diameter: 'foot screw spot face', depth: 'spot face depth' },
      }),
      mirror('Y', 'pivot line'),
    ),
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
      face('slot floor'),
      tie('slot depth', 'slot floor', 'head end', '3'),
    ),
    axis('Y', centre('axis'), pair('slot width', ['slot front', 'slot rear'], 'face', '2')),
    axis('Z', centre('axis'), pair('slot length', ['head bottom', 'head top'], 'face', '"head"', derived)),
  ],
  [
    diameter('journal', '3/8"', within('-0.0003/-0.0009')),
    diameter('head', '3/4"', measured),
    thread('end thread', '"pivot thread" of table'),
    length('chamfer', '0.5', within('±0.2')),
  ],
  [
    add(
      'pin',
      revolved(
        'X',
        ['axis', 'axis'],
        ['thread end'],
        ['thread end', 'end thread'],
        ['journal shoulder', 'end thread'],
        ['journal shoulder', 'journal'],
        ['head shoulder', 'journal'],
        ['head shoulder', 'head'],
        ['head end', 'head'],
        ['head end'],
      ),
    ),
    cut(
      'screwdriver slot',
      block(['slot floor', 'head end'], ['slot front', 'slot rear'], ['head bottom', 'head top']),
    ),
  ],
);
