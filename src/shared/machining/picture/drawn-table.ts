import type { Span, TableScene } from './scene.ts';

const length = ([from, to]: Span): number => to - from;

/** The size that everything which only the eye needs is drawn by: the largest of the work's own. */
export const drawnTable = ({ size }: TableScene): number =>
  Math.max(length(size.along), length(size.back), length(size.up), 1);
