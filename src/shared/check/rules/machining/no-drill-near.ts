import { drillsFor } from '../../../machining/route/drill-choice.ts';
import { partNames } from '../../part-names.ts';
import { definePartRule, type Said } from '../../rule.ts';

/** Opens a hole to any diameter. */
const opensFreely: ReadonlySet<string> = new Set(['bore', 'ream', 'mill', 'grind', 'lap']);

export default definePartRule({
  id: 'no-drill-near',
  title: 'Drill that nobody sells',
  department: 'machining',
  severity: 'note',
  shuts: [],
  acceptable: true,
  needs: ['part', 'dimensions', 'operations', 'bodies'],
  messages: {
    off: '{hole} of {part} is drilled to {diameter} and may be {lower} to {upper}; the nearest drill is {drill}, {size}.',
    none: '{hole} of {part} is drilled to {diameter}, and no drill of the lists comes near it.',
  },
  remedies: {
    off: 'Draw it to the size of a drill, give it wider limits, or bore or ream it.',
    none: 'Bore it, or draw it to the size of a drill.',
  },

  check({ part, dimensions, operations, bodies }) {
    const nameOf = partNames({ bodies });
    const sizes = new Map(dimensions.map((one) => [one.record.id, one]));
    return bodies.flatMap(({ record }): readonly Said<'off' | 'none'>[] => {
      const { shape } = record;
      if (shape.type !== 'hole') return [];
      const working = operations.filter(({ read }) => read.holes.some(({ body }) => body === record.id));
      if (!working.some((one) => one.record.process === 'drill')) return [];
      if (working.some((one) => opensFreely.has(one.record.process))) return [];
      const size = sizes.get(shape.diameter);
      const measure = size?.record.measure;
      const { value, limits } = size?.resolved ?? {};
      if (measure?.type !== 'size' || measure.form !== 'diameter' || value === undefined) return [];
      const { best } = drillsFor(value);
      const data = { hole: nameOf(record.id), part: part.name, diameterMm: value };
      if (!best) return [{ message: 'none', at: [record.id, shape.diameter], data }];
      if (!limits || (best.diameterMm >= limits.lower && best.diameterMm <= limits.upper)) return [];
      const nearest = { drill: best.name, sizeMm: best.diameterMm, lowerMm: limits.lower, upperMm: limits.upper };
      return [{ message: 'off', at: [record.id, shape.diameter], data: { ...data, ...nearest } }];
    });
  },
});
