import { err, ok, type Result } from '../base/result.ts';
import type { Body } from './body.ts';
import { servesAs, usesOf, wordsOfRole } from './body-uses.ts';
import type { Dimension } from './dimension.ts';
import type { Draft } from './draft.ts';
import { bodiesNeeding, recordOf, solidsOf } from './look-up.ts';
import { refuseUnfitForPlans } from './plan-guards.ts';
import type { Build, RecordId } from './records.ts';
import type { Refusal } from './refusals.ts';
import { bodyFaults } from './validate-body.ts';

const SHOWN = 3;

/** `"boss" and "foot"`, `"boss", "foot", "lug" and 4 more`. */
function namesOf(bodies: readonly Body[]): string {
  const names = bodies.slice(0, SHOWN).map((body) => `"${body.name}"`);
  const more = bodies.length - SHOWN;
  if (more > 0) names.push(`${more} more`);
  return names.length === 1 ? names[0]! : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}

const verb = (bodies: readonly Body[]): string => (bodies.length === 1 ? 'hangs' : 'hang');

/**
 * Refuses that something goes while bodies that stay hang on it.
 * @param gone what goes: stations, dimensions and bodies alike.
 */
export function refuseIfNeeded(build: Build, gone: ReadonlySet<string>): Result<undefined, Refusal> {
  const bodies = bodiesNeeding(build, gone).filter((body) => !gone.has(body.id));
  const [first] = bodies;
  if (!first) return ok(undefined);
  const { stations, sizes } = usesOf(first);
  const needed = [...stations.map((use) => use.station), ...sizes.map((use) => use.dimension)].find((id) =>
    gone.has(id),
  );
  const record = build.get(needed as RecordId);
  const what = record && 'name' in record ? `the ${record.kind} "${record.name}"` : 'it';
  return err({ code: 'needed-by-bodies', data: { bodies: namesOf(bodies), hang: verb(bodies), what } });
}

/** Refuses that a dimension measures something that what takes it for a size, bodies and plans, has no use for. */
export function refuseUnfitMeasure(build: Build, to: Dimension): Result<undefined, Refusal> {
  const bodies = bodiesNeeding(build, new Set([to.id]));
  for (const body of bodies) {
    const use = usesOf(body).sizes.find(({ dimension, role }) => dimension === to.id && !servesAs(to.measure, role));
    if (!use) continue;
    const wanted = wordsOfRole(use.role);
    return err({ code: 'measure-needed-by-body', data: { body: body.name, dimension: to.name, wanted } });
  }
  return refuseUnfitForPlans(build, to);
}

/** Refuses a body that names what is not there, of another part, along another axis, or of no use in its place. */
export function checkBody(draft: Draft, body: Body): Result<undefined, Refusal> {
  const [fault] = bodyFaults(body, (id) => draft.get(id));
  return fault ? err({ code: 'body-does-not-hold', data: { what: fault.what, remedy: fault.remedy } }) : ok(undefined);
}

/** Takes away the imported solids that no body puts in a place any more; undo brings them back. */
export function removeUnusedSolids(build: Build, draft: Draft): void {
  for (const solid of solidsOf(build)) {
    const users = bodiesNeeding(build, new Set([solid.id]));
    const used = users.some((body) => {
      const now = draft.get(body.id);
      return now?.kind === 'body' && now.shape.type === 'imported' && now.shape.solid === solid.id;
    });
    if (!used && users.length > 0) draft.remove(solid.id);
  }
}

/** `body boss of column`, `3 bodies`. */
export function wordsOfBodies(build: Build, bodies: readonly Body[]): string {
  const [only] = bodies;
  if (bodies.length !== 1 || !only) return `${bodies.length} bodies`;
  return `${only.name} of ${recordOf(build, 'part', only.part)?.name ?? 'part'}`;
}
