import type { OperationId } from '../../base/ids.ts';
import type { Operation, Process } from '../../build/operation.ts';
import type { Setup } from '../../build/setup.ts';
import type { LengthUnit } from '../../quantity/kind.ts';
import type { PlacedBody } from '../../solid/placed.ts';
import { bodiesMade, holeOf } from './made-holes.ts';
import { type ReadOperation, readPlain } from './read-operation.ts';
import type { Answers } from './route-part.ts';

/** Stock on what an operation makes, in mm per side. */
export interface Stock {
  /** What it finds; undefined where that is not known. */
  readonly findsMm: number | undefined;
  readonly leavesMm: number | undefined;
  /** Where `finds` comes from: the operation before it, the allowance of its set-up, or a hole drilled before. */
  readonly from:
    | { readonly is: 'operation'; readonly operation: OperationId }
    | { readonly is: 'allowance' }
    | undefined;
  /** Diameter of the hole that is there already, of one that is opened out; 0 where there is solid metal. */
  readonly holeMm: number;
}

/** Makes or opens a round hole by its tool's own diameter. */
const opensHoles: ReadonlySet<Process> = new Set(['drill', 'ream', 'bore', 'tap', 'countersink', 'counterbore']);

export interface StockGiven {
  /** In list order. */
  readonly operations: readonly Operation[];
  readonly reads: ReadonlyMap<OperationId, ReadOperation>;
  readonly setups: ReadonlyMap<string, Setup>;
  readonly bodies: readonly PlacedBody[];
  readonly answers: Answers;
  readonly lengthUnit: LengthUnit;
}

/** What each operation finds, walked in list order: of the things that it makes, the one with most stock counts. */
export function stockOf({
  operations,
  reads,
  setups,
  bodies,
  answers,
  lengthUnit,
}: StockGiven): Map<OperationId, Stock> {
  /** The last operation that made a thing. */
  const last = new Map<string, Operation>();
  const cored = new Set<string>(
    bodies.filter(({ record }) => record.finish === 'cored').map(({ record }) => record.id),
  );
  const found = new Map<OperationId, Stock>();
  for (const operation of operations) {
    const read = reads.get(operation.id)!;
    const things = new Set<string>([
      ...operation.makes,
      ...bodiesMade(operation, bodies).map(({ record }) => record.id),
    ]);
    let stock: Stock = { findsMm: undefined, leavesMm: read.leavesMm, from: undefined, holeMm: 0 };
    for (const thing of things) {
      const before = last.get(thing);
      if (before) {
        const one = left(operation, before, read, reads.get(before.id)!);
        const holeMm = Math.max(stock.holeMm, one.holeMm);
        const more = one.findsMm !== undefined && one.findsMm >= (stock.findsMm ?? -1);
        const from = { is: 'operation', operation: before.id } as const;
        stock = more ? { ...stock, findsMm: one.findsMm, from, holeMm } : { ...stock, holeMm };
      } else if (cored.has(thing)) {
        const body = bodies.find(({ record }) => record.id === thing)!;
        stock = { ...stock, holeMm: Math.max(stock.holeMm, holeOf(body, answers)?.diameterMm ?? 0) };
      }
    }
    if (stock.from === undefined) {
      const allowance = readPlain(setups.get(operation.setup ?? '')?.allowance ?? '', 'length', lengthUnit);
      if (allowance.ok && allowance.value !== undefined && allowance.value >= 0) {
        stock = { ...stock, findsMm: allowance.value, from: { is: 'allowance' } };
      }
    }
    found.set(operation.id, stock);
    for (const thing of things) last.set(thing, operation);
  }
  return found;
}

/** What an earlier operation has left of one thing for a later one. */
function left(
  later: Operation,
  before: Operation,
  read: ReadOperation,
  earlier: ReadOperation,
): { readonly findsMm: number | undefined; readonly holeMm: number } {
  const written = before.leaves.trim() === '' ? undefined : earlier.leavesMm;
  if (!opensHoles.has(before.process) || !opensHoles.has(later.process)) {
    return { findsMm: earlier.leavesMm, holeMm: 0 };
  }
  const opened = openedBy(before, earlier);
  const wanted = openedBy(later, read);
  if (written !== undefined) return { findsMm: written, holeMm: opened ?? 0 };
  if (opened === undefined || wanted === undefined) return { findsMm: undefined, holeMm: opened ?? 0 };
  return { findsMm: Math.max(0, (wanted - opened) / 2), holeMm: opened };
}

/** Diameter of the hole that an operation leaves. */
const openedBy = ({ process }: Operation, { tool, cut, holes }: ReadOperation): number | undefined =>
  process === 'bore' ? (cut?.diameterMm ?? holes[0]?.diameterMm) : (tool.diameterMm ?? holes[0]?.diameterMm);
