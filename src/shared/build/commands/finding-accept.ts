import { err, ok } from '../../base/result.ts';
import type { Acceptance } from '../acceptance.ts';
import { defineCommand } from '../command.ts';
import { draftOf } from '../draft.ts';
import { whyNotKept } from '../keepable.ts';
import { acceptancesOf } from '../look-up.ts';

export interface FindingAccept {
  readonly rule: string;
  /** The finding's key. */
  readonly finding: string;
  /** The finding's figures as they are now (`figuresOf` in check). */
  readonly figures: string;
  readonly reason: string;
}

/** Accepts a finding with a reason; an earlier acceptance of the same finding gives way to it. */
export default defineCommand<FindingAccept>({
  id: 'finding-accept',
  run(build, { rule, finding, figures, reason }, { newId, now }) {
    if (reason.trim() === '') return err({ code: 'reason-empty' });
    const acceptance: Acceptance = {
      kind: 'acceptance',
      id: newId('acceptance'),
      rule,
      finding,
      figures,
      reason: reason.trim(),
      acceptedAt: now,
    };
    const refused = whyNotKept(acceptance);
    if (refused) return err(refused);
    const draft = draftOf(build);
    for (const earlier of acceptancesOf(build)) if (earlier.finding === finding) draft.remove(earlier.id);
    draft.put(acceptance);
    return ok({ diff: draft.diff(), label: 'accept finding' });
  },
});
