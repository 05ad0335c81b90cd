import type { LatheLook } from './lathe-front.ts';
import type { PictureItem, PictureRole, PictureView, SetupPicture } from './picture.ts';
import type { Point, ShownVerdict, Span, TableScene } from './scene.ts';
import { area, boxAbout, line, name, rect } from './shapes.ts';

/** What stands over the table, and the figure that says how high. */
const over: Readonly<Partial<Record<TableScene['machine'], readonly [key: string, name: string]>>> = {
  'drill press': ['daylight', 'spindle'],
  'milling machine': ['daylight', 'spindle'],
  shaper: ['underRam', 'ram'],
  planer: ['underRail', 'rail'],
  grinder: ['underWheel', 'wheel'],
  bandsaw: ['cutHeight', 'guide'],
};

/** How far the table, the stroke or the head can go along the picture from the front and across it. */
const travels: Readonly<Partial<Record<TableScene['machine'], readonly [along: string, across: string]>>> = {
  'milling machine': ['travelX', 'travelY'],
  grinder: ['travelX', 'travelY'],
  shaper: ['stroke', 'tableTravel'],
  planer: ['stroke', 'tableTravel'],
};

const tables: Readonly<Partial<Record<TableScene['machine'], readonly [along: string, across: string]>>> = {
  'surface plate': ['plateLength', 'plateWidth'],
};

const length = ([from, to]: Span): number => to - from;
const middle = ([from, to]: Span): number => (from + to) / 2;

/** Work on a table or in a vise: from the front (along the line) and from the end. */
export function drawTable(scene: TableScene, look: LatheLook): SetupPicture {
  return { views: [elevation(scene, look, 'front'), elevation(scene, look, 'end')] };
}

function elevation(scene: TableScene, { tool, cut, shown }: LatheLook, side: 'front' | 'end'): PictureView {
  const { machine, has, size } = scene;
  const isFront = side === 'front';
  const way = isFront ? 0 : 1;
  const span = isFront ? size.along : size.across;
  const high = size.up[1];
  const unit = Math.max(length(size.along), length(size.across), high, 1);
  const [tableKey] = [(tables[machine] ?? ['tableLength', 'tableWidth'])[way]];
  const table = scene.held === 'vise' && machine === 'vise' ? undefined : has[tableKey];
  const half = (table ?? length(span) * 1.4) / 2;
  const centre = middle(span);
  const thick = unit * 0.14;
  const items: PictureItem[] = [];
  const points: Point[] = [
    [Math.min(span[0], centre - half), -thick * 1.6],
    [Math.max(span[1], centre + half), high],
  ];
  items.push(area('table', rect(centre - half, -thick, centre + half, 0)));
  items.push(
    name(
      'table',
      machine === 'surface plate' ? 'plate' : machine === 'vise' ? 'vise bed' : 'table',
      [centre, -thick * 0.55],
      half * 2,
    ),
  );
  if (scene.held === 'vise') items.push(...jaws(scene, isFront, points));
  const above = overTable(scene, isFront, tool, points);
  items.push(...above);
  items.push({ is: 'work' });
  items.push(...collisions(scene, isFront));
  items.push(...travelItems(scene, isFront, points, unit));
  if (isFront && cut !== undefined) items.push(line('cut', [cut.from, high], [cut.to, high]));
  items.push(...measures(scene, isFront, shown));
  const box = boxAbout(points, unit * 0.12);
  if (machine === 'drill press') items.push(line('axis', [0, box.bottom], [0, box.top]));
  return { side, box, items };
}

/** The jaws stand to both sides of what they close on: seen from the end, or from the front where they hold the ends. */
function jaws(scene: TableScene, isFront: boolean, points: Point[]): readonly PictureItem[] {
  const { has, size } = scene;
  const span = size.across;
  const depth = has.jawDepth ?? size.up[1] * 0.5;
  if (isFront) {
    const half = (has.jawWidth ?? length(size.along)) / 2;
    points.push([middle(size.along) - half, depth], [middle(size.along) + half, depth]);
    return [area('vise', rect(middle(size.along) - half, 0, middle(size.along) + half, depth))];
  }
  const thick = depth * 0.6;
  points.push([span[0] - thick, depth], [span[1] + thick, depth]);
  const items = [
    area('vise', rect(span[0] - thick, 0, span[0], depth), rect(span[1], 0, span[1] + thick, depth)),
    name('vise', 'jaw', [span[1] + thick / 2, depth * 0.5], thick),
  ];
  return items;
}

