import type { OperationId } from '../../base/ids.ts';
import type { Result } from '../../base/result.ts';
import type { Amount, Place } from '../../build/amount.ts';
import type { SizeRole } from '../../build/body-uses.ts';
import type { KnownAmount, KnownPlace } from '../../plan/amounts.ts';
import type { Unknown } from '../../plan/unknown.ts';
import { distinctUnknowns } from '../../plan/unknown.ts';
import type { VerdictKind } from '../setup-check.ts';
import type { Scene } from '../setups/scene.ts';
import type { Question } from './question.ts';

/** Stands where something is unknown: the question is not worked out then, so nobody sees it. */
const NOWHERE: KnownPlace = { station: '' as KnownPlace['station'], beyond: Number.NaN };
const NOTHING: KnownAmount = { is: 'written', value: Number.NaN };

/** Gathers what a question needs to know, and what of it is not known. */
export interface Asking {
  readonly unknown: readonly Unknown[];
  /** A figure of the machine, by its key; NaN, and noted, where it is not known. */
  figure(key: string): number;
  /** The same where the question can do without it. */
  figureIfKnown(key: string): number | undefined;
  place(place: Place | undefined, field: string): KnownPlace;
  amount(amount: Amount, roles: SizeRole | readonly SizeRole[], field: string): KnownAmount;
  /** A value read before. */
  take<T>(read: Result<T, Unknown>): T | undefined;
  miss(...unknown: readonly Unknown[]): void;
  question(
    kind: VerdictKind,
    operation: OperationId | undefined,
    carriers: number,
    term: Question['term'],
    atMost?: Question['atMost'],
  ): Question;
}

export function asking({ figures, machine, reading }: Scene): Asking {
  const unknown: Unknown[] = [];
  const take = <T>(read: Result<T, Unknown>): T | undefined => {
    if (read.ok) return read.value;
    unknown.push(read.error);
    return undefined;
  };
  return {
    get unknown() {
      return distinctUnknowns([...unknown]);
    },
    figure(key) {
      const value = figures.values.get(key);
      if (value === undefined) unknown.push({ is: 'figure', machine: machine.id, key });
      return value ?? Number.NaN;
    },
    figureIfKnown: (key) => figures.values.get(key),
    place: (place, field) => take(reading.place(place, field)) ?? NOWHERE,
    amount: (amount, roles, field) => take(reading.amount(amount, roles, field)) ?? NOTHING,
    take,
    miss: (...more) => void unknown.push(...more),
    question: (kind, operation, carriers, term, atMost) => ({
      kind,
      operation,
      unknown: distinctUnknowns([...unknown]),
      carriers,
      term,
      ...(atMost && { atMost }),
    }),
  };
}
