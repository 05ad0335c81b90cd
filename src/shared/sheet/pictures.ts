import type { DimensionId } from '../base/ids.ts';
import type { Pieces } from '../base/pieces.ts';
import { valueInRole } from '../build/body-uses.ts';
import { type Axis, axes } from '../build/station.ts';
import type { PartMesh, PlacedBody, Vec3 } from '../solid/placed.ts';
import { boxAround } from './box.ts';
import { type Axle, axlesOf, pitchCircles } from './centre-lines.ts';
import { placesOfStations } from './figures.ts';
import type { Point, SheetOptions, SheetSubject, ViewName } from './sheet.ts';
import { frameOfView, frameTowards, inFrame, type ViewFrame, viewAlong } from './view-frame.ts';
import { type ViewLines, viewLines } from './view-lines.ts';
import { type ViewPicture, viewPicture } from './view-picture.ts';

const names: readonly ViewName[] = ['front', 'top', 'side'];

/** A cut across an axis; `sight` +1 looks towards greater places. */
export interface Cut {
  readonly axis: Axis;
  readonly at: number;
  readonly sight: 1 | -1;
}

/** Where the section that was asked for cuts the part; undefined when there is none, or its station has no place. */
export function cutOf({ stations, axes: drawn, ...subject }: SheetSubject, { section }: SheetOptions): Cut | undefined {
  const station = stations.find(({ id }) => id === section?.station);
  const at = station && placesOfStations({ stations, axes: drawn, ...subject }).get(station.id);
  if (!section || !station || at === undefined) return undefined;
  return { axis: station.axis, at, sight: section.look === '+' ? 1 : -1 };
}

/** The three views of a part, not yet on paper. */
export function* picturesOf(
  subject: SheetSubject,
  { projection }: SheetOptions,
  bodies: readonly PlacedBody[],
  cut: Cut | undefined,
): Pieces<readonly ViewPicture[]> {
  const { mesh } = subject;
  const axles = bodies.flatMap(axlesOf);
  const places = placesOfStations(subject);
  const diameterOf = (id: DimensionId) => {
    const dimension = subject.dimensions.find((one) => one.id === id)!;
    return valueInRole(dimension, subject.resolved.get(id)!.value!, 'diameter');
  };
  const circles = bodies.flatMap((body) => pitchCircles(body, places, diameterOf));
  const [low, high] = mesh ? boxOfMesh(mesh) : boxOfStations(subject, axles);
  const pictures: ViewPicture[] = [];
  for (const name of names) {
    const isCut = cut !== undefined && viewAlong(cut.axis) === name;
    const frame = isCut ? frameTowards(cut.axis, cut.sight > 0 ? -1 : 1) : frameOfView(name, projection);
    const cutAt = isCut ? cut.at : undefined;
    const lines = mesh ? linesOf(mesh, frame, cutAt) : { lines: [], cut: [], nearMm: 1e-6 };
    const box = boxAround([low, high].map((corner) => inFrame(frame, corner)).map(([x, y]): Point => [x, y]))!;
    pictures.push(viewPicture(name, frame, lines, axles, circles, box, cutAt));
    yield;
  }
  return pictures;
}

// Lines of a view hang on the mesh and the way it is looked at alone; dimensions are typed far more often than meshes change.
const known = new WeakMap<PartMesh, Map<string, ViewLines>>();
const MOST_KEPT = 12;

function linesOf(mesh: PartMesh, frame: ViewFrame, cutAt: number | undefined): ViewLines {
  const { axis, sign } = frame.towards;
  const key = `${axis} ${sign} ${cutAt}`;
  let views = known.get(mesh);
  if (!views) {
    views = new Map();
    known.set(mesh, views);
  }
  let lines = views.get(key);
  if (!lines) {
    if (views.size >= MOST_KEPT) views.clear();
    lines = viewLines(mesh, frame, cutAt);
    views.set(key, lines);
  }
  return lines;
}

function boxOfMesh({ vertices }: PartMesh): readonly [Vec3, Vec3] {
  const low: [number, number, number] = [Infinity, Infinity, Infinity];
  const high: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  for (let i = 0; i < vertices.length; i++) {
    const k = (i % 3) as 0 | 1 | 2;
    low[k] = Math.min(low[k], vertices[i]!);
    high[k] = Math.max(high[k], vertices[i]!);
  }
  return [low, high];
}

/** Without a solid the sheet shows what is known of the part: its stations. */
function boxOfStations(subject: SheetSubject, axles: readonly Axle[]): readonly [Vec3, Vec3] {
  const places = placesOfStations(subject);
  const ranges = axes.map((axis, k) => {
    const values = subject.stations
      .filter((one) => one.axis === axis && places.has(one.id))
      .map(({ id }) => places.get(id)!);
    for (const { from, to, radius } of axles) {
      const isAlong = Math.abs(to[k]! - from[k]!) > 1e-9;
      values.push(from[k]! - (isAlong ? 0 : radius), to[k]! + (isAlong ? 0 : radius));
    }
    return values.length === 0 ? [0, 0] : [Math.min(...values), Math.max(...values)];
  });
  return [ranges.map(([low]) => low!) as unknown as Vec3, ranges.map(([, high]) => high!) as unknown as Vec3];
}
