import type { DimensionId } from '../../../shared/base/ids.ts';
import { type BuildDiff, invert } from '../../../shared/build/diff.ts';
import { kindOfMeasure } from '../../../shared/build/kind-of-measure.ts';
import { valueProblemWords } from '../problem-words.ts';
import { show } from '../show.ts';
import { textProblemWords } from '../text-problem-words.ts';
import type { Ask } from '../view.ts';

export interface Preview {
  /** What the text would come to, e.g. `25 mm`, or the limits as `24.9 mm to 25.1 mm`; undefined when it is empty. */
  readonly shown: string | undefined;
  readonly problem: { readonly sentence: string; readonly start: number; readonly end: number } | undefined;
}

export interface PreviewParams {
  readonly dimension: DimensionId;
  readonly field: 'value' | 'limits';
  readonly text: string;
}

/**
 * What a text would come to if it were committed. The drawing graph really takes the edit and gives it back: so the
 * answer is the very one that a commit would give, rings and names of other parts included.
 */
export const previewAsk: Ask<PreviewParams, Preview | undefined> = (scene, { dimension, field, text }) => {
  const record = scene.index.dimension(dimension);
  if (record === undefined) return undefined;
  const unit = scene.index.settings().lengthUnit;
  const kind = kindOfMeasure(record.measure);
  const diff: BuildDiff = { added: [], removed: [], updated: [[record, { ...record, [field]: text.trim() }]] };
  const { drawing } = scene.works;
  drawing.update(diff);
  try {
    const { value, problem, limits, limitsProblem } = drawing.dimension(dimension);
    if (field === 'limits') {
      if (limitsProblem !== undefined) return { shown: undefined, problem: placed(limitsProblem) };
      const shown = limits && `${show(limits.lower, kind, unit)} to ${show(limits.upper, kind, unit)}`;
      return { shown: shown && `${shown} (${limits.row})`, problem: undefined };
    }
    if (value !== undefined) return { shown: show(value, kind, unit), problem: undefined };
    if (problem === undefined || problem.why === 'empty') return { shown: undefined, problem: undefined };
    if (problem.why === 'text') return { shown: undefined, problem: placed(problem.problem) };
    return { shown: undefined, problem: { sentence: valueProblemWords(scene, problem), start: 0, end: text.length } };
  } finally {
    drawing.update(invert(diff));
  }
};

const placed = (problem: Parameters<typeof textProblemWords>[0]) => ({
  sentence: textProblemWords(problem),
  start: problem.start,
  end: problem.end,
});
