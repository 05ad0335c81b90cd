import type { Operation } from '../../build/operation.ts';
import type { Setup } from '../../build/setup.ts';
import {
  DEEP_HOLE,
  DEEP_THREAD,
  type Limit,
  overhangLimits,
  slenderLimits,
  TOO_DEEP_HOLE,
} from '../../tables/cutting-practice.ts';
import type { MachineMeans } from './machine-means.ts';
import type { OperationWarning, Pass } from './operation-fact.ts';
import type { HoleCut } from './operation-sizes.ts';
import type { ReadOperation } from './read-operation.ts';
import type { Answers } from './route-part.ts';
import type { Stock } from './stock.ts';

export interface WarnedOperation {
  readonly operation: Operation;
  readonly setup: Setup | undefined;
  readonly read: ReadOperation;
  readonly means: MachineMeans;
  readonly stock: Stock;
  readonly diameterMm: number | undefined;
  readonly holes: readonly HoleCut[];
  readonly passes: readonly Pass[];
  readonly answers: Answers;
}

/** A table's own end is right: its rows are rounded, and so are the steps of a machine. */
const SLACK = 1.02;

export const warningsOf = (of: WarnedOperation): readonly OperationWarning[] => [
  ...speedWarnings(of),
  ...powerWarnings(of),
  ...ratioWarnings(of),
  ...holeWarnings(of),
  ...stockWarnings(of),
];

/** Of the cuts of an operation the first that has something to say of its speed. */
function speedWarnings({ read, means, passes }: WarnedOperation): readonly OperationWarning[] {
  const { slowest, fastest } = means.range;
  const chosen = read.chosen.rpm !== undefined || read.chosen.speed !== undefined;
  for (const { asked, speed } of passes) {
    const row = speed?.row;
    const tooFast = row !== undefined && speed !== undefined && speed.value > row.most * SLACK;
    if (asked !== undefined && slowest !== undefined && asked < slowest && (chosen || tooFast)) {
      return [{ is: 'too-slow-for-machine', asked, slowest, chosen }];
    }
    if (chosen && asked !== undefined && fastest !== undefined && asked > fastest) {
      return [{ is: 'too-fast-for-machine', asked, fastest }];
    }
    if (tooFast) return [{ is: 'faster-than-table', speed: speed.value, most: row.most, source: row.source }];
  }
  return [];
}

function powerWarnings({ means, passes }: WarnedOperation): readonly OperationWarning[] {
  const needsKw = Math.max(0, ...passes.map(({ load }) => load?.motorKw ?? 0));
  const hasKw = means.motorKw;
  // What a motor's cut was trimmed to is not above it for the sake of a rounding.
  return hasKw !== undefined && needsKw > hasKw * SLACK ? [{ is: 'power', needsKw, hasKw }] : [];
}

function ratioWarnings({ operation, setup, read, diameterMm, answers }: WarnedOperation): readonly OperationWarning[] {
  const warnings: OperationWarning[] = [];
  const { tool, cut } = read;
  const limit = overhangLimit(operation);
  // A boring bar reaches at least as far as the bore is long.
  const reach = tool.overhangMm ?? (operation.process === 'bore' ? cut?.lengthMm : undefined);
  if (limit && reach !== undefined && tool.diameterMm !== undefined && reach / tool.diameterMm > limit.value) {
    warnings.push({ is: 'overhang', ratio: reach / tool.diameterMm, limit });
  }
  const free = freeLength(operation, setup, read, answers);
  if (free && diameterMm !== undefined && free.lengthMm / diameterMm > free.limit.value) {
    warnings.push({ is: 'slender', ratio: free.lengthMm / diameterMm, limit: free.limit });
  }
  return warnings;
}

function overhangLimit({ process }: Operation): Limit | undefined {
  switch (process) {
    case 'bore':
    case 'mill':
      return overhangLimits[process];
    case 'face':
    case 'turn':
    case 'shape':
    case 'plane':
      return overhangLimits.turn;
    default:
      return undefined;
  }
}

/** How much of turned work stands free while it is cut, and how much may. */
function freeLength(
  { process }: Operation,
  setup: Setup | undefined,
  { cut }: ReadOperation,
  answers: Answers,
): { readonly lengthMm: number; readonly limit: Limit } | undefined {
  if (process !== 'turn' || !setup || cut?.lengthMm === undefined) return undefined;
  const { holding } = setup;
  if (holding.as === 'between centres') return { lengthMm: cut.lengthMm, limit: slenderLimits.centres };
  if (holding.as !== 'three-jaw chuck' && holding.as !== 'four-jaw chuck') return undefined;
  if (holding.tailCentre) return { lengthMm: cut.lengthMm, limit: slenderLimits.centres };
  const grips = (holding.ends ?? []).map(({ station }) => answers.at(station)).filter((at) => at !== undefined);
  const ends = cut.ends.filter((at) => at !== undefined);
  // From the jaws to the far end of the cut; where the grip is not said, at least the cut itself.
  const lengthMm =
    grips.length === 0
      ? cut.lengthMm
      : Math.max(...ends.map((end) => Math.min(...grips.map((grip) => Math.abs(end - grip)))));
  return { lengthMm, limit: slenderLimits.chuck };
}

function holeWarnings({ operation, holes, diameterMm }: WarnedOperation): readonly OperationWarning[] {
  if (diameterMm === undefined) return [];
  return holes.flatMap(({ hole: { body }, depthMm }): readonly OperationWarning[] => {
    if (depthMm === undefined) return [];
    const ratio = depthMm / diameterMm;
    if (operation.process === 'tap' && ratio > DEEP_THREAD.value) {
      return [{ is: 'deep-thread', body, ratio, limit: DEEP_THREAD }];
    }
    if (operation.process !== 'drill' || ratio <= DEEP_HOLE.value) return [];
    return [{ is: 'deep-hole', body, ratio, limit: ratio > TOO_DEEP_HOLE.value ? TOO_DEEP_HOLE : DEEP_HOLE }];
  });
}

function stockWarnings({ stock: { findsMm, leavesMm, from } }: WarnedOperation): readonly OperationWarning[] {
  if (findsMm === undefined || leavesMm === undefined || from === undefined) return [];
  return leavesMm > findsMm ? [{ is: 'nothing-to-take', findsMm, leavesMm }] : [];
}
