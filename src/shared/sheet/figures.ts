import type { DimensionId, StationId } from '../base/ids.ts';
import { valueInRole } from '../build/body-uses.ts';
import { type Axis, axes } from '../build/station.ts';
import type { ResolvedDimension } from '../drawing/drawing.ts';
import type { PlacedBody } from '../solid/placed.ts';
import { calloutsOf } from './callout-words.ts';
import { type Callout, type FigureContext, isRadius, type RowFigure, signOf } from './figure.ts';
import { type FigureText, figureText } from './figure-words.ts';
import type { Pick, SheetSubject, Unplaced } from './sheet.ts';
import type { ViewPicture, Way } from './view-picture.ts';

export interface Figures {
  readonly rows: readonly RowFigure[];
  readonly callouts: readonly Callout[];
  readonly unplaced: readonly Unplaced[];
}

/** Places of the stations that hang on the datum of their axis. */
export function placesOfStations(subject: SheetSubject): ReadonlyMap<StationId, number> {
  const places = new Map<StationId, number>();
  for (const { datum, stations } of subject.axes) {
    if (datum === undefined) continue;
    for (const { id, group, at } of stations) if (group === 0) places.set(id, at);
  }
  return places;
}

interface ViewWay {
  readonly view: ViewPicture;
  readonly way: Way;
  readonly sign: 1 | -1;
}

/** The ways in which views show an axis at true length. */
export function waysAlong(views: readonly ViewPicture[], axis: Axis): readonly ViewWay[] {
  return views.flatMap((view): readonly ViewWay[] => {
    const { across, up } = view.frame;
    if (across.axis === axis) return [{ view, way: 'across', sign: across.sign }];
    if (up.axis === axis) return [{ view, way: 'up', sign: up.sign }];
    return [];
  });
}

/** Sorts every dimension of a part: into a row beside the view that shows it best, into words at a leader, or to the unplaced. */
export function gatherFigures(
  subject: SheetSubject,
  views: readonly ViewPicture[],
  bodies: readonly PlacedBody[],
): Figures {
  const context = contextOf(subject, views);
  const rows: RowFigure[] = [];
  const callouts: Callout[] = [];
  const unplaced: Unplaced[] = [];
  const busy = new Map<string, number>();

  const addRow = (
    axis: Axis,
    a: number,
    b: number,
    id: DimensionId,
    text: FigureText,
    stands: readonly Pick[],
    ends: readonly [StationId | undefined, StationId | undefined] = [undefined, undefined],
  ): boolean => {
    let best: { readonly figure: RowFigure; readonly worth: number; readonly load: number } | undefined;
    for (const { view, way, sign } of waysAlong(views, axis)) {
      const [from, to] = [Math.min(sign * a, sign * b), Math.max(sign * a, sign * b)];
      const worth = view.shownAt(way, from).plainness + view.shownAt(way, to).plainness;
      const load = busy.get(`${view.name} ${way}`) ?? 0;
      if (best && (worth < best.worth || (worth === best.worth && load >= best.load))) continue;
      const inOrder = sign * a <= sign * b;
      const figure = {
        dimension: id,
        view: view.name,
        way,
        from,
        to,
        text,
        stands,
        ends: inOrder ? ends : ([ends[1], ends[0]] as const),
      };
      best = { figure, worth, load };
    }
    if (!best) return false;
    rows.push(best.figure);
    const key = `${best.figure.view} ${best.figure.way}`;
    busy.set(key, (busy.get(key) ?? 0) + 1);
    context.shown.add(id);
    return true;
  };

  for (const { id } of subject.stations) if (!context.stationAt.has(id)) unplaced.push({ why: 'station-loose', id });
  for (const dimension of subject.dimensions) {
    const { id, measure } = dimension;
    if (!hasValue(subject.resolved.get(id))) {
      unplaced.push({ why: 'no-value', id });
      context.shown.add(id);
      continue;
    }
    if (measure.type !== 'between') continue;
    const [from, to] = [context.stationAt.get(measure.from), context.stationAt.get(measure.to)];
    const axis = context.stationAxis.get(measure.from);
    if (from === undefined || to === undefined || axis === undefined) {
      const stations = [measure.from, measure.to].filter((station) => !context.stationAt.has(station));
      unplaced.push({ why: 'ends-loose', id, stations });
    } else addRow(axis, from, to, id, context.text(id), [id], [measure.from, measure.to]);
    context.shown.add(id);
  }

  for (const body of bodies) {
    if (!body.shape) continue;
    for (const { axis, from, to, id, sign } of straightSizes(body, context)) {
      if (!context.shown.has(id)) addRow(axis, from, to, id, context.text(id, sign), [id, body.record.id]);
    }
    callouts.push(...calloutsOf(body, context));
  }

  for (const { record, problem } of subject.bodies) {
    if (!problem) continue;
    const at = problem.why === 'not-placed' ? [...problem.stations, ...problem.dimensions] : problem.at;
    unplaced.push({
      why: 'body',
      id: record.id,
      stations: at.filter((id): id is StationId => id.startsWith('station:')),
      dimensions: at.filter((id): id is DimensionId => id.startsWith('dimension:')),
    });
  }
  for (const { id } of subject.dimensions) if (!context.shown.has(id)) unplaced.push({ why: 'no-body', id });
  return { rows, callouts, unplaced };
}

