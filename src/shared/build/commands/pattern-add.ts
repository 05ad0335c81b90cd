import type { PartId, PatternId } from '../../base/ids.ts';
import { err, ok } from '../../base/result.ts';
import { defineCommand } from '../command.ts';
import { draftOf } from '../draft.ts';
import { whyNotKept } from '../keepable.ts';
import { leaveOutUndefined } from '../leave-out-undefined.ts';
import { patternsOf, recordOf } from '../look-up.ts';
import { freeName } from '../names.ts';
import { defaultPattern, type Pattern } from '../pattern.ts';
import { placeInList } from '../place-in-list.ts';
import { inTime } from './weighing-add.ts';

/** Fields of a pattern as they are given. */
export type PatternFields = Partial<Omit<Pattern, 'kind' | 'id' | 'part' | 'order' | 'rule'>> & {
  /** Members that change; the others stay. */
  readonly rule?: Partial<Pattern['rule']>;
};

export interface PatternAdd {
  readonly part: PartId;
  /** Fields that differ from a new pattern's; without a name it gets a free one. */
  readonly set?: PatternFields;
  /** The pattern of the same part to stand before; otherwise it goes to the end of the list. */
  readonly before?: PatternId;
}

/** The pattern with fields put over its own; weighings in order of time. */
export function withPatternFields(from: Pattern, { rule, ...set }: PatternFields): Pattern {
  const { trials, weighings } = set;
  return leaveOutUndefined({
    ...from,
    ...set,
    rule: { ...from.rule, ...leaveOutUndefined(rule ?? {}) },
    ...(trials ? { trials: trials.map((trial) => ({ ...trial, what: trial.what.trim() || 'trial' })) } : {}),
    ...(weighings ? { weighings: inTime(weighings) } : {}),
  });
}

/** Adds a pattern that was made, or is in the making. */
export default defineCommand<PatternAdd>({
  id: 'pattern-add',
  run(build, { part: partId, set = {}, before }, { newId }) {
    const part = recordOf(build, 'part', partId);
    if (!part) return err({ code: 'part-not-found' });
    const list = patternsOf(build, partId);
    const taken = list.map((pattern) => pattern.name);
    const name = set.name?.trim() || freeName('pattern', taken);
    const { orders, moved } = placeInList(list, before);
    const fresh = defaultPattern(newId('pattern'), partId, name, orders[0]!);
    const pattern = withPatternFields(fresh, { ...set, name });
    const refused = whyNotKept(pattern);
    if (refused) return err(refused);
    const draft = draftOf(build);
    for (const [, to] of moved) draft.put(to);
    draft.put(pattern);
    return ok({ diff: draft.diff(), label: `add pattern ${name} of ${part.name}` });
  },
});
