import { epsilonOf } from '../../../quantity/tolerance.ts';
import { castingTolerance } from '../../../tables/casting.ts';
import { gradeWidth } from '../../../tables/iso286.ts';
import { definePartRule, type Said } from '../../rule.ts';

/**
 * Finest grade that hand work on small machines is trusted to hold: IT6 is reached by reaming, honing and fitting to
 * gauge. Common practice, no source.
 */
const FINEST_GRADE = 6;

export default definePartRule({
  id: 'limits-too-narrow',
  title: 'Limits narrower than the make can hold',
  department: 'drawing',
  severity: 'caution',
  shuts: [],
  acceptable: true,
  needs: ['settings', 'part', 'dimensions'],
  messages: {
    cast: '{name} of {part} is left as cast within {bandMm} in all; castings of this grade scatter over {holdsMm} ({row}).',
    machined: '{name} of {part} is to be machined within {bandMm} in all; IT{grade} at this size is {holdsMm} ({row}).',
  },
  remedies: {
    cast: 'Machine it, widen its limits, or choose a finer casting grade in the build settings if your foundry holds it.',
    machined: 'Widen its limits, or make it to suit its mate and accept this with that reason.',
  },

  check: ({ settings, part, dimensions }) =>
    dimensions.flatMap(({ record, resolved }): readonly Said<'cast' | 'machined'>[] => {
      const { value, limits, unit } = resolved;
      // What is bought is held by its maker.
      if (part.make === 'bought' || unit !== 'length' || value === undefined || limits?.origin !== 'written') return [];
      const { measure, finish } = record;
      const form = measure.type === 'between' ? 'length' : measure.form;
      if (form === 'thread' || (form === 'radius' && finish === 'machined')) return [];
      const size = Math.abs(value);
      const bandMm = limits.upper - limits.lower;
      const held = finish === 'as cast' ? castBand(settings.castingGrade, size) : gradeWidth(FINEST_GRADE, size);
      if (!held || bandMm >= held.widthMm - epsilonOf.length) return [];
      const data = { name: record.name, part: part.name, bandMm, holdsMm: held.widthMm, row: held.row };
      const at = [record.id] as const;
      return finish === 'as cast'
        ? [{ message: 'cast', at, data }]
        : [{ message: 'machined', at, data: { ...data, grade: FINEST_GRADE } }];
    }),
});

function castBand(grade: number, sizeMm: number): { readonly widthMm: number; readonly row: string } | undefined {
  const tolerance = castingTolerance(grade, sizeMm);
  return tolerance && { widthMm: 2 * tolerance.plusMinus, row: tolerance.row };
}
