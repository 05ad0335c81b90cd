import { ok, type Result } from '../../shared/base/result.ts';
import { type BuildContent, writeBuildJson } from '../../shared/build/build-json.ts';
import type { Step } from '../../shared/build/command.ts';
import { openStore } from '../store/open-store.ts';
import { readText, writeProblem } from './read-input.ts';
import { type CallProblem, problem } from './verb.ts';
import { isBuildFileName, writeText } from './write-output.ts';

/** Makes a step of the build that was read from `file`, given its content, and puts it there: in the journal or as JSON. */
export async function editFile(
  file: string,
  content: BuildContent,
  after: BuildContent,
  step: Step,
): Promise<Result<true, CallProblem>> {
  if (!isBuildFileName(file) && (await isJson(file))) return writeText(file, writeBuildJson(after));
  const opened = await openStore(file);
  if (!opened.ok) return problem(file, 'The file cannot be opened for writing.', 'Write into a copy with --into NEW.');
  const store = opened.value;
  try {
    if (store.readOnly) {
      const { readOnly } = store;
      if (readOnly.why === 'file') return writeProblem(file, { code: 'read-only' });
      return problem(
        file,
        `The file is open elsewhere: ${readOnly.by}, since ${readOnly.since}.`,
        'Close it there, or write into a copy with --into NEW.',
      );
    }
    const loaded = await store.load();
    if (!loaded.ok) return problem(file, 'The file cannot be read.', 'Open it in the window to recover it.');
    if (writeBuildJson({ records: JSON.parse(loaded.value.records), issues: [] }) !== withoutIssues(content)) {
      return writeProblem(file, { code: 'stale-revision', current: loaded.value.revision });
    }
    const saved = await store.commit(loaded.value.revision, step.label, step.diff);
    return saved.ok ? ok(true) : writeProblem(file, saved.error);
  } finally {
    await store.close();
  }
}

const withoutIssues = ({ records }: BuildContent): string => writeBuildJson({ records, issues: [] });

async function isJson(file: string): Promise<boolean> {
  const text = await readText(file, { readStdin: async () => '' });
  return text.ok && /^\uFEFF?\s*\{/.test(text.value);
}
