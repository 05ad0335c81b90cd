import type { MachineType } from '../../tables/machine-figures.ts';
import { drawnTable } from './drawn-table.ts';
import { overTable } from './over-table.ts';
import type { PictureItem, PictureView, SetupPicture } from './picture.ts';
import type { LatheLook, Point, ShownVerdict, Span, TableScene } from './scene.ts';
import { area, boxAbout, line, nameIn, rect } from './shapes.ts';

type Side = 'front' | 'end';

/** Work on a table or in a vise: from the front, with the line across the picture or upright in it, and from the end. */
export function drawTable(scene: TableScene, look: LatheLook): SetupPicture {
  return { views: [elevation(scene, look, 'front'), elevation(scene, look, 'end')] };
}

/** The work's own breadth in a view. */
const breadth = ({ size }: TableScene, side: Side): Span => (side === 'front' ? size.along : size.back);
const length = ([from, to]: Span): number => to - from;
const middle = ([from, to]: Span): number => (from + to) / 2;

function elevation(scene: TableScene, look: LatheLook, side: Side): PictureView {
  const unit = drawnTable(scene);
  const points: Point[] = [];
  const span = breadth(scene, side);
  const [foot, top] = scene.size.up;
  points.push([span[0], foot], [span[1], top]);
  const items: PictureItem[] = [
    ...tableItems(scene, side, points),
    ...jawItems(scene, side, points, 'behind'),
    ...columnItems(scene, side, points),
    ...overTable(scene, side, look, points),
    { is: 'work' },
    ...jawItems(scene, side, points, 'beside'),
    ...collisions(scene, side, look),
    ...travelItems(scene, side, points),
    ...cutItems(scene, side, look),
    ...measureItems(scene, side, look.shown),
  ];
  const box = boxAbout(points, unit * 0.14);
  if (scene.isUpright) items.push(line('axis', [0, box.bottom], [0, box.top]));
  return { side, box, items };
}

const tableKeys: Readonly<Partial<Record<MachineType, readonly [along: string, back: string]>>> = {
  'drill press': ['tableLength', 'tableWidth'],
  'milling machine': ['tableLength', 'tableWidth'],
  shaper: ['tableLength', 'tableWidth'],
  planer: ['tableLength', 'tableWidth'],
  'surface plate': ['plateLength', 'plateWidth'],
};
const tableNames: Readonly<Partial<Record<MachineType, string>>> = {
  'surface plate': 'plate',
  vise: 'vise',
  bandsaw: 'saw table',
};

/** The slab that the work, or the vise under it, stands on; as broad as the machine's own where that is known. */
function tableItems(scene: TableScene, side: Side, points: Point[]): readonly PictureItem[] {
  const unit = drawnTable(scene);
  const span = breadth(scene, side);
  const top = scene.jaws === undefined ? 0 : -viseBody(scene);
  const keys = tableKeys[scene.machine];
  const known = keys === undefined ? undefined : scene.has[keys[side === 'front' ? 0 : 1]];
  const half = (known ?? length(span) * 1.5 + unit * 0.3) / 2;
  const centre = scene.isUpright ? 0 : middle(span);
  const bottom = top - unit * 0.16;
  points.push([centre - half, bottom], [centre + half, top]);
  if (scene.machine === 'vise') return [];
  return [
    area('table', rect(centre - half, bottom, centre + half, top)),
    nameIn('table', tableNames[scene.machine] ?? 'table', centre - half, bottom, centre + half, top),
  ];
}

const viseBody = (scene: TableScene): number => drawnTable(scene) * 0.16;

