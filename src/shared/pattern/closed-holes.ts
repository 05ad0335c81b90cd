import type { BodyId } from '../base/ids.ts';
import type { Casting } from '../build/casting.ts';
import type { Operation } from '../build/operation.ts';
import type { Reading } from '../plan/amounts.ts';
import { boundsOfCopy } from '../solid/bounds.ts';
import { createHolder } from '../solid/holds-point.ts';
import type { ExactShape, PlacedBody, Vec3 } from '../solid/placed.ts';
import { type PracticeFigure, patternPractice } from '../tables/pattern-practice.ts';
import { isCutAway } from './drawn-stock.ts';
import type { PatternUnknown } from './pattern-unknown.ts';

/** A round hole of the casting that is cast solid. */
export interface ClosedHole {
  readonly body: BodyId;
  /** With its stock taken off, mm; nought or less where stock fills it. */
  readonly diameterMm: number;
  /** Whether machining makes it later. */
  readonly madeLater: boolean;
}

/** The diameter under which holes are closed up, and whose it is. */
export interface CloseUnder {
  readonly figure: PracticeFigure;
  readonly isOwn: boolean;
  readonly unknown: readonly PatternUnknown[];
}

export const isFoam = ({ moulding }: Pick<Casting, 'moulding'>): boolean => moulding.startsWith('foam');

/** As written, else the starting value of the process. */
export function closeUnderOf(casting: Casting, reading: Reading): CloseUnder {
  const own = reading.plain(casting.closeUnder, 'closeUnder');
  const start = isFoam(casting) ? patternPractice.closeUnderFoam : patternPractice.closeUnderCore;
  if (!own.ok) return { figure: start, isOwn: false, unknown: [own.error] };
  if (own.value === undefined) return { figure: start, isOwn: false, unknown: [] };
  return { figure: { value: own.value, status: 'written', source: 'as written' }, isOwn: true, unknown: [] };
}

/**
 * Whether a hollow of the casting is a hole that is cast solid. The starting value closes only holes that machining makes
 * afterwards; what the founder has written closes all.
 *
 * @param shape with its stock; undefined where stock leaves nothing of it.
 */
export function closedHole(
  body: PlacedBody,
  shape: ExactShape | undefined,
  { figure, isOwn }: CloseUnder,
  bodies: readonly PlacedBody[],
  operations: readonly Operation[],
): ClosedHole | undefined {
  const { record } = body;
  if (record.adds || !isRound(body.shape)) return undefined;
  const diameterMm = shape?.is === 'turned' ? 2 * Math.max(...shape.outline.map(({ r }) => r)) : 0;
  if (diameterMm >= figure.value) return undefined;
  const madeLater = isMadeLater(body, bodies, operations);
  return isOwn || madeLater || diameterMm <= 0 ? { body: record.id, diameterMm, madeLater } : undefined;
}

const isRound = (shape: ExactShape | undefined): boolean =>
  shape?.is === 'turned' && shape.outline.some(({ r }) => r === 0);

/** An operation makes the body or a size of it, or a machined body takes away the metal in its middle. */
function isMadeLater(
  { record, shape, moves, dimensions }: PlacedBody,
  bodies: readonly PlacedBody[],
  operations: readonly Operation[],
): boolean {
  const made = new Set<string>(operations.flatMap(({ makes }) => makes));
  if (made.has(record.id) || dimensions.some((id) => made.has(id))) return true;
  const move = moves[0];
  if (!shape || !move) return false;
  const { min, max } = boundsOfCopy(shape, move);
  const middle = min.map((from, k) => (from + max[k]!) / 2) as unknown as Vec3;
  return bodies.some(
    (other) => isCutAway(other) && other.shape && other.moves.some((at) => createHolder(other.shape!, at)(middle)),
  );
}