function overTable(scene: TableScene, isFront: boolean, tool: number, points: Point[]): readonly PictureItem[] {
  const { machine, has, size } = scene;
  const entry = over[machine];
  const height = entry === undefined ? undefined : has[entry[0]];
  const items: PictureItem[] = [];
  const unit = Math.max(length(size.along), length(size.across), size.up[1], 1);
  const throat = has.throat;
  if (throat !== undefined && !isFront) {
    // The column stands behind the work; in the picture from the end that is to the right.
    const thick = unit * 0.22;
    const top = Math.max(height ?? 0, size.up[1]) * 1.12 + unit * 0.1;
    items.push(area('column', rect(throat, -unit * 0.14, throat + thick, top)));
    items.push(name('column', 'column', [throat + thick / 2, top * 0.5], thick));
    points.push([throat + thick, top]);
  }
  if (machine === 'planer' && !isFront && has.betweenUprights !== undefined) {
    const half = has.betweenUprights / 2;
    const thick = unit * 0.18;
    const top = (height ?? size.up[1]) * 1.15;
    items.push(
      area('column', rect(-half - thick, -unit * 0.14, -half, top), rect(half, -unit * 0.14, half + thick, top)),
    );
    points.push([-half - thick, top], [half + thick, top]);
  }
  if (height === undefined || entry === undefined) return items;
  const thick = unit * 0.22;
  const at = machine === 'drill press' || !isFront ? 0 : tool;
  const half = machine === 'shaper' || machine === 'planer' ? unit * 0.5 : unit * 0.14;
  points.push([at - half, height + thick], [at + half, height + thick]);
  items.push(area('spindle', rect(at - half, height, at + half, height + thick)));
  items.push(name('spindle', entry[1], [at, height + thick * 0.5], half * 2));
  if (machine === 'drill press' && has.chuckLength !== undefined) {
    items.push(area('tool', rect(-half * 0.7, height - has.chuckLength, half * 0.7, height)));
  }
  if (has.toolLength !== undefined) {
    const from = height - (machine === 'drill press' ? (has.chuckLength ?? 0) : 0);
    const thin = Math.max(unit * 0.012, (has.toolDiameter ?? 0) / 2);
    items.push(area('tool', rect(at - thin, from - has.toolLength, at + thin, from)));
  }
  items.push(line('limit', [Math.min(at - half, size.along[0]), height], [Math.max(at + half, size.along[1]), height]));
  return items;
}

/** Where the work reaches into what stands over it or behind it. */
function collisions(scene: TableScene, isFront: boolean): readonly PictureItem[] {
  const { machine, has, size } = scene;
  const loops: (readonly Point[])[] = [];
  const entry = over[machine];
  const height = entry === undefined ? undefined : has[entry[0]];
  const span = isFront ? size.along : size.across;
  const tool = (has.toolLength ?? 0) + (machine === 'drill press' ? (has.chuckLength ?? 0) : 0);
  if (height !== undefined && size.up[1] > height - tool)
    loops.push(rect(span[0], Math.max(size.up[0], height - tool), span[1], size.up[1]));
  if (!isFront && has.throat !== undefined && span[1] > has.throat)
    loops.push(rect(has.throat, size.up[0], span[1], size.up[1]));
  if (!isFront && machine === 'planer' && has.betweenUprights !== undefined) {
    const half = has.betweenUprights / 2;
    if (span[1] > half) loops.push(rect(half, size.up[0], span[1], size.up[1]));
    if (span[0] < -half) loops.push(rect(span[0], size.up[0], -half, size.up[1]));
  }
  return loops.length === 0 ? [] : [area('collision', ...loops)];
}

/** The stroke or travel that there is, as a bracket over the work. */
function travelItems(scene: TableScene, isFront: boolean, points: Point[], unit: number): readonly PictureItem[] {
  const key = travels[scene.machine]?.[isFront ? 0 : 1];
  const travel = key === undefined ? undefined : scene.has[key];
  if (travel === undefined) return [];
  const span = isFront && scene.cuts.length > 0 ? cutsSpan(scene) : isFront ? scene.size.along : scene.size.across;
  const y = scene.size.up[1] + unit * 0.1;
  const [from, to] = [middle(span) - travel / 2, middle(span) + travel / 2];
  const tick = unit * 0.03;
  points.push([from, y + tick], [to, y + tick]);
  const role: PictureRole = 'limit';
  return [
    line(role, [from, y], [to, y]),
    line(role, [from, y - tick], [from, y + tick]),
    line(role, [to, y - tick], [to, y + tick]),
    name(
      role,
      scene.machine === 'shaper' || scene.machine === 'planer' ? 'stroke' : 'travel',
      [to, y + tick * 2],
      travel,
    ),
  ];
}

const cutsSpan = ({ cuts }: TableScene): Span => {
  const places = cuts.flatMap(({ from, to }) => [from, to]);
  return [Math.min(...places), Math.max(...places)];
};

function measures(scene: TableScene, isFront: boolean, shown: ShownVerdict | undefined): readonly PictureItem[] {
  if (shown?.has === undefined || shown.needs === undefined || shown.margin === undefined) return [];
  const { kind, state, has, needs, margin } = shown;
  const { size } = scene;
  const measure = (from: Point, to: Point): PictureItem => ({
    is: 'measure',
    from,
    to,
    mm: margin,
    means: 'margin',
    of: kind,
    state,
  });
  switch (kind) {
    case 'daylight':
    case 'under-ram':
    case 'under-wheel':
    case 'saw-height':
      return isFront ? [measure([size.along[1] * 0.5, has - margin], [size.along[1] * 0.5, has])] : [];
    case 'in-throat':
      return isFront ? [] : [measure([needs, size.up[1] * 0.6], [has, size.up[1] * 0.6])];
    default:
      return [];
  }
}
