import type { BodyId, PartId } from '../../base/ids.ts';
import { err, ok } from '../../base/result.ts';
import type { Body } from '../body.ts';
import { checkBody } from '../body-guards.ts';
import type { RepeatSketch, ShapeSketch } from '../body-sketch.ts';
import { defineCommand } from '../command.ts';
import type { Source } from '../dimension.ts';
import { draftOf } from '../draft.ts';
import { drawSketch } from '../draw-sketch.ts';
import { whyNotKept } from '../keepable.ts';
import { bodiesOf, recordOf } from '../look-up.ts';
import { freeName } from '../names.ts';
import { placeInList } from '../place-in-list.ts';

export interface BodySketchParams {
  readonly part: PartId;
  /** Without a name it is called after its shape; new stations and sizes are called after it. */
  readonly name?: string;
  /** A hole takes away and is machined, everything else adds and is as cast, if not said. */
  readonly adds?: boolean;
  readonly finish?: Body['finish'];
  readonly shape: ShapeSketch;
  readonly repeats?: readonly RepeatSketch[];
  readonly note?: string;
  /** Source of the dimensions that are made; drawn, if not said. */
  readonly source?: Source;
  readonly before?: BodyId;
}

/**
 * Draws a body in one step: every place is a station that is there or a new one so far from another, every size a dimension
 * that is there or a new one. A block typed as three lengths makes its six stations and three dimensions by itself.
 */
export default defineCommand<BodySketchParams>({
  id: 'body-sketch',
  run(build, params, context) {
    const { part: partId, shape, repeats = [], note = '', source = 'drawn', before } = params;
    const part = recordOf(build, 'part', partId);
    if (!part) return err({ code: 'part-not-found' });
    const list = bodiesOf(build, partId);
    const taken = list.map((other) => other.name);
    const name = params.name?.trim() || freeName(shape.type, taken);
    const takes = shape.type === 'hole';
    const { adds = !takes, finish = takes ? 'machined' : 'as cast' } = params;
    const draft = draftOf(build);
    const drawn = drawSketch(build, draft, { part, name, finish, source }, { shape, repeats }, context);
    if (!drawn.ok) return drawn;
    const { orders, moved } = placeInList(list, before);
    const body: Body = {
      kind: 'body',
      id: context.newId('body'),
      part: partId,
      name,
      adds,
      finish,
      ...drawn.value,
      note,
      order: orders[0]!,
    };
    const refused = whyNotKept(body);
    if (refused) return err(refused);
    const holds = checkBody(draft, body);
    if (!holds.ok) return holds;
    for (const [, to] of moved) draft.put(to);
    draft.put(body);
    return ok({ diff: draft.diff(), label: `draw ${name} of ${part.name}` });
  },
});
