import type { PourId } from '../../base/ids.ts';
import { err, ok } from '../../base/result.ts';
import { defineCommand } from '../command.ts';
import { draftOf } from '../draft.ts';
import { shorten, whyNotKept } from '../keepable.ts';
import { leaveOutUndefined } from '../leave-out-undefined.ts';
import { recordOf } from '../look-up.ts';
import { defaultJournal, type Pour, type PourJournal } from '../pour.ts';

export interface JournalSet {
  readonly pour: PourId;
  /** Fields that change, the others stay; undefined: the journal is struck out, the pour is yet to come. */
  readonly set: Partial<PourJournal> | undefined;
}

/** Writes down how a pour really went. The first entry begins the journal; without a moment of its own it was poured now. */
export default defineCommand<JournalSet>({
  id: 'journal-set',
  run(build, { pour: id, set }, { now }) {
    const from = recordOf(build, 'pour', id);
    if (!from) return err({ code: 'pour-not-found' });
    const { journal, ...plan } = from;
    if (set === undefined && !journal) return err({ code: 'pour-without-journal', data: { name: from.name } });
    const to: Pour =
      set === undefined
        ? plan
        : { ...plan, journal: { ...(journal ?? defaultJournal(now)), ...leaveOutUndefined(set) } };
    const refused = whyNotKept(to);
    if (refused) return err(refused);
    const draft = draftOf(build);
    draft.put(to);
    return ok({ diff: draft.diff(), label: labelOf(from, set) });
  },
});

const words: Readonly<Partial<Record<keyof PourJournal, string>>> = {
  pouredAt: 'moment',
  temperature: 'pouring temperature',
  ambient: 'temperature of the shop',
  insertTemperature: 'temperature of the inserts',
  charged: 'mass charged',
  left: 'mass left',
  meltMinutes: 'time of melting',
  fillSeconds: 'time of filling',
};

function labelOf({ name, journal }: Pour, set: Partial<PourJournal> | undefined): string {
  if (set === undefined) return `strike out the journal of pour ${name}`;
  const fields = Object.entries(set) as (readonly [keyof PourJournal, unknown])[];
  const [only] = fields;
  if (fields.length !== 1 || !only) return `${journal ? 'change' : 'begin'} the journal of pour ${name}`;
  const [field, value] = only;
  switch (field) {
    case 'result':
      return value === 'not judged' ? `leave pour ${name} unjudged` : `judge pour ${name} ${String(value)}`;
    case 'defects':
      return `note the defects of pour ${name}`;
    case 'change':
      return `note what to change after pour ${name}`;
    case 'note':
      return `change the notes of pour ${name}`;
    default: {
      const what = `${words[field] ?? field} in the journal of pour ${name}`;
      return value === '' ? `clear ${what}` : `set ${what} to ${shorten(String(value))}`;
    }
  }
}
