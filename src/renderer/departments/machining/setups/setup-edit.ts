import { useEffect, useState } from 'react';
import type { StationId } from '../../../../shared/base/ids.ts';
import type { Amount, Place } from '../../../../shared/build/amount.ts';
import type { Setup } from '../../../../shared/build/setup.ts';
import type { Axis } from '../../../../shared/build/station.ts';
import { nameKey } from '../../../../shared/formula/name-key.ts';
import type { NameOption, SetupModel } from '../../../engine/machining/models.ts';
import { useEngine, useIsEditable } from '../../../engine/use-engine.ts';

export type SetupFields = Partial<Omit<Setup, 'kind' | 'id' | 'part' | 'order'>>;

interface HalfLine {
  readonly at: 0 | 1;
  readonly station: StationId;
}

/** What a form of a set-up does and says. */
export interface SetupEdit {
  readonly model: SetupModel;
  readonly readOnly: boolean;
  /** What is wrong with a field: what was just refused, else what cannot be read. */
  error(field: string): string | undefined;
  say(field: string, sentence: string | undefined): void;
  /** The one station of a line whose other is not said yet: a record holds both or none. */
  readonly half: HalfLine | undefined;
  setHalf(half: HalfLine): void;
  /** Makes the change; a refusal stays at the field. */
  set(field: string, fields: SetupFields): void;
}

export function useSetupEdit(model: SetupModel): SetupEdit {
  const engine = useEngine();
  const readOnly = !useIsEditable();
  const [errors, setErrors] = useState<Readonly<Record<string, string>>>({});
  const id = model.record.id;
  // biome-ignore lint/correctness/useExhaustiveDependencies: another set-up begins without refusals
  useEffect(() => setErrors({}), [id]);
  const say = (field: string, sentence: string | undefined) =>
    setErrors(({ [field]: _, ...others }) => (sentence === undefined ? others : { ...others, [field]: sentence }));
  const [half, setHalf] = useState<HalfLine>();
  // biome-ignore lint/correctness/useExhaustiveDependencies: a line that is said, or another set-up, leaves nothing half said
  useEffect(() => setHalf(undefined), [id, model.record.line]);
  return {
    model,
    readOnly,
    half,
    setHalf,
    error: (field) => errors[field] ?? model.problems[field],
    say,
    set: (field, set) => {
      void engine.run('setup-set', { setup: id, set }).then((outcome) => {
        say(field, outcome.ok ? undefined : outcome.sentence);
      });
    },
  };
}

const sameName = (a: string, b: string): boolean => nameKey(a) === nameKey(b);

/** The option that a text names; `near` narrows it to stations of an axis. */
export const optionNamed = (options: readonly NameOption[], text: string, axis?: Axis): NameOption | undefined =>
  options.find((option) => (axis === undefined || option.axis === axis) && sameName(option.name, text));

export const nameOf = (options: readonly NameOption[], id: string | undefined): string =>
  options.find((option) => option.id === id)?.name ?? '';

/** @returns a station by its name, or a sentence that says what there is. */
export function stationNamed(
  { model }: Pick<SetupEdit, 'model'>,
  text: string,
  axis: Axis | undefined,
): StationId | { readonly sentence: string } {
  const found = optionNamed(model.stations, text, axis);
  if (found !== undefined) return found.id as StationId;
  const along = axis === undefined ? '' : ` along ${axis}`;
  return {
    sentence: `No station of ${model.part}${along} is called "${text.trim()}". Choose one from the list, or draw it first.`,
  };
}

/** A dimension by its name, else what was written. */
export function amountOf(options: readonly NameOption[], text: string): Amount {
  const found = text.trim() === '' ? undefined : optionNamed(options, text);
  return found === undefined ? { written: text.trim() } : { size: found.id as never, written: '' };
}

export const amountText = (options: readonly NameOption[], { size, written }: Amount): string =>
  size === undefined ? written : nameOf(options, size);

export const placeAt = (station: StationId, beyond = ''): Place => ({ station, beyond });
