import type { DimensionId } from '../base/ids.ts';
import { ok } from '../base/result.ts';
import type { Shape } from '../build/body.ts';
import { holeToTap } from '../tables/tap-drill.ts';
import { SAME_MM } from './outline.ts';
import { noSize, type Placed, shapeProblem } from './place-problem.ts';
import { turned } from './place-turned.ts';
import type { ExactShape } from './placed.ts';
import type { Places } from './places.ts';

type Hole = Extract<Shape, { readonly type: 'hole' }>;

/** A radius at a depth below the mouth. */
interface Depth {
  readonly t: number;
  readonly r: number;
}

/** A hole as one turned outline: mouth, counterbore and countersink, full diameter, drill point. */
export function placeHole(hole: Hole, places: Places): Placed<ExactShape> {
  const from = places.at(hole.from);
  const to = places.at(hole.to);
  const depth = Math.abs(to - from);
  if (depth <= SAME_MM) return noSize(hole.from, hole.to);
  const radius = drilledRadius(hole.diameter, places);
  if (!radius.ok) return radius;
  const wider = widerAbove(hole, radius.value, depth, places);
  if (!wider.ok) return wider;
  const tip = pointLength(hole.point, radius.value, places);
  if (!tip.ok) return tip;
  const way = to > from ? 1 : -1;
  const wall: Depth[] = [...wider.value, { t: depth, r: radius.value }];
  const bottom: Depth[] = tip.value > SAME_MM ? [{ t: depth + tip.value, r: 0 }] : [{ t: depth, r: 0 }];
  const outline = [{ t: 0, r: 0 }, ...wall, ...bottom].map(({ t, r }) => ({ a: from + way * t, r }));
  return ok(turned(hole.axis, hole.centre, outline, places));
}

/** Half of what the drill takes away; of a thread the hole to tap. */
function drilledRadius(id: DimensionId, places: Places): Placed<number> {
  const diameter = places.size(id, 'diameter');
  if (diameter <= SAME_MM) return noSize(id);
  if (!places.isThread(id)) return ok(diameter / 2);
  const pitch = places.pitch(id);
  if (pitch === undefined) return shapeProblem('thread-without-pitch', id);
  const drill = holeToTap(diameter, pitch);
  return drill > SAME_MM ? ok(drill / 2) : noSize(id);
}

/** The wall from the mouth down to where the plain hole begins: the wider of counterbore and countersink at each depth. */
function widerAbove(
  { counterbore, countersink, diameter, to }: Hole,
  radius: number,
  depth: number,
  places: Places,
): Placed<readonly Depth[]> {
  let bore: Depth | undefined;
  if (counterbore) {
    const r = places.size(counterbore.diameter, 'diameter') / 2;
    const t = places.size(counterbore.depth, 'length');
    if (t <= SAME_MM) return noSize(counterbore.depth);
    if (r <= radius + SAME_MM) return shapeProblem('counterbore-not-wider', counterbore.diameter, diameter);
    if (t >= depth - SAME_MM) return shapeProblem('counterbore-too-deep', counterbore.depth, to);
    bore = { t, r };
  }
  if (!countersink) return ok(bore ? [{ t: 0, r: bore.r }, bore, { t: bore.t, r: radius }] : [{ t: 0, r: radius }]);
  const mouth = places.size(countersink.diameter, 'diameter') / 2;
  const angle = places.size(countersink.angle, 'angle');
  if (!isOpenAngle(angle)) return shapeProblem('angle-out-of-range', countersink.angle);
  if (mouth <= radius + SAME_MM) return shapeProblem('countersink-not-wider', countersink.diameter, diameter);
  const slope = halfTangent(angle);
  const deep = (mouth - radius) / slope;
  if (deep >= depth - SAME_MM) return shapeProblem('countersink-too-deep', countersink.diameter, countersink.angle, to);
  const sink: Depth[] = [
    { t: 0, r: mouth },
    { t: deep, r: radius },
  ];
  if (!bore) return ok(sink);
  // The cone goes on where it is wider than the counterbore: at the mouth, or below the counterbore's bottom.
  const atMouth = mouth > bore.r + SAME_MM;
  const meets = (mouth - bore.r) / slope;
  const atBottom = mouth - bore.t * slope;
  if (atMouth && meets >= bore.t - SAME_MM) return ok(sink);
  const start: Depth[] = atMouth ? [sink[0]!, { t: meets, r: bore.r }] : [{ t: 0, r: bore.r }];
  if (deep <= bore.t + SAME_MM) return ok([...start, bore, { t: bore.t, r: radius }]);
  return ok([...start, bore, { t: bore.t, r: atBottom }, sink[1]!]);
}

function pointLength(id: DimensionId | undefined, radius: number, places: Places): Placed<number> {
  if (id === undefined) return ok(0);
  const angle = places.size(id, 'angle');
  return isOpenAngle(angle) ? ok(radius / halfTangent(angle)) : shapeProblem('angle-out-of-range', id);
}

const isOpenAngle = (degrees: number): boolean => degrees > 0 && degrees < 180;

/** Radius per depth of a cone of the given included angle; exact where workshops use it most, at 90°. */
const halfTangent = (degrees: number): number => (degrees === 90 ? 1 : Math.tan((degrees * Math.PI) / 360));
