import type { Edge, Process } from '../../build/operation.ts';
import { formatNumber } from '../../quantity/format.ts';
import { roughingDepth } from '../../tables/cutting-feeds.ts';
import { SPINDLE_EFFICIENCY, specificForce } from '../../tables/cutting-force.ts';
import { cuttingMetalRows, type FoundMetal } from '../../tables/cutting-metals.ts';
import type { Sourced } from '../../tables/cutting-row.ts';
import { grinding } from '../../tables/cutting-speeds.ts';
import { type CutConditions, type MachineRange, type Proposal, proposeCut, turnsAt } from './conditions.ts';
import { type CutLoad, loadOf } from './cut-load.ts';
import { feedSpeed } from './spindle-speed.ts';

/** A cut that somebody asks about at the bench, without a build. */
export interface AdviceWanted {
  readonly found: FoundMetal;
  readonly process: Process;
  readonly edge: Edge;
  /** Of work or tool; of shaping and planing the length of the stroke. A saw has none. */
  readonly diameterMm: number | undefined;
  /** Of a tap. */
  readonly pitchMm: number | undefined;
  readonly finish: boolean;
  readonly machine: MachineRange;
  readonly teeth: number;
  /** Per side; undefined: what the table gives for a roughing cut. */
  readonly depthMm: number | undefined;
  /** Of milling; undefined: the whole cutter. */
  readonly breadthMm: number | undefined;
}

export interface CutAdvice extends Pick<CutConditions, 'rpm' | 'asked' | 'feed'> {
  readonly found: FoundMetal;
  readonly speed: Proposal;
  /** Turns or strokes per minute from the slow to the fast end of the table. */
  readonly rpmTable: { readonly least: number; readonly most: number } | undefined;
  readonly feedMmMin: number | undefined;
  readonly load:
    | (CutLoad &
        Sourced & {
          readonly depthMm: number | undefined;
          readonly breadthMm: number | undefined;
          readonly efficiency: number;
        })
    | undefined;
  /** What to mind with this metal. */
  readonly care: string | undefined;
  /** Whole sentences. */
  readonly warnings: readonly string[];
}

/** Beyond this the table's own end is meant. */
const SLACK = 1.02;

/** Speed, feed and power to begin with; undefined where the tables have nothing for it (handwork, some metals under a saw). */
export function adviseCut(wanted: AdviceWanted): CutAdvice | undefined {
  const { found, process, diameterMm, machine } = wanted;
  const { care } = cuttingMetalRows[found.metal];
  if (process === 'grind') return adviseGrinding(wanted, care);
  const isStroke = process === 'shape' || process === 'plane';
  const strokeMm = isStroke ? diameterMm : undefined;
  const { speed, rpm, asked, feed } = proposeCut({
    metal: found.metal,
    process,
    edge: wanted.edge,
    diameterMm,
    finish: wanted.finish,
    pitchMm: wanted.pitchMm,
    strokeMm,
    machine,
    chosen: {},
  });
  if (!speed) return undefined;
  const at = (value: number) => turnsAt(process, value, diameterMm, strokeMm);
  const [least, most] = speed.row ? [at(speed.row.least), at(speed.row.most)] : [undefined, undefined];
  const teeth = process === 'mill' ? wanted.teeth : 1;
  return {
    found,
    speed,
    rpm,
    asked,
    feed,
    rpmTable: least === undefined || most === undefined ? undefined : { least, most },
    feedMmMin: rpm && feed && !isStroke ? feedSpeed(rpm.value, feed.value, teeth) : undefined,
    load: loadFor(wanted, speed, rpm, feed),
    care,
    warnings: warningsOf(speed, rpm, asked, process, machine),
  };
}

function loadFor(
  wanted: AdviceWanted,
  speed: Proposal,
  rpm: Proposal | undefined,
  feed: Proposal | undefined,
): CutAdvice['load'] {
  const { found, process, diameterMm, teeth } = wanted;
  if (!rpm || !feed) return undefined;
  const takesDepth = process !== 'drill' && process !== 'counterbore';
  const deepest = process === 'mill' && diameterMm !== undefined ? diameterMm / 2 : Number.POSITIVE_INFINITY;
  const depthMm = takesDepth ? (wanted.depthMm ?? Math.min(deepest, roughingDepth(found.metal).most)) : undefined;
  const breadthMm = process === 'mill' ? (wanted.breadthMm ?? diameterMm) : undefined;
  const load = loadOf({
    metal: found.metal,
    process,
    speed: speed.value,
    rpm: rpm.value,
    feed: feed.value,
    depthMm,
    diameterMm,
    fromMm: 0,
    breadthMm,
    teeth,
    angleDeg: undefined,
  });
  if (!load) return undefined;
  const { source, status } = specificForce(found.metal)!;
  return { ...load, depthMm, breadthMm, efficiency: SPINDLE_EFFICIENCY.value, source, status };
}

function warningsOf(
  speed: Proposal,
  rpm: Proposal | undefined,
  asked: number | undefined,
  process: Process,
  { slowest, fastest }: MachineRange,
): readonly string[] {
  const shown = (value: number) => formatNumber(value, 0);
  if (rpm?.from !== 'machine' && speed.from !== 'machine') return [];
  const unit = process === 'saw' ? 'm/min' : process === 'shape' || process === 'plane' ? 'strokes/min' : 'rpm';
  if (slowest !== undefined && asked !== undefined && asked < slowest) {
    const tooFast = speed.row !== undefined && speed.value > speed.row.most * SLACK;
    const harm = tooFast ? ', faster than the table goes: take a better edge or another machine' : '';
    return [
      `The slowest of the machine, ${shown(slowest)} ${unit}, is above what is asked for (${shown(asked)})${harm}.`,
    ];
  }
  if (fastest !== undefined && asked !== undefined) {
    return [
      `The fastest of the machine, ${shown(fastest)} ${unit}, is below what is asked for (${shown(asked)}): slower is no harm.`,
    ];
  }
  return [];
}

/** Of a grinder the wheel's rim is told, and how the work goes under it. */
function adviseGrinding({ found, diameterMm, machine }: AdviceWanted, care: string | undefined): CutAdvice | undefined {
  if (diameterMm === undefined) return undefined;
  const row = grinding.wheel;
  const at = (value: number) => turnsAt('turn', value, diameterMm, undefined)!;
  const asked = at(row.least);
  const value = Math.min(asked, machine.fastest ?? asked);
  const from = value === asked ? 'table' : 'machine';
  return {
    found,
    speed: { value: (row.least * value) / asked, from, row },
    rpm: { value, from, row: undefined },
    asked,
    feed: undefined,
    rpmTable: { least: asked, most: at(row.most) },
    feedMmMin: undefined,
    load: undefined,
    care,
    warnings: ['Never run a wheel faster than the speed that is marked on it, and ring it before it is put on.'],
  };
}
