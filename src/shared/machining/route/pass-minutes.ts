import { unreachable } from '../../base/assert.ts';
import type { Process } from '../../build/operation.ts';
import type { CuttingMetal } from '../../tables/cutting-metals.ts';
import { RUN_IN_MM } from '../../tables/cutting-practice.ts';
import { sawingRate } from '../../tables/cutting-speeds.ts';
import type { CutConditions } from '../cutting/conditions.ts';
import { pointAngle } from '../cutting/cut-load.ts';
import {
  drillMinutes,
  faceMinutes,
  grindMinutes,
  millMinutes,
  passMinutes,
  sawMinutes,
  strokesMinutes,
  tapMinutes,
  turnMinutes,
} from '../cutting/cutting-time.ts';
import { feedSpeed } from '../cutting/spindle-speed.ts';
import type { HoleCut } from './operation-sizes.ts';
import type { PassPlan } from './passes.ts';
import type { ReadOperation } from './read-operation.ts';

export interface TimedCut {
  readonly process: Process;
  readonly metal: CuttingMetal | undefined;
  readonly read: ReadOperation;
  readonly diameterMm: number | undefined;
  readonly holes: readonly HoleCut[];
}

/** Minutes of all cuts of one kind; undefined where something that they hang on is not known. */
export function minutesOf(cut: TimedCut, pass: PassPlan & CutConditions): number | undefined {
  const { process, read, diameterMm } = cut;
  const [feed, rpm, speed, count] = [pass.feed?.value, pass.rpm?.value, pass.speed?.value, pass.count];
  const { lengthMm, diameterMm: across, innerMm } = read.cut ?? {};
  const run = RUN_IN_MM.value;
  switch (process) {
    case 'turn':
    case 'bore': {
      const length = lengthMm ?? read.holes[0]?.depthMm;
      if (!known(length, feed, rpm, count)) return undefined;
      return turnMinutes(length!, 2 * run, feed!, rpm!, count!);
    }
    case 'face':
      if (!known(diameterMm, feed, rpm, count)) return undefined;
      return faceMinutes(diameterMm!, innerMm ?? 0, run, feed!, rpm!, count!);
    case 'drill':
    case 'ream':
    case 'tap':
    case 'countersink':
    case 'counterbore':
      return holeMinutes(cut, feed, rpm);
    case 'mill':
      if (!known(lengthMm, across, diameterMm, feed, rpm, count)) return undefined;
      return millMinutes(
        lengthMm!,
        diameterMm!,
        feedSpeed(rpm!, feed!, read.tool.teeth),
        Math.ceil(across! / diameterMm! - 1e-9),
        count!,
      );
    case 'shape':
    case 'plane':
      return known(across, feed, rpm, count) ? strokesMinutes(across!, feed!, rpm!, count!) : undefined;
    case 'grind':
      if (!known(lengthMm, across, feed, speed, count)) return undefined;
      return grindMinutes(lengthMm!, across!, speed!, feed!, count!);
    case 'saw': {
      const rate = cut.metal && sawingRate(cut.metal);
      return rate && known(lengthMm, across) ? sawMinutes(lengthMm! * across!, rate.least) : undefined;
    }
    case 'scrape':
    case 'lap':
    case 'file':
      return undefined;
    default:
      return unreachable(process);
  }
}

const known = (...values: readonly (number | undefined)[]): boolean =>
  values.every((value) => value !== undefined && value > 0);

function holeMinutes(
  { process, read, diameterMm, holes }: TimedCut,
  feed: number | undefined,
  rpm: number | undefined,
): number | undefined {
  if (feed === undefined || rpm === undefined || diameterMm === undefined) return undefined;
  const run = RUN_IN_MM.value;
  const one = (depthMm: number): number => {
    switch (process) {
      case 'drill':
        return drillMinutes(depthMm, diameterMm, pointAngle(read.tool.angleDeg), run, feed, rpm);
      case 'tap':
        return tapMinutes(depthMm, run, feed, rpm);
      case 'ream':
        return passMinutes(depthMm + 2 * run, feed, rpm);
      default:
        return passMinutes(depthMm + run, feed, rpm);
    }
  };
  if (holes.length === 0) return read.cut?.lengthMm === undefined ? undefined : one(read.cut.lengthMm);
  let total = 0;
  for (const { hole, depthMm } of holes) {
    if (depthMm === undefined) return undefined;
    total += hole.copies * one(depthMm);
  }
  return total;
}
