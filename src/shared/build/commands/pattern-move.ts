import type { PatternId } from '../../base/ids.ts';
import { err, ok } from '../../base/result.ts';
import { defineCommand } from '../command.ts';
import { patternsOf, recordOf } from '../look-up.ts';
import { moveInList } from '../move-in-list.ts';
import { labelOfPlan } from '../plan-guards.ts';

export interface PatternMove {
  readonly pattern: PatternId;
  /** The pattern of the same part to stand before; undefined: the end of the list. */
  readonly before: PatternId | undefined;
}

export default defineCommand<PatternMove>({
  id: 'pattern-move',
  run(build, { pattern: id, before }) {
    const pattern = recordOf(build, 'pattern', id);
    const diff = pattern && moveInList(build, patternsOf(build, pattern.part), pattern, before);
    if (!diff) return err({ code: 'pattern-not-found' });
    return ok({ diff, label: `move ${labelOfPlan(build, pattern)}` });
  },
});
