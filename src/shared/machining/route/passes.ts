import { unreachable } from '../../base/assert.ts';
import type { Process } from '../../build/operation.ts';
import { finishingDepth, roughingDepth } from '../../tables/cutting-feeds.ts';
import type { CuttingMetal } from '../../tables/cutting-metals.ts';
import { grinding } from '../../tables/cutting-speeds.ts';
import type { Proposal } from '../cutting/conditions.ts';

/** Cuts of one kind that an operation takes, one after the other. */
export interface PassPlan {
  /** Roughing, finishing, or the only cut that there is. */
  readonly kind: 'rough' | 'finish' | 'only';
  /** Undefined where the stock, and so the number of cuts, is not known. */
  readonly count: number | undefined;
  /** mm per side; undefined where one cut goes to the full depth. */
  readonly depth: Proposal | undefined;
}

/** Whether a process takes its stock off in cuts of a depth of its own. */
export function cutsInPasses(process: Process): boolean {
  switch (process) {
    case 'face':
    case 'turn':
    case 'bore':
    case 'mill':
    case 'shape':
    case 'plane':
    case 'grind':
      return true;
    case 'drill':
    case 'ream':
    case 'tap':
    case 'countersink':
    case 'counterbore':
    case 'scrape':
    case 'lap':
    case 'saw':
    case 'file':
      return false;
    default:
      return unreachable(process);
  }
}

export interface PassesWanted {
  readonly process: Process;
  readonly metal: CuttingMetal | undefined;
  /** mm per side to be taken off; undefined: not known. */
  readonly takesMm: number | undefined;
  /** Nothing is left for a later operation. */
  readonly toSize: boolean;
  /** mm, as the user wants each cut. */
  readonly chosenMm: number | undefined;
  /** Deepest cut that the motor drives, mm. */
  readonly motorMm: number | undefined;
  /** Of a cutter: half of it is the deepest that it goes. */
  readonly cutterMm: number | undefined;
}

const only: readonly PassPlan[] = [{ kind: 'only', count: 1, depth: undefined }];

/** A remainder thinner than this is no cut of its own, mm. */
const DUST_MM = 1e-9;

/** In which cuts the stock comes off: roughing as deep as table and motor allow, and one last light cut to size. */
export function planPasses(wanted: PassesWanted): readonly PassPlan[] {
  const { process, metal, takesMm, toSize, chosenMm } = wanted;
  if (!cutsInPasses(process)) return only;
  if (process === 'grind') return [groundPasses(takesMm, chosenMm)];
  const deepest = deepestRough(wanted);
  if (chosenMm !== undefined) {
    const count = takesMm === undefined ? undefined : Math.max(1, Math.ceil(takesMm / chosenMm - DUST_MM));
    return [{ kind: 'only', count, depth: { value: chosenMm, from: 'chosen', row: metal && roughingDepth(metal) } }];
  }
  if (takesMm === undefined) return [{ kind: 'only', count: undefined, depth: deepest }];
  if (takesMm <= DUST_MM) return [{ kind: 'only', count: 1, depth: undefined }];
  const last = toSize ? finishingDepth.most : 0;
  if (toSize && takesMm <= last + DUST_MM) {
    return [{ kind: 'finish', count: 1, depth: { value: takesMm, from: 'table', row: finishingDepth } }];
  }
  if (!deepest) return [{ kind: 'only', count: undefined, depth: undefined }];
  const rough = takesMm - last;
  const count = Math.max(1, Math.ceil(rough / deepest.value - DUST_MM));
  const plans: PassPlan[] = [{ kind: 'rough', count, depth: { ...deepest, value: rough / count } }];
  if (toSize) plans.push({ kind: 'finish', count: 1, depth: { value: last, from: 'table', row: finishingDepth } });
  return plans;
}

function deepestRough({ process, metal, motorMm, cutterMm }: PassesWanted): Proposal | undefined {
  if (metal === undefined) return undefined;
  const row = roughingDepth(metal);
  const limit = process === 'mill' && cutterMm !== undefined ? Math.min(row.most, cutterMm / 2) : row.most;
  return motorMm !== undefined && motorMm < limit
    ? { value: motorMm, from: 'machine', row }
    : { value: limit, from: 'table', row };
}

function groundPasses(takesMm: number | undefined, chosenMm: number | undefined): PassPlan {
  const depth: Proposal =
    chosenMm === undefined
      ? { value: grinding.depth.least, from: 'table', row: grinding.depth }
      : { value: chosenMm, from: 'chosen', row: grinding.depth };
  const count = takesMm === undefined ? undefined : Math.max(1, Math.ceil(takesMm / depth.value - DUST_MM));
  return { kind: 'only', count, depth };
}
