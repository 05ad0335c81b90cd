import type { Process } from '../../build/operation.ts';
import { SPINDLE_EFFICIENCY, specificForce } from '../../tables/cutting-force.ts';
import type { CuttingMetal } from '../../tables/cutting-metals.ts';
import { DRILL_POINT_DEG } from '../../tables/cutting-practice.ts';
import {
  cuttingForce,
  cuttingPower,
  drillChip,
  millingChip,
  motorPower,
  removalPower,
  specificForceOf,
  torqueNm,
  turningChip,
} from './cutting-force.ts';
import { drillingRemoval, millingRemoval } from './metal-removal.ts';
import { feedSpeed } from './spindle-speed.ts';

/** What a cut asks of edge, spindle and motor. */
export interface CutLoad {
  /** Main cutting force in N, where one edge cuts; undefined of drills and cutters. */
  readonly forceN: number | undefined;
  /** Torque in Nm at the tool, of drills and cutters; at the work, of turning. */
  readonly torqueNm: number | undefined;
  /** kW at the edge. */
  readonly powerKw: number;
  /** kW of the motor, with what the drive loses. */
  readonly motorKw: number;
}

export interface LoadedCut {
  readonly metal: CuttingMetal;
  readonly process: Process;
  /** m/min. */
  readonly speed: number;
  /** Turns or strokes per minute. */
  readonly rpm: number;
  /** mm per turn, tooth or stroke. */
  readonly feed: number;
  /** Of turning, milling and shaping: mm. */
  readonly depthMm: number | undefined;
  /** Of drill and cutter. */
  readonly diameterMm: number | undefined;
  /** Hole that is there already before a drill or a counterbore: mm, 0 for none. */
  readonly fromMm: number;
  /** Breadth that a cutter takes. */
  readonly breadthMm: number | undefined;
  readonly teeth: number;
  /** κ of the edge, degrees; of a drill half the angle of its point (what is above 90 is read as the whole). */
  readonly angleDeg: number | undefined;
}

/** A knife tool, and the usual twist drill. */
const KNIFE_DEG = 90;

/** Included angle of a drill's point from the angle that is written for its edge. */
export const pointAngle = (angleDeg: number | undefined): number =>
  angleDeg === undefined ? DRILL_POINT_DEG.value : angleDeg > KNIFE_DEG ? Math.min(angleDeg, 179) : 2 * angleDeg;

/**
 * Force, torque and power of a cut by the specific cutting force of the metal (Kienzle).
 *
 * @returns undefined where nothing is known of the metal's force, a size is missing, or the process has no such formula
 * (reaming, tapping, countersinking, grinding, sawing, handwork).
 */
export function loadOf(cut: LoadedCut): CutLoad | undefined {
  const force = specificForce(cut.metal);
  if (!force) return undefined;
  const { process, speed, rpm, feed, depthMm, diameterMm, fromMm, breadthMm, teeth, angleDeg } = cut;
  const load = (powerKw: number, forceN?: number, turns = true): CutLoad => ({
    forceN,
    torqueNm: turns ? torqueNm(powerKw, rpm) : undefined,
    powerKw,
    motorKw: motorPower(powerKw, SPINDLE_EFFICIENCY.value),
  });
  switch (process) {
    case 'face':
    case 'turn':
    case 'bore':
    case 'shape':
    case 'plane': {
      if (depthMm === undefined) return undefined;
      const forceN = cuttingForce(force, turningChip(depthMm, feed, angleDeg ?? KNIFE_DEG));
      return load(cuttingPower(forceN, speed), forceN, process !== 'shape' && process !== 'plane');
    }
    case 'drill':
    case 'counterbore': {
      if (diameterMm === undefined || fromMm >= diameterMm) return undefined;
      const point = process === 'drill' ? pointAngle(angleDeg) : 180;
      const kc = specificForceOf(force, drillChip(feed, point));
      return load(removalPower(kc, drillingRemoval(diameterMm, fromMm, feed, rpm)));
    }
    case 'mill': {
      if (depthMm === undefined || diameterMm === undefined || breadthMm === undefined) return undefined;
      const breadth = Math.min(breadthMm, diameterMm);
      const kc = specificForceOf(force, millingChip(feed, breadth, diameterMm));
      return load(removalPower(kc, millingRemoval(depthMm, breadth, feedSpeed(rpm, feed, teeth))));
    }
    default:
      return undefined;
  }
}

/** The deepest cut in mm that a motor drives, where power grows with depth: of turning, shaping and milling. */
export function deepestCut(cut: LoadedCut, motorKw: number): number | undefined {
  const one = loadOf({ ...cut, depthMm: 1 });
  return one && one.motorKw > 0 ? motorKw / one.motorKw : undefined;
}
