import { isNameProblem } from '../../shared/check/name-problem.ts';
import { textProblemWords as wordsOf } from '../../shared/check/text-problem-words.ts';
import type { TextProblem } from '../../shared/quantity/kind.ts';

/** What is wrong with a written text and what to do, for under its cell. */
export function textProblemWords(problem: TextProblem): string {
  if (!isNameProblem(problem)) {
    const { sentence, remedy } = wordsOf(problem);
    return `${sentence} ${remedy}`;
  }
  const name = problem.data?.name ?? '';
  const nearest = problem.data?.nearest;
  if (problem.code === 'name-ambiguous')
    return `More than one is called "${name}". Give the two different names first.`;
  const what = problem.code === 'part-unknown' ? 'No part' : 'No dimension';
  const remedy = nearest === undefined ? 'Write the name as it stands in the list.' : `Did you mean "${nearest}"?`;
  return `${what} is called "${name}". ${remedy}`;
}
