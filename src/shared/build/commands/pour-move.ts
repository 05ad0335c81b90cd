import type { PourId } from '../../base/ids.ts';
import { err, ok } from '../../base/result.ts';
import { defineCommand } from '../command.ts';
import { poursOf, recordOf } from '../look-up.ts';
import { moveInList } from '../move-in-list.ts';

export interface PourMove {
  readonly pour: PourId;
  /** The pour to stand before; undefined: the end of the list. */
  readonly before: PourId | undefined;
}

export default defineCommand<PourMove>({
  id: 'pour-move',
  run(build, { pour: id, before }) {
    const pour = recordOf(build, 'pour', id);
    const diff = pour && moveInList(build, poursOf(build), pour, before);
    if (!diff) return err({ code: 'pour-not-found' });
    return ok({ diff, label: `move pour ${pour.name}` });
  },
});