/** Jaws to both sides of what they close on; seen square to that, the far jaw behind the work. */
function jawItems(scene: TableScene, side: Side, points: Point[], which: 'behind' | 'beside'): readonly PictureItem[] {
  const { jaws, has } = scene;
  if (jaws === undefined || jaws.way === 'up') return [];
  const closesHere = (jaws.way === 'along') === (side === 'front');
  const unit = drawnTable(scene);
  const high = has.jawDepth ?? Math.min(unit * 0.3, scene.size.up[1] * 0.6);
  const low = -viseBody(scene);
  if (closesHere && which === 'beside') {
    const thick = unit * 0.13;
    const [from, to] = jaws.span;
    points.push([from - thick * 1.6, low], [to + thick * 1.6, high]);
    return [
      area('vise', rect(from - thick, 0, from, high), rect(to, 0, to + thick, high)),
      nameIn('vise', 'jaw', to, 0, to + thick, high),
    ];
  }
  if (which !== 'behind') return [];
  const span = closesHere ? jaws.span : breadth(scene, side);
  const half = closesHere ? length(span) / 2 + unit * 0.13 * 1.6 : (has.jawWidth ?? length(span)) / 2;
  const [left, right] = [middle(span) - half, middle(span) + half];
  points.push([left, low], [right, high]);
  const body = area('vise', rect(left, low, right, 0));
  return closesHere ? [body] : [body, area('vise', rect(left, 0, right, high))];
}

/** A column stands behind the work; the uprights of a planer to both sides of it. */
function columnItems(scene: TableScene, side: Side, points: Point[]): readonly PictureItem[] {
  if (side === 'front') return [];
  const { has, machine, size } = scene;
  const unit = drawnTable(scene);
  const top = Math.max(size.up[1], ...['daylight', 'underRail'].map((key) => has[key] ?? 0)) + unit * 0.34;
  const thick = unit * 0.2;
  const foot = -unit * 0.3;
  const beam = (from: number): readonly Point[] => rect(from, foot, from + thick, top);
  if (machine === 'planer' && has.betweenUprights !== undefined) {
    const half = has.betweenUprights / 2;
    const centre = middle(size.back);
    points.push([centre - half - thick, foot], [centre + half + thick, top]);
    return [area('column', beam(centre - half - thick), beam(centre + half))];
  }
  if ((machine !== 'drill press' && machine !== 'milling machine' && machine !== 'bandsaw') || has.throat === undefined)
    return [];
  points.push([has.throat, foot], [has.throat + thick, top]);
  return [
    area('column', beam(has.throat)),
    nameIn('column', machine === 'bandsaw' ? 'frame' : 'column', has.throat, foot, has.throat + thick, top),
  ];
}

/** Only what a verdict found to hit is filled. */
function collisions(scene: TableScene, side: Side, { shown }: LatheLook): readonly PictureItem[] {
  const { hits, size, has } = scene;
  const [, top] = size.up;
  const span = breadth(scene, side);
  const loops: (readonly Point[])[] = [];
  const short = shown !== undefined && highKinds.has(shown.kind) ? Math.min(0, shown.margin ?? 0) : 0;
  if (short < 0) loops.push(rect(span[0], Math.max(size.up[0], top + short), span[1], top));
  if (side === 'end' && hits.includes('in-throat')) {
    const throat = has.throat;
    if (throat !== undefined && span[1] > throat) loops.push(rect(throat, size.up[0], span[1], top));
    const half = has.betweenUprights === undefined ? undefined : has.betweenUprights / 2;
    if (scene.machine === 'planer' && half !== undefined) {
      const centre = middle(span);
      if (span[1] > centre + half) loops.push(rect(centre + half, size.up[0], span[1], top));
      if (span[0] < centre - half) loops.push(rect(span[0], size.up[0], centre - half, top));
    }
  }
  if (hits.includes('on-table') || hits.includes('on-plate')) {
    const key = tableKeys[scene.machine]?.[side === 'front' ? 0 : 1];
    const half = (key === undefined ? undefined : has[key]) ?? Infinity;
    const centre = scene.isUpright ? 0 : middle(span);
    if (span[1] > centre + half / 2) loops.push(rect(centre + half / 2, 0, span[1], Math.min(top, 4)));
    if (span[0] < centre - half / 2) loops.push(rect(span[0], 0, centre - half / 2, Math.min(top, 4)));
  }
  return loops.length === 0 ? [] : [area('collision', ...loops)];
}

