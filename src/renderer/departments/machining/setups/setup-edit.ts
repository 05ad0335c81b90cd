import { useEffect, useState } from 'react';
import type { StationId } from '../../../../shared/base/ids.ts';
import type { Setup } from '../../../../shared/build/setup.ts';
import type { SetupModel } from '../../../engine/machining/models.ts';
import { useEngine, useIsEditable } from '../../../engine/use-engine.ts';
import type { PlanEdit } from '../fields/plan-edit.ts';

export type SetupFields = Partial<Omit<Setup, 'kind' | 'id' | 'part' | 'order'>>;

interface HalfLine {
  readonly at: 0 | 1;
  readonly station: StationId;
}

/** What a form of a set-up does and says. */
export interface SetupEdit extends PlanEdit {
  readonly model: SetupModel;
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
    names: model,
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
