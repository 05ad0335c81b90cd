import type { MachineType } from '../../tables/machine-figures.ts';
import { drawnTable } from './drawn-table.ts';
import type { PictureItem } from './picture.ts';
import type { LatheLook, Point, Span, TableScene } from './scene.ts';
import { area, circle, line, nameIn, rect } from './shapes.ts';

/** What stands over the table, and the figure that says how high it does at most. */
const over: Readonly<Partial<Record<MachineType, readonly [key: string, name: string]>>> = {
  'drill press': ['daylight', 'spindle'],
  'milling machine': ['daylight', 'spindle'],
  shaper: ['underRam', 'ram'],
  planer: ['underRail', 'rail'],
  grinder: ['underWheel', 'wheel'],
  bandsaw: ['cutHeight', 'guide'],
};

type Side = 'front' | 'end';

/**
 * What stands over the table, brought down to the work (or the table raised to it), at the place on show; a broken line is the
 * highest that it can stand. Where that is not high enough it is drawn there, in the work.
 */
export function overTable(scene: TableScene, side: Side, look: LatheLook, points: Point[]): readonly PictureItem[] {
  const entry = over[scene.machine];
  const highest = entry === undefined ? undefined : scene.has[entry[0]];
  if (entry === undefined || highest === undefined) return [];
  const unit = drawnTable(scene);
  const isCrosswise = side === 'front' && !scene.isUpright;
  const at = isCrosswise ? look.tool : 0;
  const range = isCrosswise ? rangeOf(scene) : ([0, 0] as const);
  const limit = line('limit', [range[0] - unit * 0.4, highest], [range[1] + unit * 0.4, highest]);
  points.push([range[0] - unit * 0.4, highest], [range[1] + unit * 0.4, highest]);
  const [, words] = entry;
  switch (scene.machine) {
    case 'shaper':
    case 'planer':
      return [...ramItems(scene, side, look, at, range, highest, words, points), limit];
    case 'grinder':
      return [...wheelItems(scene, side, at, range, words, points), limit];
    case 'bandsaw': {
      const thick = unit * 0.2;
      points.push([-unit * 0.3, highest + thick]);
      return [
        line('tool', [at, -unit * 0.1], [at, highest]),
        area('spindle', rect(at - unit * 0.12, highest, at + unit * 0.12, highest + thick)),
        nameIn('spindle', words, at - unit * 0.12, highest, at + unit * 0.12, highest + thick),
        limit,
      ];
    }
    default:
      return [...spindleItems(scene, side, look, at, range, highest, words, points), limit];
  }
}

function rangeOf({ cuts, size }: TableScene): Span {
  const places = cuts.flatMap(({ from, to }) => [from, to]);
  return places.length === 0 ? size.along : [Math.min(...places), Math.max(...places)];
}

/** A ram (or the rail of a planer) with its head and tool. */
function ramItems(
  scene: TableScene,
  side: Side,
  { cut }: LatheLook,
  at: number,
  [first, last]: Span,
  highest: number,
  words: string,
  points: Point[],
): readonly PictureItem[] {
  const unit = drawnTable(scene);
  const top = scene.size.up[1];
  const low = Math.min(highest, top + unit * 0.34);
  const high = low + unit * 0.24;
  const [before, behind] = side === 'front' ? [unit * 0.8, unit * 0.18] : [unit * 0.16, unit * 0.16];
  const head = unit * 0.09;
  const thin = unit * 0.028;
  points.push([first - before, high], [last + behind, high]);
  const items: PictureItem[] = [
    area('spindle', rect(at - before, low, at + behind, high)),
    nameIn('spindle', words, at - before, low, at + behind, high),
    area('holding', rect(at - head, Math.min(low, top + unit * 0.12), at + head, high - unit * 0.05)),
  ];
  if (cut !== undefined) items.push(area('tool', rect(at - thin, top, at + thin, Math.max(top, top + unit * 0.14))));
  return items;
}

function wheelItems(
  scene: TableScene,
  side: Side,
  at: number,
  [first, last]: Span,
  words: string,
  points: Point[],
): readonly PictureItem[] {
  const unit = drawnTable(scene);
  const radius = (scene.has.wheelDiameter ?? unit * 0.5) / 2;
  const width = (scene.has.wheelWidth ?? unit * 0.1) / 2;
  const foot = scene.size.up[1];
  points.push([first - radius, foot], [last + radius, foot + radius * 2]);
  const wheel = side === 'front' ? circle(radius, [at, foot + radius]) : rect(-width, foot, width, foot + radius * 2);
  const half = side === 'front' ? radius * 0.7 : width;
  return [
    area('holding', wheel),
    nameIn('spindle', words, at - half, foot + radius * 0.7, at + half, foot + radius * 1.3),
  ];
}

/** A head with its quill, the chuck, and the drill or cutter in it. */
function spindleItems(
  scene: TableScene,
  side: Side,
  { tool, cut }: LatheLook,
  at: number,
  [first, last]: Span,
  highest: number,
  words: string,
  points: Point[],
): readonly PictureItem[] {
  const unit = drawnTable(scene);
  const half = Math.max(unit * 0.12, (cut?.toolRadius ?? 0) * 1.5);
  const chuck = scene.isUpright ? (scene.has.chuckLength ?? 0) : unit * 0.1;
  const length = cut?.toolLength ?? unit * 0.25;
  const thin = cut?.toolRadius ?? unit * 0.03;
  // A drill goes down to the place on show from where it starts; a cutter stands on the work.
  const starts = scene.isUpright && cut !== undefined ? Math.max(cut.from, cut.to) : scene.size.up[1];
  const nose = Math.min(highest, starts + length + chuck);
  const down = scene.isUpright && cut !== undefined ? Math.max(0, starts - tool) : 0;
  const tall = unit * 0.3;
  points.push([first - half * 1.3, nose + tall], [last + half * 1.3, nose + tall]);
  const quill = nose - down;
  const { throat } = scene.has;
  // Seen from the end, its arm reaches back to the column.
  const arm =
    side === 'end' && throat !== undefined && throat > half * 1.3
      ? [area('spindle', rect(half * 1.3, nose + tall * 0.2, throat, nose + tall))]
      : [];
  return [
    ...arm,
    area('tool', rect(at - thin, quill - chuck - length, at + thin, quill - chuck)),
    ...(chuck > 0 ? [area('holding', rect(at - half * 0.72, quill - chuck, at + half * 0.72, quill))] : []),
    ...(down > 0 ? [area('holding', rect(at - half * 0.5, quill, at + half * 0.5, nose))] : []),
    area('spindle', rect(at - half * 1.3, nose, at + half * 1.3, nose + tall)),
    nameIn('spindle', words, at - half * 1.3, nose, at + half * 1.3, nose + tall),
  ];
}
