import type { OperationId } from '../../base/ids.ts';
import { axesAcross } from '../../build/body-uses.ts';
import type { Axis } from '../../build/station.ts';
import { axes } from '../../build/station.ts';
import { boundsOf } from '../../solid/bounds.ts';
import { OVERRUN_MM } from '../../tables/cutting-practice.ts';
import { bodiesMade } from '../route/made-holes.ts';
import { type Cut, cutWithin } from '../setups/cuts.ts';
import { knownCuts, type Scene } from '../setups/scene.ts';
import { type TableStand, tableStand } from '../setups/table-stand.ts';
import { asking } from './asking.ts';
import type { Question } from './question.ts';
import { leastReachAlong } from './reach-across.ts';
import { unknownCuts } from './turning.ts';

/**
 * On machines whose work or tool moves straight along the set-up's line.
 *
 * - stroke (shaper, planer): `stroke` against the length of the cut + overrun (25 mm at both ends together: common practice, no source).
 * - under-ram (shaper `underRam`, planer `underRail`), daylight (mill: `daylight`, with the tool's free length), under-wheel (grinder):
 *   against the height of the work over its seat.
 * - head-travel: `headTravel` against the depth that the tool goes down: the stock, or the height of what the operation takes out.
 * - table-travel (shaper, planer): `tableTravel` against the breadth of the cut.
 * - travel-x: `travelX` against the length that the cuts of the set-up span, with the cutter's diameter to come clear of it; travel-y: `travelY` against the breadth.
 * - in-throat: mill `throat` against how far the work reaches from the line towards the column, the less of its two sides; planer `betweenUprights` against its breadth.
 */
export function askStraightCuts(scene: Scene): readonly Question[] {
  const ask = askers[scene.type as keyof typeof askers];
  if (!ask) return [];
  const stand = tableStand(scene);
  const missing = unknownCuts(scene).map(({ error }) => {
    const own = asking(scene);
    own.miss(...error.unknown);
    return own.question(
      scene.type === 'shaper' || scene.type === 'planer' ? 'stroke' : 'travel-x',
      error.operation.id,
      0,
      () => undefined,
    );
  });
  return [...missing, ...ask(scene, stand)];
}

type Asker = (scene: Scene, stand: TableStand) => readonly Question[];

const shaper: Asker = (scene, stand) => [
  ...strokes(scene),
  height(scene, stand, 'under-ram', 'underRam'),
  ...headTravels(scene, stand),
  ...breadths(scene, 'table-travel', 'tableTravel'),
];

const planer: Asker = (scene, stand) => [
  ...strokes(scene),
  between(scene, stand),
  height(scene, stand, 'under-ram', 'underRail'),
  ...headTravels(scene, stand),
  ...breadths(scene, 'table-travel', 'tableTravel'),
];

const mill: Asker = (scene, stand) => [
  ...travelAlong(scene),
  ...breadths(scene, 'travel-y', 'travelY'),
  ...headTravels(scene, stand, 'travel-z', 'travelZ'),
  throat(scene, stand),
  height(scene, stand, 'daylight', 'daylight', longestTool(scene)),
  ...shanks(scene),
];

const grinder: Asker = (scene, stand) => [
  ...travelAlong(scene),
  ...breadths(scene, 'travel-y', 'travelY'),
  height(scene, stand, 'under-wheel', 'underWheel'),
];

const askers = { shaper, planer, 'milling machine': mill, grinder } as const;

function strokes(scene: Scene): readonly Question[] {
  return knownCuts(scene).map((cut) => {
    const ask = asking(scene);
    const stroke = ask.figure('stroke');
    return ask.question('stroke', cut.operation.id, 1, (world) => {
      const [low, high] = cutWithin(cut, world);
      return { has: stroke, needs: high - low + OVERRUN_MM.value, at: low };
    });
  });
}

function height(
  scene: Scene,
  stand: TableStand,
  kind: 'under-ram' | 'daylight' | 'under-wheel',
  key: string,
  tool = 0,
): Question {
  const ask = asking(scene);
  ask.miss(...stand.unknown);
  const has = ask.figure(key);
  return ask.question(kind, undefined, 1, (world) => ({ has, needs: stand.height(world) + tool }));
}

