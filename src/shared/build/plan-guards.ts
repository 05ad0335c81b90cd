import { err, ok, type Result } from '../base/result.ts';
import type { Dimension } from './dimension.ts';
import type { Draft } from './draft.ts';
import { plansNaming, recordOf } from './look-up.ts';
import { counted } from './names.ts';
import type { PlanUse } from './plan-use.ts';
import { isPlan, type Plan, usesOfPlan, withoutGone } from './plan-uses.ts';
import type { Build, RecordId } from './records.ts';
import type { Refusal } from './refusals.ts';
import { planFaults, servesAsAny, wordsOfRoles } from './validate-plan.ts';

const SHOWN = 3;

const wordOf = (kind: Plan['kind']): string => (kind === 'setup' ? 'set-up' : kind);

const nameOfPart = (build: Build, { part }: Exclude<Plan, { readonly kind: 'pour' }>): string =>
  recordOf(build, 'part', part)?.name ?? 'part';

/** `set-up "first side"`, `operation "drill feet"`, `casting of "column"`. */
const wordsOfPlan = (build: Build, plan: Plan): string =>
  plan.kind === 'casting' ? `casting of "${nameOfPart(build, plan)}"` : `${wordOf(plan.kind)} "${plan.name}"`;

/** As {@link wordsOfPlan}, with the part, for labels: `set-up first side of column`, `casting of column`, `pour large parts`. */
export function labelOfPlan(build: Build, plan: Plan): string {
  if (plan.kind === 'pour') return `pour ${plan.name}`;
  const name = plan.kind === 'casting' ? '' : ` ${plan.name}`;
  return `${wordOf(plan.kind)}${name} of ${nameOfPart(build, plan)}`;
}

/** `2 set-ups`, `1 set-up, 1 casting and 2 pours`: kinds in the order of {@link plansNaming}. */
export function countedPlans(plans: readonly Plan[]): string {
  const kinds = [...new Set(plans.map(({ kind }) => kind))];
  const words = kinds.map((kind) => counted(plans.filter((plan) => plan.kind === kind).length, wordOf(kind)));
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}

function namesOf(build: Build, plans: readonly Plan[]): string {
  const names = plans.slice(0, SHOWN).map((plan) => wordsOfPlan(build, plan));
  const more = plans.length - SHOWN;
  if (more > 0) names.push(`${more} more`);
  return names.length === 1 ? names[0]! : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}

/** What of `gone` a plan cannot do without. */
const hardUse = (plan: Plan, gone: ReadonlySet<string>): PlanUse | undefined =>
  usesOfPlan(plan).uses.find((use) => !use.loose && gone.has(use.id));

function refuse(build: Build, needing: readonly Plan[], needed: RecordId): Result<never, Refusal> {
  const record = build.get(needed);
  const kind = record?.kind === 'setup' ? 'set-up' : record?.kind;
  const what = record && 'name' in record ? `the ${kind} "${record.name}"` : 'it';
  const names = namesOf(build, needing);
  return err({
    code: 'needed-by-plans',
    data: {
      plans: names.charAt(0).toUpperCase() + names.slice(1),
      need: needing.length === 1 ? 'needs' : 'need',
      what,
    },
  });
}

/**
 * Takes what goes out of the plans that stay and hold together without it, and refuses where one does not.
 *
 * @param gone everything that goes: plans among it.
 * @returns the plans that were changed.
 */
export function releasePlans(build: Build, draft: Draft, gone: ReadonlySet<string>): Result<readonly Plan[], Refusal> {
  const changed = plansNaming(build, gone).flatMap((plan) => {
    const now = gone.has(plan.id) ? undefined : draft.get(plan.id);
    return now && isPlan(now) ? [withoutGone(now, gone)] : [];
  });
  const needing = changed.filter((plan) => hardUse(plan, gone));
  const [first] = needing;
  if (first) return refuse(build, needing, hardUse(first, gone)!.id);
  for (const plan of changed) draft.put(plan);
  return ok(changed);
}

/** Refuses that a station takes another axis while plans are placed on it. */
export function refuseIfPlansStandOn(build: Build, station: RecordId): Result<undefined, Refusal> {
  const ids = new Set<string>([station]);
  const needing = plansNaming(build, ids).filter((plan) => hardUse(plan, ids));
  return needing.length > 0 ? refuse(build, needing, station) : ok(undefined);
}

/** Refuses that a dimension measures something that the plans which take it for a size have no use for. */
export function refuseUnfitForPlans(build: Build, to: Dimension): Result<undefined, Refusal> {
  for (const plan of plansNaming(build, new Set([to.id]))) {
    const use = usesOfPlan(plan).uses.find(({ id, roles }) => id === to.id && roles && !servesAsAny(to, roles));
    if (!use?.roles) continue;
    const wanted = wordsOfRoles(use.roles);
    return err({
      code: 'measure-needed-by-plan',
      data: { plan: wordsOfPlan(build, plan), dimension: to.name, wanted },
    });
  }
  return ok(undefined);
}

/** Refuses a plan that names what is not there, of another part, along another axis, or of no use in its place. */
export function checkPlan(draft: Draft, plan: Plan): Result<undefined, Refusal> {
  const [fault] = planFaults(plan, (id) => draft.get(id));
  if (!fault) return ok(undefined);
  return err({ code: `${plan.kind}-does-not-hold`, data: { what: fault.what, remedy: fault.remedy } });
}

/** Refuses a change of a set-up that the operations done in it cannot follow. */
export function checkOperationsIn(build: Build, draft: Draft, setup: RecordId): Result<undefined, Refusal> {
  for (const plan of plansNaming(build, new Set([setup]))) {
    const now = draft.get(plan.id);
    if (now?.kind !== 'operation') continue;
    const holds = checkPlan(draft, now);
    if (!holds.ok) return holds;
  }
  return ok(undefined);
}
