import type { MachineType } from '../../tables/machine-figures.ts';
import { drawnTable } from './drawn-table.ts';
import type { PictureItem } from './picture.ts';
import type { LatheLook, Point, TableScene } from './scene.ts';
import { area, circle, line, name, rect } from './shapes.ts';

/** What stands over the table, and the figure that says how high it does at most. */
const over: Readonly<Partial<Record<MachineType, readonly [key: string, name: string]>>> = {
  'drill press': ['daylight', 'spindle'],
  'milling machine': ['daylight', 'spindle'],
  shaper: ['underRam', 'ram'],
  planer: ['underRail', 'rail'],
  grinder: ['underWheel', 'wheel'],
  bandsaw: ['cutHeight', 'guide'],
};

/** What stands over the table at its highest, with its tool brought down to the work at the place on show. */
export function overTable(
  scene: TableScene,
  side: 'front' | 'end',
  { tool, cut }: LatheLook,
  points: Point[],
): readonly PictureItem[] {
  const entry = over[scene.machine];
  const height = entry === undefined ? undefined : scene.has[entry[0]];
  if (entry === undefined || height === undefined) return [];
  const unit = drawnTable(scene);
  const at = side === 'front' && !scene.isUpright ? tool : 0;
  const thick = unit * 0.22;
  const [first, last] = side === 'front' && !scene.isUpright ? rangeOf(scene) : [0, 0];
  const limit = line('limit', [Math.min(first, -unit * 0.4), height], [Math.max(last, unit * 0.4), height]);
  const label = (y: number, room: number) => name('spindle', entry[1], [at, y], room);
  switch (scene.machine) {
    case 'shaper':
    case 'planer': {
      const half = side === 'front' ? unit * 0.55 : unit * 0.16;
      const tip = cut === undefined ? height * 0.96 : scene.size.up[1];
      const thin = unit * 0.03;
      points.push([first - half, height], [last + half, height + thick]);
      return [
        area('spindle', rect(at - half * (side === 'front' ? 1.4 : 1), height, at + half * 0.6, height + thick)),
        area(
          'holding',
          rect(at - thin * 2.4, Math.min(height, tip + unit * 0.1), at + thin * 2.4, height + thick * 0.5),
        ),
        area('tool', rect(at - thin, tip, at + thin, Math.max(tip, height))),
        limit,
        label(height + thick * 0.7, half),
      ];
    }
    case 'grinder': {
      const radius = (scene.has.wheelDiameter ?? unit * 0.5) / 2;
      const width = (scene.has.wheelWidth ?? unit * 0.1) / 2;
      const foot = scene.size.up[1];
      points.push([first - radius, foot], [last + radius, foot + radius * 2], [at, height]);
      const wheel =
        side === 'front' ? circle(radius, [at, foot + radius]) : rect(-width, foot, width, foot + radius * 2);
      return [area('holding', wheel), limit, label(foot + radius, radius)];
    }
    case 'bandsaw': {
      points.push([-unit * 0.3, height], [unit * 0.3, height + thick]);
      return [
        area('spindle', rect(at - unit * 0.12, height, at + unit * 0.12, height + thick)),
        line('tool', [at, -unit * 0.1], [at, height]),
        limit,
        label(height + thick / 2, unit * 0.24),
      ];
    }
    default:
      return spindle(scene, { tool, cut }, at, height, points, limit, label);
  }
}

/** A spindle with its chuck, and the drill or cutter in it. */
function spindle(
  scene: TableScene,
  { tool, cut }: Pick<LatheLook, 'tool' | 'cut'>,
  at: number,
  height: number,
  points: Point[],
  limit: PictureItem,
  label: (y: number, room: number) => PictureItem,
): readonly PictureItem[] {
  const unit = drawnTable(scene);
  const thick = unit * 0.22;
  const half = Math.max(unit * 0.1, (cut?.toolRadius ?? 0) * 1.4);
  const chuck = scene.isUpright ? (scene.has.chuckLength ?? 0) : unit * 0.08;
  const length = cut?.toolLength ?? unit * 0.25;
  const thin = cut?.toolRadius ?? unit * 0.03;
  // The quill brings the point down to the place on show: of a drill that is a height, of a cutter the face of the work.
  const point = scene.isUpright ? tool : scene.size.up[1];
  const nose = point + length + chuck;
  const [first, last] = scene.isUpright ? [0, 0] : rangeOf(scene);
  points.push([first - half, Math.max(height, nose) + thick], [last + half, height]);
  if (scene.isUpright)
    for (const { from, to, toolLength } of scene.cuts)
      points.push([0, Math.max(from, to) + (toolLength ?? length) + chuck + thick]);
  return [
    limit,
    area('spindle', rect(at - half * 0.8, nose, at + half * 0.8, Math.max(height, nose) + thick)),
    area('holding', rect(at - half * 0.66, point + length, at + half * 0.66, nose)),
    area('tool', rect(at - thin, point, at + thin, point + length)),
    label(Math.max(height, nose) + thick * 0.5, half * 1.6),
  ];
}

function rangeOf({ cuts, size }: TableScene): readonly [number, number] {
  const places = cuts.flatMap(({ from, to }) => [from, to]);
  return places.length === 0 ? size.along : [Math.min(...places), Math.max(...places)];
}
