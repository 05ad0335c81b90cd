import { isNameProblem } from '../../name-problem.ts';
import { definePartRule, type Said } from '../../rule.ts';

export default definePartRule({
  id: 'unknown-name',
  title: 'Formula names what is not there',
  department: 'drawing',
  severity: 'stop',
  shuts: ['cut'],
  acceptable: false,
  needs: ['part', 'dimensions'],
  messages: {
    dimension: '{name} of {part} reads "{text}", and no dimension there is called "{unknown}".',
    'dimension-near': '{name} of {part} reads "{text}", and no dimension there is called "{unknown}".',
    part: '{name} of {part} reads "{text}", and no part is called "{unknown}".',
    'part-near': '{name} of {part} reads "{text}", and no part is called "{unknown}".',
    twice: '{name} of {part} reads "{text}", and more than one is called "{unknown}".',
  },
  remedies: {
    dimension: 'Write the name of a dimension of {part}, or "name of part" for one of another part.',
    'dimension-near': 'Did you mean "{nearest}"? Write the name as it stands in the list.',
    part: 'Write the name of a part as it stands in the list.',
    'part-near': 'Did you mean "{nearest}"? Write the name as it stands in the list.',
    twice: 'Give the two different names, then write the one that is meant.',
  },

  check: ({ part, dimensions }) =>
    dimensions.flatMap(
      ({ record, resolved }): readonly Said<'dimension' | 'dimension-near' | 'part' | 'part-near' | 'twice'>[] => {
        if (resolved.problem?.why !== 'text' || !isNameProblem(resolved.problem.problem)) return [];
        const { code, data: about } = resolved.problem.problem;
        const nearest = about?.nearest;
        const data = { name: record.name, part: part.name, text: record.value, unknown: about?.name ?? '' };
        const at = [record.id] as const;
        if (code === 'name-ambiguous') return [{ message: 'twice', at, data }];
        const what = code === 'part-unknown' ? 'part' : 'dimension';
        if (nearest === undefined) return [{ message: what, at, data }];
        return [{ message: `${what}-near`, at, data: { ...data, nearest } }];
      },
    ),
});
