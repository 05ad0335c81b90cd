import { unreachable } from '../base/assert.ts';
import { formOf, servesAs, wordsOfRole } from './body-uses.ts';
import type { Dimension } from './dimension.ts';
import { faultsOfCasting, faultsOfPour } from './foundry-faults.ts';
import type { PlanFault } from './plan-fault.ts';
import type { PlanUse } from './plan-use.ts';
import { holdsPart, type Plan, usesOfPlan } from './plan-uses.ts';
import { isProperTurn } from './proper-turn.ts';
import type { BuildRecord, RecordId, RecordKind } from './records.ts';

const words: Readonly<Partial<Record<RecordKind, string>>> = { setup: 'set-up' };
const wordOf = (kind: RecordKind): string => words[kind] ?? kind;
const an = (word: string): string => `${/^[aeiou]/.test(word) ? 'an' : 'a'} ${word}`;

type Missing = Extract<PlanFault['code'], `${string}-missing`>;

/**
 * What of a plan does not fit its build: something it names is not there, is another part's, lies along
 * another axis, or is a size of a form that cannot serve. What is not said yet is not asked for here: a plan may be unfinished.
 *
 * @param partial some records could not be read: what is not there is then not held against the plan.
 */
export function planFaults(
  plan: Plan,
  get: (id: RecordId) => BuildRecord | undefined,
  partial = false,
): readonly PlanFault[] {
  const faults: PlanFault[] = [];
  const { uses, pairs } = usesOfPlan(plan);
  for (const use of uses) {
    const record = get(use.id);
    if (record?.kind === use.kind) {
      const fault = misfit(use, record);
      if (fault) faults.push({ ...fault, field: use.field });
    } else if (!partial) {
      const word = wordOf(use.kind);
      const what = `there is no ${word} ${use.id}`;
      faults.push({
        code: `${use.kind}-missing` as Missing,
        field: use.field,
        what,
        remedy: `Add that ${word}, or name one that is there.`,
      });
    }
  }
  for (const { stations, field } of pairs) {
    const [a, b] = stations.map((id) => get(id));
    if (a?.kind !== 'station' || b?.kind !== 'station' || a.axis === b.axis) continue;
    const what = `"${a.name}" lies along ${a.axis} and "${b.name}" along ${b.axis}`;
    faults.push({ code: 'station-of-other-axis', field, what, remedy: 'Name two stations of one axis.' });
  }
  faults.push(...ownFaults(plan, get));
  return faults;
}

function ownFaults(plan: Plan, get: (id: RecordId) => BuildRecord | undefined): readonly PlanFault[] {
  switch (plan.kind) {
    case 'setup':
      return faultsOfTurns(plan.fellows);
    case 'operation':
      return faultsOfOrder(plan, get);
    case 'casting':
      return faultsOfCasting(plan, get);
    case 'pattern':
      return [];
    case 'pour':
      return faultsOfPour(plan, get);
    default:
      return unreachable(plan);
  }
}

function misfit(use: PlanUse, record: BuildRecord): Omit<PlanFault, 'field'> | undefined {
  const name = 'name' in record ? `"${record.name}"` : record.id;
  if (use.of !== undefined && 'part' in record && record.part !== use.of) {
    const word = wordOf(record.kind);
    return {
      code: 'of-other-part',
      what: `${name} is ${an(word)} of another part`,
      remedy: `Name ${an(word)} of the part that this is about.`,
    };
  }
  if (use.among && 'part' in record && !use.among.includes(record.part)) {
    return {
      code: 'not-poured',
      what: `${name} is ${an(wordOf(record.kind))} of a part that is not poured here`,
      remedy: 'Put that part among the castings of the pour, or name a body of one that is.',
    };
  }
  if (record.kind === 'station' && use.axis !== undefined && record.axis !== use.axis) {
    return {
      code: 'station-of-other-axis',
      what: `${name} lies along ${record.axis}, and a station along ${use.axis} is wanted`,
      remedy: `Name a station along ${use.axis}.`,
    };
  }
  if (record.kind === 'dimension' && use.roles && !servesAsAny(record, use.roles)) {
    const is =
      record.measure.type === 'between' ? 'a distance between stations' : `of the form "${formOf(record.measure)}"`;
    const wanted = wordsOfRoles(use.roles);
    return {
      code: 'size-does-not-fit',
      what: `${name} is ${is}, and ${wanted} is wanted`,
      remedy: `Name ${wanted} of the same part, or write the size instead.`,
    };
  }
  return undefined;
}

type Roles = NonNullable<PlanUse['roles']>;

export const servesAsAny = ({ measure }: Pick<Dimension, 'measure'>, roles: Roles): boolean =>
  roles.some((role) => servesAs(measure, role));

/** What can serve, in words; the widest of the roles says it. */
export const wordsOfRoles = (roles: Roles): string =>
  roles.length === 2 ? 'a diameter, a radius, a thread, a length or a distance' : wordsOfRole(roles[0]!);

function faultsOfTurns(fellows: Extract<Plan, { readonly kind: 'setup' }>['fellows']): readonly PlanFault[] {
  return fellows.flatMap(({ turn }, i) =>
    isProperTurn(turn)
      ? []
      : [
          {
            code: 'turn-mirrors' as const,
            field: `fellows/${i}/turn`,
            what: `${turn.join(', ')} is no turn of the three axes: it would mirror or flatten the part`,
            remedy:
              'Give each axis once, so that the third points where a right-handed screw from the first to the second goes.',
          },
        ],
  );
}

function faultsOfOrder(
  operation: Extract<Plan, { readonly kind: 'operation' }>,
  get: (id: RecordId) => BuildRecord | undefined,
): readonly PlanFault[] {
  const faults: PlanFault[] = [];
  const { id, part, after } = operation;
  const setup = operation.setup === undefined ? undefined : get(operation.setup);
  if (setup?.kind === 'setup' && !holdsPart(setup, part)) {
    faults.push({
      code: 'part-not-held',
      field: 'setup',
      what: `the set-up "${setup.name}" does not hold the part of "${operation.name}"`,
      remedy: 'Name a set-up of this part, or put the part into that set-up first.',
    });
  }
  if (after.includes(id)) {
    faults.push({
      code: 'after-itself',
      field: `after/${after.indexOf(id)}`,
      what: `"${operation.name}" cannot come after itself`,
      remedy: 'Name other operations.',
    });
  }
  return faults;
}
