import type { PourId } from '../../base/ids.ts';
import { err, ok } from '../../base/result.ts';
import { defineCommand } from '../command.ts';
import { draftOf } from '../draft.ts';
import { shorten, whyNotKept } from '../keepable.ts';
import { recordOf } from '../look-up.ts';
import { checkPlan } from '../plan-guards.ts';
import type { Pour } from '../pour.ts';
import type { Build } from '../records.ts';
import { type PourFields, withPourFields } from './pour-add.ts';

export interface PourSet {
  readonly pour: PourId;
  readonly set: PourFields;
}

/** Changes fields of a pour. */
export default defineCommand<PourSet>({
  id: 'pour-set',
  run(build, { pour: id, set }) {
    const from = recordOf(build, 'pour', id);
    if (!from) return err({ code: 'pour-not-found' });
    const name = set.name === undefined ? from.name : set.name.trim();
    if (name === '') return err({ code: 'name-empty', data: { what: 'pour' } });
    const to = withPourFields(from, { ...set, name });
    const refused = whyNotKept(to);
    if (refused) return err(refused);
    const draft = draftOf(build);
    const holds = checkPlan(draft, to);
    if (!holds.ok) return holds;
    draft.put(to);
    return ok({ diff: draft.diff(), label: labelOf(build, from, set) });
  },
});

const words: Readonly<Partial<Record<keyof PourFields, string>>> = {
  temperature: 'pouring temperature',
  ambient: 'temperature of the shop',
  overflow: 'metal poured over',
  copeWeight: 'weights on the cope',
  coverAbove: 'sand above',
  coverAround: 'sand around',
  sandDensity: 'density of the sand',
};

const gatingWords: Readonly<Record<keyof Pour['gating'], string>> = {
  spot: 'place of the gate',
  sprueHeight: 'height of the sprue',
  sprueTop: 'top of the sprue',
  sprueFoot: 'foot of the sprue',
  runnerWidth: 'width of the runner',
  runnerHeight: 'height of the runner',
  runnerLength: 'length of the runner',
  gateWidth: 'width of each gate',
  gateHeight: 'height of each gate',
  gateLength: 'length of each gate',
  gates: 'number of gates',
  cupVolume: 'volume of the cup',
  hollow: 'kind of sprue',
};

const valueLabel = (what: string, value: unknown): string => {
  if (typeof value !== 'string' && typeof value !== 'number') return `change ${what}`;
  const text = String(value).trim();
  return text === '' ? `clear ${what}` : `set ${what} to ${shorten(text)}`;
};

function labelOf(build: Build, { name }: Pour, set: PourFields): string {
  const fields = Object.entries(set) as (readonly [keyof PourFields, unknown])[];
  const [only] = fields;
  if (fields.length !== 1 || !only) return `change pour ${name}`;
  const [field, value] = only;
  switch (field) {
    case 'name':
      return `rename pour ${name} to ${shorten(String(value).trim())}`;
    case 'furnace':
    case 'crucible':
    case 'flask': {
      const machine = value === undefined ? undefined : recordOf(build, 'machine', String(value));
      return machine ? `take ${machine.name} for pour ${name}` : `take no ${field} for pour ${name}`;
    }
    case 'after': {
      const earlier = value === undefined ? undefined : recordOf(build, 'pour', String(value));
      return earlier ? `let pour ${name} come after ${earlier.name}` : `let pour ${name} come after none`;
    }
    case 'alloy':
      return value === ''
        ? `pour ${name} in what its first casting is of`
        : `pour ${name} in ${shorten(String(value))}`;
    case 'gating': {
      const members = Object.entries(set.gating ?? {}) as (readonly [keyof Pour['gating'], unknown])[];
      const [one] = members;
      if (members.length !== 1 || !one) return `change gating of pour ${name}`;
      if (one[0] === 'hollow') return `give pour ${name} a ${one[1] === true ? 'hollow sprue' : 'sprue of foam'}`;
      return valueLabel(`${gatingWords[one[0]]} of pour ${name}`, one[1]);
    }
    case 'note':
      return `change note of pour ${name}`;
    default:
      return valueLabel(`${words[field] ?? field} of pour ${name}`, value);
  }
}
