import { valueInRole } from '../../../build/body-uses.ts';
import { isWhole } from '../../is-whole.ts';
import { partNames } from '../../part-names.ts';
import { definePartRule, type PartFacts, type Said } from '../../rule.ts';

// Common practice, no source: the axis of a hole for a fastener stands one and a half of its diameters or more from the
// edge of what it is drilled in; a boss for a tapped hole, or round any other small hole, is twice the diameter across.
const FASTENER_DIAMETERS = 1.5;
const BOSS_DIAMETERS = 1;
/** Holes above this are bores, whose walls are judged by how thick they are, in mm. */
const LARGEST_HOLE_MM = 20;
/** Faces drawn at the very distance are right, in mm. */
const SLACK_MM = 0.06;

export default definePartRule({
  id: 'hole-edge-distance',
  title: 'Hole near an edge',
  department: 'drawing',
  severity: 'caution',
  shuts: [],
  acceptable: true,
  needs: ['part', 'dimensions', 'bodies', 'solid'],
  ofSurfaces: true,
  messages: {
    fastener:
      '{body} of {part}, a hole of {diameter}, has its axis {centre} from the face of {beside}; a hole for a fastener is kept {wanted} away (common practice).',
    boss: '{body} of {part}, a hole of {diameter}, has its axis {centre} from the face of {beside}; the metal round it is kept to twice its diameter, {wanted} from the axis (common practice).',
  },
  remedies: {
    fastener: 'Move {body} further in, make {beside} wider there, or take the metal of {metal} as enough.',
    boss: 'Make {beside} wider, move {body}, or take the metal of {metal} as enough.',
  },

  check({ part, dimensions, bodies, solid }) {
    if (!isWhole(bodies)) return [];
    const nameOf = partNames({ bodies });
    const placed = new Map(bodies.map((body) => [body.record.id, body]));
    return (solid?.faces.holes ?? []).flatMap(
      ({ body: id, beside, centreMm, metalMm }): readonly Said<'fastener' | 'boss'>[] => {
        const body = placed.get(id);
        const hole = body && holeIn(body, dimensions);
        if (!hole || metalMm === 0) return [];
        const wantedMm = hole.diameterMm * (hole.isForFastener ? FASTENER_DIAMETERS : BOSS_DIAMETERS);
        if (centreMm >= wantedMm - SLACK_MM) return [];
        return [
          {
            message: hole.isForFastener ? 'fastener' : 'boss',
            at: id === beside ? [id] : [id, beside],
            data: {
              body: nameOf(id),
              part: part.name,
              beside: nameOf(beside),
              diameterMm: hole.diameterMm,
              centreMm,
              wantedMm,
              metalMm,
            },
          },
        ];
      },
    );
  },
});

/** What a body is as a hole that a fastener, or something as small, may go through. */
function holeIn(
  { record: { shape }, moves }: PartFacts['bodies'][number],
  dimensions: PartFacts['dimensions'],
): { readonly diameterMm: number; readonly isForFastener: boolean } | undefined {
  if (shape.type !== 'hole') return undefined;
  const size = dimensions.find(({ record }) => record.id === shape.diameter);
  if (size?.resolved.value === undefined) return undefined;
  const diameterMm = valueInRole(size.record, size.resolved.value, 'diameter');
  if (diameterMm > LARGEST_HOLE_MM) return undefined;
  const { measure } = size.record;
  const isTapped = measure.type === 'size' && measure.form === 'thread';
  const takesHead = shape.counterbore !== undefined || shape.countersink !== undefined;
  return { diameterMm, isForFastener: !isTapped && (takesHead || moves.length > 1) };
}
