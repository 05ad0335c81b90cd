import type { BodyId } from '../../base/ids.ts';
import type { Machine } from '../../build/machine.ts';
import type { Operation } from '../../build/operation.ts';
import type { Setup } from '../../build/setup.ts';
import type { Unknown } from '../../plan/unknown.ts';
import type { FoundMetal } from '../../tables/cutting-metals.ts';
import type { Limit } from '../../tables/cutting-practice.ts';
import type { CutConditions } from '../cutting/conditions.ts';
import type { CutLoad } from '../cutting/cut-load.ts';
import type { PassPlan } from './passes.ts';
import type { ReadOperation } from './read-operation.ts';
import type { Stock } from './stock.ts';

/** Cuts of one kind: how they run, what they ask of the machine, and how long they take. */
export interface Pass extends PassPlan, CutConditions {
  /** Undefined where nothing is known to work it out by. */
  readonly load: CutLoad | undefined;
  /** All cuts of this kind, on all holes; undefined where something is not known. */
  readonly minutes: number | undefined;
}

/** What to mind of an operation; the rules put it into words. */
export type OperationWarning =
  /** The table's speed lies under the slowest that the machine has, or what was chosen does. */
  | { readonly is: 'too-slow-for-machine'; readonly asked: number; readonly slowest: number; readonly chosen: boolean }
  /** What was chosen lies above the fastest. A table's speed that does is merely not reached. */
  | { readonly is: 'too-fast-for-machine'; readonly asked: number; readonly fastest: number }
  /** Faster at the edge than the table goes: m/min. */
  | { readonly is: 'faster-than-table'; readonly speed: number; readonly most: number; readonly source: string }
  | { readonly is: 'power'; readonly needsKw: number; readonly hasKw: number }
  /** In diameters of the tool; of a turning tool in widths of its shank. */
  | { readonly is: 'overhang'; readonly ratio: number; readonly limit: Limit }
  /** Work that stands free, in its diameters. */
  | { readonly is: 'slender'; readonly ratio: number; readonly limit: Limit }
  | { readonly is: 'deep-hole'; readonly body: BodyId; readonly ratio: number; readonly limit: Limit }
  | { readonly is: 'deep-thread'; readonly body: BodyId; readonly ratio: number; readonly limit: Limit }
  /** It is to leave more than it finds. */
  | { readonly is: 'nothing-to-take'; readonly findsMm: number; readonly leavesMm: number };

/** An operation with all that follows from it. Keeps its identity until something behind it really changes. */
export interface OperationFact {
  readonly record: Operation;
  /** 1 for the first of the route. */
  readonly step: number;
  readonly setup: Setup | undefined;
  readonly machine: Machine | undefined;
  /** What its material is taken as; undefined when nothing tells. */
  readonly metal: FoundMetal | undefined;
  readonly read: ReadOperation;
  readonly stock: Stock;
  /** Diameter that speed and feed are reckoned at: of the work where it turns, of the tool where that does. */
  readonly diameterMm: number | undefined;
  /** How many holes; 1 of everything else. */
  readonly count: number;
  /** Roughing first. */
  readonly passes: readonly Pass[];
  /** The whole operation, as chosen or worked out, without setting up. */
  readonly minutes: number | undefined;
  readonly warnings: readonly OperationWarning[];
  /** What would have to be known for speed, power and time; texts that cannot be read among it. */
  readonly unknown: readonly Unknown[];
}