const highKinds: ReadonlySet<string> = new Set(['daylight', 'under-ram', 'under-wheel', 'saw-height']);

const travelKeys: Readonly<Partial<Record<MachineType, readonly [along: string, back: string]>>> = {
  'milling machine': ['travelX', 'travelY'],
  grinder: ['travelX', 'travelY'],
  shaper: ['stroke', 'tableTravel'],
  planer: ['stroke', 'tableTravel'],
};

/** The stroke or travel that there is, as a bracket over the work. */
function travelItems(scene: TableScene, side: Side, points: Point[]): readonly PictureItem[] {
  const key = travelKeys[scene.machine]?.[side === 'front' ? 0 : 1];
  const travel = key === undefined ? undefined : scene.has[key];
  if (travel === undefined) return [];
  const unit = drawnTable(scene);
  const centre = side === 'front' && scene.cuts.length > 0 ? middle(spanOfCuts(scene)) : middle(breadth(scene, side));
  const y = -viseBody(scene) - unit * 0.24;
  const tick = unit * 0.03;
  const [from, to] = [centre - travel / 2, centre + travel / 2];
  points.push([from, y - tick * 3.4], [to, y + tick]);
  const words = key === 'stroke' ? 'stroke' : 'travel';
  return [
    line('limit', [from, y], [to, y]),
    line('limit', [from, y - tick], [from, y + tick]),
    line('limit', [to, y - tick], [to, y + tick]),
    nameIn('limit', words, from, y - tick * 3.4, to, y),
  ];
}

function spanOfCuts({ cuts }: TableScene): Span {
  const places = cuts.flatMap(({ from, to }) => [from, to]);
  return [Math.min(...places), Math.max(...places)];
}

function cutItems(scene: TableScene, side: Side, { cut }: LatheLook): readonly PictureItem[] {
  if (cut === undefined) return [];
  if (scene.isUpright) return [line('cut', [0, cut.from], [0, cut.to])];
  const high = scene.size.up[1];
  if (side === 'front') return [line('cut', [cut.from, high], [cut.to, high])];
  const half = cut.radius ?? 0;
  return half === 0 ? [] : [line('cut', [-half, high], [half, high])];
}

function measureItems(scene: TableScene, side: Side, shown: ShownVerdict | undefined): readonly PictureItem[] {
  if (shown?.has === undefined || shown.needs === undefined || shown.margin === undefined) return [];
  const { kind, state, has, needs, margin } = shown;
  const { size } = scene;
  const measure = (from: Point, to: Point): readonly PictureItem[] => [
    { is: 'measure', from, to, mm: margin, means: 'margin', of: kind, state },
  ];
  const top = size.up[1];
  switch (kind) {
    case 'daylight':
    case 'under-ram':
    case 'under-wheel':
    case 'saw-height': {
      // From where the nose (of a ram or a wheel: the work) stands as it is needed up to the highest that there is.
      const [from, to] = breadth(scene, side);
      const at = scene.isUpright ? drawnTable(scene) * 0.26 : from + (to - from) * 0.78;
      return side === 'front' ? measure([at, needs], [at, has]) : [];
    }
    case 'in-throat':
      return side === 'end' ? measure([needs, top * 0.72], [has, top * 0.72]) : [];
    case 'in-vise': {
      const { jaws } = scene;
      if (jaws === undefined || (jaws.way === 'along') !== (side === 'front')) return [];
      const [from, to] = jaws.span;
      return [
        {
          is: 'measure',
          from: [from, top * 1.08],
          to: [to, top * 1.08],
          mm: to - from,
          means: 'needed',
          of: kind,
          state,
        },
      ];
    }
    case 'stroke':
    case 'travel-x': {
      if (side !== 'front' || scene.cuts.length === 0) return [];
      const centre = middle(spanOfCuts(scene));
      const y = top * 1.1;
      return [
        {
          is: 'measure',
          from: [centre - needs / 2, y],
          to: [centre + needs / 2, y],
          mm: needs,
          means: 'needed',
          of: kind,
          state,
        },
      ];
    }
    default:
      return [];
  }
}
