import type { BodyId } from '../../base/ids.ts';
import { err, ok } from '../../base/result.ts';
import type { Body } from '../body.ts';
import { removeUnusedSolids, wordsOfBodies } from '../body-guards.ts';
import { defineCommand } from '../command.ts';
import { draftOf } from '../draft.ts';
import { recordOf } from '../look-up.ts';
import { releasePlans } from '../plan-guards.ts';
import { removeAcceptancesOf } from '../pointing.ts';

export interface BodyRemove {
  readonly bodies: readonly BodyId[];
}

/** Removes bodies. Their stations and dimensions stay: the drawing is more than its solids. Operations no longer make them. */
export default defineCommand<BodyRemove>({
  id: 'body-remove',
  run(build, { bodies }) {
    const gone = new Set<string>(bodies);
    if (gone.size === 0) return err({ code: 'nothing-given' });
    const draft = draftOf(build);
    const found: Body[] = [];
    for (const id of gone) {
      const body = recordOf(build, 'body', id);
      if (!body) return err({ code: 'body-not-found' });
      found.push(body);
      draft.remove(body.id);
    }
    const released = releasePlans(build, draft, gone);
    if (!released.ok) return released;
    removeUnusedSolids(build, draft);
    removeAcceptancesOf(build, draft, gone);
    return ok({ diff: draft.diff(), label: `remove ${wordsOfBodies(build, found)}` });
  },
});
