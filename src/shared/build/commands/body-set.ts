import type { BodyId } from '../../base/ids.ts';
import { err, ok, type Result } from '../../base/result.ts';
import type { Body } from '../body.ts';
import { checkBody, removeUnusedSolids, wordsOfBodies } from '../body-guards.ts';
import type { RepeatSketch, ShapeSketch } from '../body-sketch.ts';
import { type CommandContext, defineCommand } from '../command.ts';
import type { Source } from '../dimension.ts';
import { type Draft, draftOf } from '../draft.ts';
import { drawSketch } from '../draw-sketch.ts';
import { shorten, whyNotKept } from '../keepable.ts';
import { recordOf } from '../look-up.ts';
import type { Build } from '../records.ts';
import type { Refusal } from '../refusals.ts';

export interface BodyFields extends Partial<Pick<Body, 'name' | 'adds' | 'finish' | 'note'>> {
  /** Stations and sizes that are not there yet are made. */
  readonly shape?: ShapeSketch;
  readonly repeats?: readonly RepeatSketch[];
}

export interface BodySet {
  readonly changes: readonly { readonly body: BodyId; readonly set: BodyFields }[];
  /** Source of the dimensions that are made; drawn, if not said. */
  readonly source?: Source;
}

/** Changes fields of bodies, their shape and place included. */
export default defineCommand<BodySet>({
  id: 'body-set',
  run(build, { changes, source = 'drawn' }, context) {
    const [first] = changes;
    if (!first) return err({ code: 'nothing-given' });
    const draft = draftOf(build);
    const bodies: Body[] = [];
    for (const { body: id, set } of changes) {
      const from = recordOf(build, 'body', id);
      if (!from) return err({ code: 'body-not-found' });
      bodies.push(from);
      const to = changed(build, draft, from, set, source, context);
      if (!to.ok) return to;
      const refused = whyNotKept(to.value);
      if (refused) return err(refused);
      const holds = checkBody(draft, to.value);
      if (!holds.ok) return holds;
      draft.put(to.value);
    }
    removeUnusedSolids(build, draft);
    const words = wordsOfBodies(build, bodies);
    return ok({ diff: draft.diff(), label: changes.length === 1 ? labelOf(words, first.set) : `change ${words}` });
  },
});

function changed(
  build: Build,
  draft: Draft,
  from: Body,
  { shape, repeats, ...set }: BodyFields,
  source: Source,
  context: CommandContext,
): Result<Body, Refusal> {
  const part = recordOf(build, 'part', from.part);
  if (!part) return err({ code: 'part-not-found' });
  const name = set.name === undefined ? from.name : set.name.trim();
  if (name === '') return err({ code: 'name-empty', data: { what: 'body' } });
  const plain: Body = { ...from, ...set, name };
  if (!shape && !repeats) return ok(plain);
  const sketch = { shape: shape ?? from.shape, repeats: repeats ?? from.repeats };
  const drawn = drawSketch(build, draft, { part, name, finish: plain.finish, source }, sketch, context);
  return drawn.ok ? ok({ ...plain, ...drawn.value }) : drawn;
}

function labelOf(words: string, set: BodyFields): string {
  const fields = Object.entries(set);
  const [only] = fields;
  if (fields.length !== 1 || !only) return `change ${words}`;
  const [field, value] = only;
  switch (field) {
    case 'name':
      return `rename ${words} to ${shorten(String(value).trim())}`;
    case 'note':
      return `change note of ${words}`;
    case 'adds':
      return value ? `let ${words} add` : `let ${words} take away`;
    case 'finish':
      return `make ${words} ${String(value)}`;
    default:
      return `change ${field} of ${words}`;
  }
}
