import type { TextProblem } from '../quantity/kind.ts';

const codes: readonly string[] = ['name-unknown', 'part-unknown', 'name-ambiguous'];

/** Whether a formula can be read, but names something that is not there, or that is there twice. */
export const isNameProblem = (problem: TextProblem): boolean => codes.includes(problem.code);
