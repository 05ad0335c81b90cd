import type { PartId } from '../../base/ids.ts';
import { err, ok } from '../../base/result.ts';
import { defineCommand } from '../command.ts';
import { partsOf, recordOf } from '../look-up.ts';
import { moveInList } from '../move-in-list.ts';

export interface PartMove {
  readonly part: PartId;
  /** The part to stand before; undefined: the end of the list. */
  readonly before: PartId | undefined;
}

export default defineCommand<PartMove>({
  id: 'part-move',
  run(build, { part: id, before }) {
    const part = recordOf(build, 'part', id);
    const diff = part && moveInList(build, partsOf(build), part, before);
    if (!diff) return err({ code: 'part-not-found' });
    return ok({ diff, label: `move part ${part.name}` });
  },
});
