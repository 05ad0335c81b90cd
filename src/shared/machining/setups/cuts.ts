import type { OperationId } from '../../base/ids.ts';
import { err, ok, type Result } from '../../base/result.ts';
import type { SizeRole } from '../../build/body-uses.ts';
import type { Operation, Process } from '../../build/operation.ts';
import { amountIfSaid, type KnownAmount, type KnownPlace, type Reading } from '../../plan/amounts.ts';
import type { Unknown } from '../../plan/unknown.ts';
import { distinctUnknowns } from '../../plan/unknown.ts';
import type { ChangedNumbers } from './recipe.ts';

/** Round work that turns is cut from without, from within, or by a tool that the tailstock or the spindle feeds along the line. */
export type CutWay = 'outside' | 'inside' | 'drilled' | 'flat';

const ways: Readonly<Record<Process, CutWay>> = {
  face: 'outside',
  turn: 'outside',
  bore: 'inside',
  drill: 'drilled',
  ream: 'drilled',
  tap: 'drilled',
  countersink: 'drilled',
  counterbore: 'drilled',
  mill: 'flat',
  shape: 'flat',
  plane: 'flat',
  grind: 'flat',
  scrape: 'flat',
  lap: 'flat',
  saw: 'flat',
  file: 'flat',
};

const wayOf = ({ process }: Pick<Operation, 'process'>): CutWay => ways[process];

/** One cut of the operations that are done in a set-up. */
export interface Cut {
  readonly operation: Operation;
  readonly way: CutWay;
  readonly ends: readonly [KnownPlace, KnownPlace];
  /** Undefined where nothing is said. */
  readonly diameter: KnownAmount | undefined;
  readonly inner: KnownAmount | undefined;
  readonly toolDiameter: KnownAmount | undefined;
  readonly overhangMm: number | undefined;
}

/** A cut, or what is missing to know where it goes. */
export type KnownCut = Result<Cut, { readonly operation: Operation; readonly unknown: readonly Unknown[] }>;

const across: readonly SizeRole[] = ['diameter', 'width'];

/** Where an operation cuts. */
export function readCut(operation: Operation, reading: Reading): KnownCut {
  const { cut, tool } = operation;
  if (!cut) return err({ operation, unknown: [{ is: 'field', field: 'cut' }] });
  const unknown: Unknown[] = [];
  const take = <T>(read: Result<T, Unknown>): T | undefined => {
    if (read.ok) return read.value;
    unknown.push(read.error);
    return undefined;
  };
  const from = take(reading.place(cut.ends[0], 'cut/ends/0'));
  const to = take(reading.place(cut.ends[1], 'cut/ends/1'));
  const diameter = take(amountIfSaid(reading, cut.diameter, across, 'cut/diameter'));
  const inner = take(amountIfSaid(reading, cut.inner, across, 'cut/inner'));
  const toolDiameter = take(amountIfSaid(reading, tool.diameter, across, 'tool/diameter'));
  const overhangMm = take(reading.plain(tool.overhang, 'tool/overhang'));
  if (!from || !to || unknown.length > 0) return err({ operation, unknown: distinctUnknowns(unknown) });
  return ok({ operation, way: wayOf(operation), ends: [from, to], diameter, inner, toolDiameter, overhangMm });
}

/** The lower and the upper end of a cut, mm from the part's datum. */
export function cutWithin({ ends }: Pick<Cut, 'ends'>, now: ChangedNumbers): readonly [low: number, high: number] {
  const [a, b] = [now.place(ends[0]), now.place(ends[1])];
  return a <= b ? [a, b] : [b, a];
}

/** The least radius that the edge comes to: of a face its inner one, the centre where none is said. Undefined where unknown. */
export function leastRadius({ operation, diameter, inner }: Cut, now: ChangedNumbers): number | undefined {
  if (inner) return now.amount(inner) / 2;
  if (operation.process === 'face') return 0;
  return diameter && now.amount(diameter) / 2;
}

/** A cut as a picture shows it, mm along the line from the part's datum. */
export interface ShownCut {
  readonly operation: OperationId;
  readonly way: CutWay;
  readonly from: number;
  readonly to: number;
  readonly radius: number | undefined;
  readonly inner: number | undefined;
}

export function shownCut(cut: Cut, now: ChangedNumbers): ShownCut {
  const [from, to] = cutWithin(cut, now);
  return {
    operation: cut.operation.id,
    way: cut.way,
    from,
    to,
    radius: cut.diameter && now.amount(cut.diameter) / 2,
    inner: cut.inner && now.amount(cut.inner) / 2,
  };
}
