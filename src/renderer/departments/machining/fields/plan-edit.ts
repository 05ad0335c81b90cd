import type { StationId } from '../../../../shared/base/ids.ts';
import type { Amount } from '../../../../shared/build/amount.ts';
import type { Axis } from '../../../../shared/build/station.ts';
import { nameKey } from '../../../../shared/formula/name-key.ts';
import type { NameOption } from '../../../engine/machining/models.ts';

/** What the fields of set-ups and operations need to know, and to say. */
export interface PlanEdit {
  readonly names: {
    /** Name of the part. */
    readonly part: string;
    readonly stations: readonly NameOption[];
    readonly sizes: readonly NameOption[];
  };
  readonly readOnly: boolean;
  /** What is wrong with a field: what was just refused, else what cannot be read. */
  error(field: string): string | undefined;
  say(field: string, sentence: string | undefined): void;
}

const sameName = (a: string, b: string): boolean => nameKey(a) === nameKey(b);

/** The option that a text names; `near` narrows it to stations of an axis. */
export const optionNamed = (options: readonly NameOption[], text: string, axis?: Axis): NameOption | undefined =>
  options.find((option) => (axis === undefined || option.axis === axis) && sameName(option.name, text));

export const nameOf = (options: readonly NameOption[], id: string | undefined): string =>
  options.find((option) => option.id === id)?.name ?? '';

/** @returns a station by its name, or a sentence that says what there is. */
export function stationNamed(
  { names }: Pick<PlanEdit, 'names'>,
  text: string,
  axis: Axis | undefined,
): StationId | { readonly sentence: string } {
  const found = optionNamed(names.stations, text, axis);
  if (found !== undefined) return found.id as StationId;
  const along = axis === undefined ? '' : ` along ${axis}`;
  return {
    sentence: `No station of ${names.part}${along} is called "${text.trim()}". Choose one from the list, or draw it first.`,
  };
}

/** A dimension by its name, else what was written. */
export function amountOf(options: readonly NameOption[], text: string): Amount {
  const found = text.trim() === '' ? undefined : optionNamed(options, text);
  return found === undefined ? { written: text.trim() } : { size: found.id as never, written: '' };
}

export const amountText = (options: readonly NameOption[], { size, written }: Amount): string =>
  size === undefined ? written : nameOf(options, size);
