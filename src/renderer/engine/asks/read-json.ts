import type { Result } from '../../../shared/base/result.ts';
import { type BuildContent, type JsonProblem, parseBuildJson } from '../../../shared/build/build-json.ts';
import type { Ask } from '../view.ts';

/** Reads a JSON build off the screen's thread, every problem at its place. */
export const readJsonAsk: Ask<{ readonly text: string }, Result<BuildContent, readonly JsonProblem[]>> = (
  _scene,
  { text },
) => parseBuildJson(text);
