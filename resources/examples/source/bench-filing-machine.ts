import type { Settings } from '../../../src/shared/build/settings.ts';
import { base } from './parts/base.ts';
import { bearingCap, crankshaftBearing } from './parts/bearings.ts';
import { crankDisc, crankPin, crankshaft } from './parts/crank.ts';
import { flywheel } from './parts/flywheel.ts';
import { guideColumn } from './parts/guide-column.ts';
import { overArm, upperRod } from './parts/over-arm.ts';
import { clampScrew, ram, yoke } from './parts/ram.ts';
import { table, tablePivot, trunnionBracket } from './parts/table.ts';
import type { RouteSketch } from './plan-sketch.ts';
import { baseRoute, bearingCapRoute, capsWithBase } from './routes/base.ts';
import { crankDiscRoute, crankPinRoute, crankshaftRoute } from './routes/crank.ts';
import { flywheelRoute } from './routes/flywheel.ts';
import { guideColumnRoute } from './routes/guide-column.ts';
import { overArmRoute, upperRodRoute } from './routes/over-arm.ts';
import { clampScrewRoute, ramRoute, yokeRoute } from './routes/ram.ts';
import { tablePivotRoute, tableRoute, trunnionBracketRoute } from './routes/table.ts';
import type { PartSketch } from './sketch.ts';

/**
 * A bench filing machine: a crank and yoke drive a ram up and down through a tilting table, and a file clamped between
 * the ram and a rod in the over-arm cuts on the way down. For a lathe of about 95 mm centre height.
 *
 * Heights at half stroke, in mm over the bench: crank line 95; ram's lower end 109, upper end 246; column top 225;
 * table pivots 273; table top 300; over-arm's guide 388 to 438. Stroke 32.
 *
 * Greatest radius of each casting about the line that it would be turned about, finished, in mm: over-arm about its rod
 * 90.9 (rear corner of the post), table about the file 87.0 (rounded corner), flywheel 85, guide column about the ram
 * 83.2 (rounded front corner of the foot).
 */
export const settings: Partial<Omit<Settings, 'kind' | 'id'>> = {
  name: 'Bench filing machine',
  note: 'Drawn in millimetres; reamers, silver steel and foam boards are in inches, and so are the dimensions that follow them.',
  lengthUnit: 'mm',
  machinedTolerance: 'm',
  castingGrade: 11,
};

/** In the order of the part list. */
export const parts: readonly PartSketch[] = [
  base,
  guideColumn,
  table,
  trunnionBracket,
  overArm,
  flywheel,
  bearingCap,
  yoke,
  ram,
  crankshaft,
  crankDisc,
  crankPin,
  upperRod,
  tablePivot,
  clampScrew,
  crankshaftBearing,
];

/** What a set-up holds besides its own part comes before it: caps before the base, the shaft before its disc. */
export const routes: readonly RouteSketch[] = [
  bearingCapRoute,
  baseRoute,
  capsWithBase,
  guideColumnRoute,
  tableRoute,
  trunnionBracketRoute,
  overArmRoute,
  flywheelRoute,
  yokeRoute,
  ramRoute,
  crankshaftRoute,
  crankDiscRoute,
  crankPinRoute,
  upperRodRoute,
  tablePivotRoute,
  clampScrewRoute,
];
