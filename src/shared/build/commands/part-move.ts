import type { PartId } from '../../base/ids.ts';
import { err, ok } from '../../base/result.ts';
import { defineCommand } from '../command.ts';
import { draftOf } from '../draft.ts';
import { partsOf, recordOf } from '../look-up.ts';
import { placeInList } from '../place-in-list.ts';

export interface PartMove {
  readonly part: PartId;
  /** The part to stand before; undefined: the end of the list. */
  readonly before: PartId | undefined;
}

export default defineCommand<PartMove>({
  id: 'part-move',
  run(build, { part: id, before }) {
    const part = recordOf(build, 'part', id);
    if (!part || (before !== undefined && !recordOf(build, 'part', before))) return err({ code: 'part-not-found' });
    const draft = draftOf(build);
    if (id !== before) {
      const others = partsOf(build).filter((other) => other.id !== id);
      const { orders, moved } = placeInList(others, before);
      for (const [, to] of moved) draft.put(to);
      draft.put({ ...part, order: orders[0]! });
    }
    return ok({ diff: draft.diff(), label: `move part ${part.name}` });
  },
});
