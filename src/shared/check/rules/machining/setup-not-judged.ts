import type { RecordId } from '../../../build/records.ts';
import type { Unknown } from '../../../plan/unknown.ts';
import { definePartRule, type Said } from '../../rule.ts';
import { setupNeeds, unknownList } from '../../setup-sentences.ts';

/** The record that a set-up lacks something of. */
function missingRecord(one: Unknown): readonly RecordId[] {
  if (one.is === 'station') return [one.station];
  if (one.is === 'dimension') return [one.dimension];
  return one.is === 'body' ? [one.body] : [];
}

/** Nothing is said of a set-up whose machine, line or work is not known: that would be guessing. */
export default definePartRule({
  id: 'setup-not-judged',
  title: 'Set-up that cannot be judged',
  department: 'machining',
  severity: 'stop',
  shuts: ['machine'],
  acceptable: false,
  needs: setupNeeds,
  messages: {
    machine: '{setup} of {part} names no machine, so nothing can be said of it.',
    unknown: '{setup} of {part} cannot be judged: it is not known {what}.',
  },
  remedies: {
    machine: 'Choose one of your machines for it, or enter the machine first.',
    unknown: 'Give what is missing, in the set-up or in the drawing; nothing is guessed in its place.',
  },

  check: ({ part, setups }) =>
    setups.flatMap((fact): readonly Said<'machine' | 'unknown'>[] => {
      const { setup, unknown } = fact.check;
      const data = { setup: setup.name, part: part.name };
      const others = unknown.filter(({ is }) => is !== 'machine');
      const said: Said<'machine' | 'unknown'>[] = [];
      if (others.length < unknown.length) said.push({ message: 'machine', at: [setup.id], data });
      if (others.length > 0) {
        const at = [setup.id, ...others.flatMap(missingRecord)] as const;
        said.push({ message: 'unknown', at, data: { ...data, what: unknownList(others, fact) } });
      }
      return said;
    }),
});
