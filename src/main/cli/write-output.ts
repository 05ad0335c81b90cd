import { stat } from 'node:fs/promises';
import { ok, type Result } from '../../shared/base/result.ts';
import { type BuildContent, writeBuildJson } from '../../shared/build/build-json.ts';
import { writeAtomically } from '../files/write-atomically.ts';
import { createStore } from '../store/create-store.ts';
import { writeProblem } from './read-input.ts';
import { type CallProblem, problem } from './verb.ts';

/** Whether a name is that of a build file rather than of its JSON form. */
export const isBuildFileName = (file: string): boolean => file.toLowerCase().endsWith('.wayw');

/** Nothing that is there is written over unless the call says so. */
export async function mayWrite(file: string, force: boolean): Promise<Result<true, CallProblem>> {
  if (force) return ok(true);
  try {
    await stat(file);
  } catch {
    return ok(true);
  }
  return problem(file, 'There is a file of that name already.', 'Choose another name, or write over it with --force.');
}

/** Writes a text, or bytes, whole or not at all. */
export async function writeText(file: string, text: string | Uint8Array): Promise<Result<true, CallProblem>> {
  try {
    await writeAtomically(file, text);
    return ok(true);
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : String(error);
    if (code === 'ENOSPC') return writeProblem(file, { code: 'disk-full' });
    if (code === 'ENOENT')
      return problem(file, 'The folder is not there.', 'Make the folder first, or choose another.');
    return writeProblem(file, { code: 'unwritable', detail: code });
  }
}

/** Writes a build as a new file: a build file or its JSON form, by the ending of the name. */
export async function writeBuild(
  file: string,
  content: BuildContent,
  replace: boolean,
): Promise<Result<true, CallProblem>> {
  if (!isBuildFileName(file)) return writeText(file, writeBuildJson(content));
  const created = await createStore(file, content.records, { replace });
  return created.ok ? ok(true) : writeProblem(file, created.error);
}
