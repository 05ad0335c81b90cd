import { readFile } from 'node:fs/promises';
import { unreachable } from '../../shared/base/assert.ts';
import { ok, type Result } from '../../shared/base/result.ts';
import { type BuildContent, type JsonProblem, parseBuildJson } from '../../shared/build/build-json.ts';
import type { CommitError } from '../../shared/ipc/contract.ts';
import { type ReadError, readBuildFile } from '../store/read-build-file.ts';
import { type CallProblem, problem, type Surroundings } from './verb.ts';

/** What stands for standard input among the files. */
export const STDIN = '-';

/** How many problems of a file one message lists. */
const LISTED = 10;

/** Reads a build: a build file or its JSON form, or JSON from standard input for `-`. */
export async function readBuild(
  file: string,
  { readStdin }: Pick<Surroundings, 'readStdin'>,
): Promise<Result<BuildContent, CallProblem>> {
  if (file === STDIN) {
    const parsed = parseBuildJson(await readStdin());
    return parsed.ok ? parsed : jsonProblem('standard input', parsed.error);
  }
  const read = await readBuildFile(file);
  return read.ok ? read : readProblem(file, read.error);
}

/** Reads any text, or standard input for `-`. */
export async function readText(
  file: string,
  { readStdin }: Pick<Surroundings, 'readStdin'>,
): Promise<Result<string, CallProblem>> {
  if (file === STDIN) return ok(await readStdin());
  try {
    return ok(await readFile(file, 'utf8'));
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : String(error);
    if (code === 'ENOENT') return problem(file, 'There is no such file.', 'Check the name and the folder.');
    if (code === 'EISDIR') return problem(file, 'This is a folder.', 'Name a file in it.');
    return problem(file, `The file cannot be read (${code}).`, 'Check that you may read it.');
  }
}

function jsonProblem(file: string, problems: readonly JsonProblem[]) {
  const lines = problems.slice(0, LISTED).map(({ place, sentence, remedy }) => `${place}: ${sentence} ${remedy}`);
  const rest = problems.length - lines.length;
  if (rest > 0) lines.push(`… and ${rest} more.`);
  const count = problems.length === 1 ? 'one problem' : `${problems.length} problems`;
  return problem(file, `The build cannot be taken, because of ${count}:`, lines.join('\n'));
}

function readProblem(file: string, error: ReadError) {
  switch (error.code) {
    case 'json':
      return jsonProblem(file, error.problems);
    case 'not-found':
      return problem(file, 'There is no such file.', 'Check the name and the folder.');
    case 'not-a-build':
      return problem(
        file,
        'This is neither a build file nor the JSON form of one.',
        'Name a .wayw file or a JSON build.',
      );
    case 'newer-version':
      return problem(
        file,
        `The file has version ${error.version}; this program reads up to ${error.newest}.`,
        'Use a newer release of the program. The file was not changed.',
      );
    case 'damaged':
      return problem(
        file,
        `The file is damaged: ${error.detail}`,
        'Open it in the window, which offers to recover what can be read into a new file.',
      );
    case 'unreadable':
      return problem(file, `The file cannot be read: ${error.detail}`, 'Check that you may read it.');
    default:
      return unreachable(error);
  }
}

/** Why something could not be put on disk. */
export function writeProblem(file: string, error: CommitError) {
  switch (error.code) {
    case 'disk-full':
      return problem(file, 'The disk is full.', 'Make room and try again. The file is as it was.');
    case 'read-only':
      return problem(file, 'The file can only be read.', 'Write into a copy with --into NEW.');
    case 'stale-revision':
      return problem(file, 'The file was changed by someone else meanwhile.', 'Try again.');
    case 'nothing-to-step':
      return problem(file, 'There is nothing to step to.', 'Nothing needs doing.');
    case 'unwritable':
      return problem(file, `The file cannot be written: ${error.detail}`, 'Check that you may write there.');
    default:
      return unreachable(error);
  }
}
