import { describeProblem } from '../formula/messages.ts';
import type { TextProblem } from '../quantity/kind.ts';

/** What is wrong with a written text, and what to do. The rooms that read texts word both in one. */
export function textProblemWords(problem: TextProblem): { readonly sentence: string; readonly remedy: string } {
  const words = describeProblem(problem) ?? 'This cannot be worked out.';
  const end = /[.?](?= [A-Z“"])/.exec(words);
  if (!end) return { sentence: words, remedy: 'Write a value that can be worked out.' };
  return { sentence: words.slice(0, end.index + 1), remedy: words.slice(end.index + 2) };
}