const hasValue = (resolved: ResolvedDimension | undefined): boolean => resolved?.value !== undefined;

function contextOf(subject: SheetSubject, views: readonly ViewPicture[]): FigureContext {
  const dimensions = new Map(subject.dimensions.map((dimension) => [dimension.id, dimension]));
  const unit = subject.settings.lengthUnit;
  return {
    subject,
    views,
    dimensions,
    stationAt: placesOfStations(subject),
    stationAxis: new Map(subject.stations.map(({ id, axis }) => [id, axis])),
    text: (id, sign) => figureText(dimensions.get(id)!, subject.resolved.get(id)!, unit, sign),
    value: (id, role) => valueInRole(dimensions.get(id)!, subject.resolved.get(id)!.value!, role),
    shown: new Set(),
  };
}

interface StraightSize {
  readonly axis: Axis;
  readonly from: number;
  readonly to: number;
  readonly id: DimensionId;
  readonly sign: string;
}

/** Sizes of a body that a dimension line can show across it: diameters of what is turned, thicknesses, widths of slots. */
function straightSizes({ record, moves }: PlacedBody, context: FigureContext): readonly StraightSize[] {
  const { shape } = record;
  if (moves.length !== 1) return [];
  const at = (station: StationId) => context.stationAt.get(station)!;
  const other = (axis: Axis) => axes.filter((one) => one !== axis) as [Axis, Axis];
  const diameters = (
    axis: Axis,
    centre: readonly [StationId, StationId],
    ids: readonly (DimensionId | undefined)[],
  ) => {
    const [first, second] = other(axis);
    // Along Z the second axis would lie in the side view alone, so the first serves as well.
    const [cross, place] = axis === 'X' ? [second, centre[1]] : axis === 'Y' ? [first, centre[0]] : [first, centre[0]];
    return [...new Set(ids)].flatMap((id): readonly StraightSize[] => {
      if (id === undefined) return [];
      const radius = context.value(id, 'radius');
      const middle = at(place);
      return [
        {
          axis: cross,
          from: isRadius(context, id) ? middle : middle - radius,
          to: middle + radius,
          id,
          sign: signOf(context, id),
        },
      ];
    });
  };
  switch (shape.type) {
    case 'cylinder':
      return record.adds ? diameters(shape.axis, shape.centre, [shape.diameter]) : [];
    case 'cone':
      return diameters(shape.axis, shape.centre, shape.diameters);
    case 'revolved':
      return diameters(
        shape.axis,
        shape.centre,
        shape.outline.map(({ diameter }) => diameter),
      );
    case 'rib': {
      const half = context.value(shape.thickness, 'length') / 2;
      const middle = at(shape.at);
      return [{ axis: shape.axis, from: middle - half, to: middle + half, id: shape.thickness, sign: '' }];
    }
    case 'slot': {
      const half = context.value(shape.width, 'width') / 2;
      const [first, second] = other(shape.axis);
      const [a, b] = shape.centres;
      const isAlongFirst = Math.abs(at(a[1]) - at(b[1])) < 1e-9;
      const isAlongSecond = Math.abs(at(a[0]) - at(b[0])) < 1e-9;
      if (!isAlongFirst && !isAlongSecond) return [];
      const [axis, middle] = isAlongFirst ? [second, at(a[1])] : [first, at(a[0])];
      return [{ axis, from: middle - half, to: middle + half, id: shape.width, sign: '' }];
    }
    default:
      return [];
  }
}
