import type { PartId } from '../../base/ids.ts';
import { err, ok } from '../../base/result.ts';
import type { Body, Shape } from '../body.ts';
import { checkBody } from '../body-guards.ts';
import type { PlaceSketch } from '../body-sketch.ts';
import { defineCommand } from '../command.ts';
import type { Source } from '../dimension.ts';
import { draftOf } from '../draft.ts';
import { drawSketch } from '../draw-sketch.ts';
import { shorten, whyNotKept } from '../keepable.ts';
import { bodiesOf, recordOf } from '../look-up.ts';
import { meshFault } from '../mesh-code.ts';
import { freeName } from '../names.ts';
import { placeInList } from '../place-in-list.ts';
import type { Solid } from '../solid.ts';

export interface SolidImport {
  readonly part: PartId;
  /** The mesh, in mm already (`encodeMesh`). */
  readonly solid: Omit<Solid, 'kind' | 'id'>;
  /** Where the file's origin goes: a station along each axis, there or new. */
  readonly origin: readonly [PlaceSketch, PlaceSketch, PlaceSketch];
  readonly turn: Extract<Shape, { readonly type: 'imported' }>['turn'];
  readonly adds?: boolean;
  readonly finish?: Body['finish'];
  /** Source of the dimensions that are made; drawn, if not said. */
  readonly source?: Source;
}

/** Takes in a mesh and puts it in its place as a body of the same name. */
export default defineCommand<SolidImport>({
  id: 'solid-import',
  run(build, params, context) {
    const { part: partId, solid, origin, turn, adds = true, finish = 'as cast', source = 'drawn' } = params;
    const part = recordOf(build, 'part', partId);
    if (!part) return err({ code: 'part-not-found' });
    const list = bodiesOf(build, partId);
    const name = freeName(
      solid.name.trim() || 'imported',
      list.map((other) => other.name),
    );
    const kept: Solid = { kind: 'solid', id: context.newId('solid'), ...solid, name };
    const unkept = whyNotKept(kept);
    if (unkept) return err(unkept);
    const unsound = meshFault(kept);
    if (unsound) return err({ code: 'solid-unsound', data: { file: shorten(solid.fileName), what: unsound.what } });
    const draft = draftOf(build);
    draft.put(kept);
    const shape = { type: 'imported', solid: kept.id, origin, turn } as const;
    const drawn = drawSketch(build, draft, { part, name, finish, source }, { shape, repeats: [] }, context);
    if (!drawn.ok) return drawn;
    const { orders } = placeInList(list, undefined);
    const body: Body = {
      kind: 'body',
      id: context.newId('body'),
      part: partId,
      name,
      adds,
      finish,
      ...drawn.value,
      note: '',
      order: orders[0]!,
    };
    const holds = checkBody(draft, body);
    if (!holds.ok) return holds;
    draft.put(body);
    return ok({ diff: draft.diff(), label: `bring ${shorten(solid.fileName || name)} into ${part.name}` });
  },
});
