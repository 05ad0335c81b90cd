import type { DimensionId } from '../../../base/ids.ts';
import type { Suspect } from '../../../drawing/drawing.ts';
import { listed } from '../../listing.ts';
import { definePartRule, type Said } from '../../rule.ts';

/** Each likely slip, as a clause after "It is as if". */
const slips: Readonly<Record<NonNullable<Suspect['slip']>, string>> = {
  'inch-for-mm': 'an inch figure had been taken for millimetres',
  'mm-for-inch': 'a millimetre figure had been taken for inches',
  'digits-swapped': 'two digits had changed places',
  'decimal-point': 'the decimal point had slipped',
  'wrong-sign': 'it had been measured the other way round',
  'diameter-for-radius': 'a diameter and a radius had been taken for each other',
};

export default definePartRule({
  id: 'contradiction',
  title: 'Dimensions contradict one another',
  department: 'drawing',
  severity: 'stop',
  shuts: ['cut'],
  acceptable: false,
  needs: ['part', 'dimensions', 'axes'],
  messages: {
    slip: '{chain} of {part} do not close along {axis}: {errorMm} is left over, and their limits allow {allowedMm}. With {suspect} it is as if {slip}.',
    one: '{chain} of {part} do not close along {axis}: {errorMm} is left over, and their limits allow {allowedMm}. {suspect} alone would explain it.',
    several: '{chain} of {part} do not close along {axis}: {errorMm} is left over, and their limits allow {allowedMm}.',
  },
  remedies: {
    slip: 'Look at {suspect} first: it reads {text}, and {wouldBeMm} would close the chain.',
    one: 'Look at {suspect} first: it reads {text}, and {wouldBeMm} would close the chain.',
    several:
      'Measure or work out each of them again. {suspect} is the likeliest: it reads {text}, and {wouldBeMm} would close the chain.',
  },

  check({ part, dimensions, axes }) {
    const records = new Map<DimensionId, (typeof dimensions)[number]['record']>();
    for (const { record } of dimensions) records.set(record.id, record);
    return axes.flatMap(({ axis, conflicts }) =>
      conflicts.flatMap((conflict): readonly Said<'slip' | 'one' | 'several'>[] => {
        const [suspect] = conflict.suspects;
        const first = suspect?.dimension ?? conflict.dimensions[0];
        if (first === undefined) return [];
        const { closingError, worstMinus, worstPlus } = conflict.loop;
        const data = {
          chain: listed(conflict.dimensions.map((id) => records.get(id)?.name ?? id)),
          part: part.name,
          axis,
          errorMm: Math.abs(closingError),
          allowedMm: Math.abs(closingError > 0 ? worstPlus : worstMinus),
          suspect: records.get(first)?.name ?? first,
          text: records.get(first)?.value ?? '',
          wouldBeMm: suspect?.wouldBe ?? 0,
        };
        const at = [first, ...conflict.dimensions.filter((id) => id !== first)] as const;
        if (suspect?.slip) return [{ message: 'slip', at, data: { ...data, slip: slips[suspect.slip] } }];
        return [{ message: conflict.suspects.length === 1 ? 'one' : 'several', at, data }];
      }),
    );
  },
});
