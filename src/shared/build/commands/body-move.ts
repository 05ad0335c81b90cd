import type { BodyId } from '../../base/ids.ts';
import { err, ok } from '../../base/result.ts';
import { defineCommand } from '../command.ts';
import { bodiesOf, recordOf } from '../look-up.ts';
import { moveInList } from '../move-in-list.ts';

export interface BodyMove {
  readonly body: BodyId;
  /** The body of the same part to act before; undefined: the last. */
  readonly before: BodyId | undefined;
}

/** Changes when a body acts: bodies add and take in the order of the list. */
export default defineCommand<BodyMove>({
  id: 'body-move',
  run(build, { body: id, before }) {
    const body = recordOf(build, 'body', id);
    const diff = body && moveInList(build, bodiesOf(build, body.part), body, before);
    if (!diff) return err({ code: 'body-not-found' });
    return ok({ diff, label: `move ${body.name}` });
  },
});