/** The free length of the longest tool of the set-up, as far as it is said. */
const longestTool = (scene: Scene): number => Math.max(0, ...knownCuts(scene).map(({ overhangMm }) => overhangMm ?? 0));

function headTravels(
  scene: Scene,
  stand: TableStand,
  kind: 'head-travel' | 'travel-z' = 'head-travel',
  key = 'headTravel',
): readonly Question[] {
  return knownCuts(scene).map((cut) => {
    const ask = asking(scene);
    ask.miss(...stand.unknown);
    const travel = ask.figure(key);
    const needs = Math.max(scene.allowanceMm, depthTaken(scene, cut, stand.upright));
    return ask.question(kind, cut.operation.id, 1, () => ({ has: travel, needs }));
  });
}

/** How tall what an operation takes out is, along whichever axis stands upright. It is not there yet, so limits are left out. */
function depthTaken({ bodies }: Scene, { operation }: Cut, upright: readonly Axis[]): number {
  let most = 0;
  for (const body of bodiesMade(operation, bodies)) {
    const box = body.record.adds ? undefined : boundsOf(body);
    for (const axis of upright) {
      const k = axes.indexOf(axis);
      if (box) most = Math.max(most, box.max[k]! - box.min[k]!);
    }
  }
  return most;
}

function breadths(scene: Scene, kind: 'table-travel' | 'travel-y', key: string): readonly Question[] {
  return knownCuts(scene).flatMap((cut) => {
    const { diameter, way } = cut;
    if (way !== 'flat') return [];
    const ask = asking(scene);
    const travel = ask.figure(key);
    if (!diameter) ask.miss({ is: 'field', field: 'cut/diameter' });
    return [ask.question(kind, cut.operation.id, 1, (world) => ({ has: travel, needs: world.amount(diameter!) }))];
  });
}

/** All cuts of the set-up in one clamping: the table must carry the cutter from before the first to behind the last. */
function travelAlong(scene: Scene): readonly Question[] {
  const cuts = knownCuts(scene);
  if (cuts.length === 0) return [];
  const ask = asking(scene);
  const travel = ask.figure('travelX');
  const only: OperationId | undefined = cuts.length === 1 ? cuts[0]!.operation.id : undefined;
  return [
    ask.question('travel-x', only, 1, (world) => {
      let [low, high] = [Infinity, -Infinity];
      for (const cut of cuts) {
        const clear = cut.way === 'flat' && cut.toolDiameter ? world.amount(cut.toolDiameter) / 2 : 0;
        const [from, to] = cutWithin(cut, world);
        low = Math.min(low, from - clear);
        high = Math.max(high, to + clear);
      }
      return { has: travel, needs: high - low, at: low };
    }),
  ];
}

function throat(scene: Scene, stand: TableStand): Question {
  const ask = asking(scene);
  ask.miss(...stand.unknown);
  const has = ask.figure('throat');
  const across = axesAcross(scene.setup.line.axis);
  return ask.question('in-throat', undefined, 1, (world) => {
    const needs = stand.upright.map((up) => leastReachAlong(world, scene.worlds, across[0] === up ? 1 : 0));
    return { has, needs: Math.max(...needs) };
  });
}

function between(scene: Scene, stand: TableStand): Question {
  const ask = asking(scene);
  ask.miss(...stand.unknown);
  const has = ask.figure('betweenUprights');
  const across = axesAcross(scene.setup.line.axis);
  return ask.question('in-throat', undefined, 1, (world) => {
    const needs = stand.upright.map((up) => stand.across(world, across[0] === up ? across[1] : across[0]));
    return { has, needs: Math.max(...needs) };
  });
}

function shanks(scene: Scene): readonly Question[] {
  return knownCuts(scene).flatMap(({ operation, way, toolDiameter }) => {
    if (!toolDiameter || way === 'flat') return [];
    const ask = asking(scene);
    const most = ask.figure('chuckMost');
    return [
      ask.question('chuck-range', operation.id, 1, (world) => ({ has: most, needs: world.amount(toolDiameter) })),
    ];
  });
}
