import type { DimensionId, StationId } from '../../base/ids.ts';
import { err, ok, type Result } from '../../base/result.ts';
import type { Amount, Place } from '../../build/amount.ts';
import { type SizeRole, servesAs } from '../../build/body-uses.ts';
import { parseWritten } from '../../formula/parse-written.ts';
import type { Kind, LengthUnit } from '../../quantity/kind.ts';
import type { Unknown } from '../setup-check.ts';
import type { Numbers } from './numbers.ts';

/** A place that is known: a station that stands somewhere, and mm beyond it. */
export interface KnownPlace {
  readonly station: StationId;
  readonly beyond: number;
}

/** A size that is known: of the drawing, else mm as written. */
export type KnownAmount =
  | { readonly is: 'size'; readonly dimension: DimensionId; readonly role: SizeRole }
  | { readonly is: 'written'; readonly value: number };

/** Reads what set-ups and operations name; what cannot be told says what is missing. `field` is that of its record. */
export interface Reading {
  /** Undefined when nothing is written. */
  plain(text: string, field: string, kind?: Kind): Result<number | undefined, Unknown>;
  place(place: Place | undefined, field: string): Result<KnownPlace, Unknown>;
  /** Above nought. Nothing said is an unknown field. */
  amount(amount: Amount, roles: SizeRole | readonly SizeRole[], field: string): Result<KnownAmount, Unknown>;
}

const isSaid = ({ size, written }: Amount): boolean => size !== undefined || written.trim() !== '';

/** The amount, or undefined where nothing is said. */
export function amountIfSaid(
  reading: Reading,
  amount: Amount,
  roles: SizeRole | readonly SizeRole[],
  field: string,
): Result<KnownAmount | undefined, Unknown> {
  return isSaid(amount) ? reading.amount(amount, roles, field) : ok(undefined);
}

export function readingOf(numbers: Numbers, lengthUnit: LengthUnit): Reading {
  const plain: Reading['plain'] = (text, field, kind = 'length') => {
    const read = parseWritten(text, { kind, lengthUnit });
    if (!read.ok || read.value.is === 'formula') return err({ is: 'written', field, text });
    return ok(read.value.is === 'empty' ? undefined : read.value.value);
  };
  return {
    plain,
    place(place, field) {
      if (!place) return err({ is: 'field', field });
      if (!numbers.place(place.station)) return err({ is: 'station', station: place.station });
      const beyond = plain(place.beyond, `${field}/beyond`);
      return beyond.ok ? ok({ station: place.station, beyond: beyond.value ?? 0 }) : beyond;
    },
    amount(amount, roles, field) {
      if (!isSaid(amount)) return err({ is: 'field', field });
      const { size, written } = amount;
      if (size === undefined) {
        const read = plain(written, `${field}/written`);
        if (!read.ok) return read;
        const value = read.value;
        return value !== undefined && value > 0
          ? ok({ is: 'written', value })
          : err({ is: 'written', field: `${field}/written`, text: written });
      }
      const record = numbers.record(size);
      const list = typeof roles === 'string' ? [roles] : roles;
      const role = record?.kind === 'dimension' ? list.find((one) => servesAs(record.measure, one)) : undefined;
      const value = role && numbers.resolved(size)?.value;
      if (role === undefined || value === undefined || !(Math.abs(value) > 0))
        return err({ is: 'dimension', dimension: size });
      return ok({ is: 'size', dimension: size, role });
    },
  };
}
