import type { BodyId, PartId, StationId } from '../base/ids.ts';
import { placesOfStations, waysAlong } from './figures.ts';
import { hatching } from './hatch.ts';
import { lineMark, plainOf } from './marks.ts';
import type { Mark, Point, SheetSubject } from './sheet.ts';
import type { ViewPicture, Way } from './view-picture.ts';

/** Centre lines go so far beyond what they are the centre of, mm of paper (ISO 128-2:2020: a little). */
const BEYOND_MM = 2.5;

/** A place along a way at which the view shows nothing of the solid, to be shown by a line of its own. */
export interface LoosePlace {
  readonly way: Way;
  readonly at: number;
  readonly station: StationId;
  readonly bodies: readonly BodyId[];
}

/**
 * Placed stations that no edge shows: all of them while there is no solid, else those of bodies that lack something, so that
 * what is known of such a body is on the sheet. Each is shown in the first view along its axis.
 */
export function loosePlaces(view: ViewPicture, subject: SheetSubject): readonly LoosePlace[] {
  const places = placesOfStations(subject);
  return subject.stations.flatMap(({ id, axis }): readonly LoosePlace[] => {
    const at = places.get(id);
    if (at === undefined || view.name !== (axis === 'Y' ? 'top' : 'front')) {
      return [];
    }
    const bodies = subject.bodies.filter(({ problem, stations }) => problem && stations.includes(id));
    if (subject.mesh && bodies.length === 0) return [];
    const shown = waysAlong([view], axis)[0];
    if (!shown || view.shownAt(shown.way, shown.sign * at).plainness > 0) return [];
    return [{ way: shown.way, at: shown.sign * at, station: id, bodies: bodies.map(({ record }) => record.id) }];
  });
}

/** The lines of a view on the paper. */
export function drawView(
  { name, lines, centres, box }: ViewPicture,
  [ox, oy]: Point,
  times: number,
  part: PartId,
  loose: readonly LoosePlace[],
): readonly Mark[] {
  const place = ([x, y]: Point): Point => [ox + times * x, oy + times * y];
  const marks: Mark[] = [];
  const cut = lines.cut.map((loop) => loop.map(place));
  for (const points of hatching(cut)) marks.push(lineMark(plainOf(name, part), 'hatching', points));
  for (const { points, closed, isHidden, bodies } of lines.lines) {
    marks.push(lineMark(plainOf(name, ...bodies), isHidden ? 'hidden' : 'visible', points.map(place), closed));
  }
  for (const centre of centres) {
    const owner = plainOf(name, ...centre.bodies);
    if (centre.is === 'axis') {
      marks.push(lineMark(owner, 'centre', letOut(place(centre.from), place(centre.to))));
      continue;
    }
    const [x, y] = place(centre.at);
    const reach = centre.radius * times;
    if (centre.is === 'circle') {
      marks.push(lineMark(owner, 'centre', ring([x, y], reach), true));
      continue;
    }
    marks.push(
      lineMark(owner, 'centre', letOut([x - reach, y], [x + reach, y])),
      lineMark(owner, 'centre', letOut([x, y - reach], [x, y + reach])),
    );
  }
  for (const { way, at, station, bodies } of loose) {
    const ends: readonly [Point, Point] =
      way === 'across'
        ? [place([at, box.bottom]), place([at, box.top])]
        : [place([box.left, at]), place([box.right, at])];
    const isFlat = ends[0][0] === ends[1][0] && ends[0][1] === ends[1][1];
    const line = isFlat ? stub(ends[0], way) : letOut(...ends);
    marks.push(lineMark(plainOf(name, ...bodies, station), 'phantom', line));
  }
  return marks;
}

const ring = ([x, y]: Point, radius: number): readonly Point[] =>
  Array.from({ length: 96 }, (_, i): Point => {
    const angle = (i * Math.PI) / 48;
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
  });

function letOut([ax, ay]: Point, [bx, by]: Point): readonly [Point, Point] {
  const length = Math.hypot(bx - ax, by - ay);
  if (length === 0)
    return [
      [ax, ay],
      [bx, by],
    ];
  const [dx, dy] = [((bx - ax) / length) * BEYOND_MM, ((by - ay) / length) * BEYOND_MM];
  return [
    [ax - dx, ay - dy],
    [bx + dx, by + dy],
  ];
}

/** A short stroke across the way, where the view has no extent to draw a line over. */
const stub = ([x, y]: Point, way: Way): readonly [Point, Point] =>
  way === 'across' ? letOut([x, y - 3], [x, y + 3]) : letOut([x - 3, y], [x + 3, y]);
