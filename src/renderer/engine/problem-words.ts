import type { ValueProblem } from '../../shared/drawing/drawing.ts';
import type { TextProblem } from '../../shared/quantity/kind.ts';
import { textProblemWords } from './text-problem-words.ts';
import type { Scene } from './view.ts';

/** Why a dimension has no value, in one sentence for under its cell. */
export function valueProblemWords(scene: Scene, problem: ValueProblem): string {
  const names = (ids: readonly string[]) =>
    ids
      .map((id) => {
        const dimension = scene.index.dimension(id as never);
        return dimension === undefined ? '' : `${dimension.name} of ${scene.index.part(dimension.part)?.name ?? ''}`;
      })
      .join(', ');
  switch (problem.why) {
    case 'empty':
      return 'The drawing gives no value. Type one, or a formula.';
    case 'text':
      return textProblemWords(problem.problem);
    case 'ring':
      return `It hangs on itself: ${names([...problem.ring, ...problem.ring.slice(0, 1)]).replaceAll(', ', ' → ')}. Write one of them as a number.`;
    case 'waiting':
      return `It waits for ${names(problem.causes)}, which has no value yet.`;
  }
}

export const limitsProblemWords = (problem: TextProblem): string => textProblemWords(problem);
