import path from 'node:path';
import { err, ok, type Result } from '../../shared/base/result.ts';
import { type BuildContent, type JsonProblem, parseBuildJson } from '../../shared/build/build-json.ts';
import { createStore } from '../store/create-store.ts';
import { commitWords, type Words } from './open-words.ts';
import { readTextFile } from './text-files.ts';

/** As many as a message box shows without scrolling. */
const MOST_PROBLEMS = 6;

/**
 * Makes a build file of a build in JSON form.
 * @param target where; nothing may be there
 * @param otherwise names another place when the first cannot be written (a read-only stick)
 * @returns where the build file is, or why there is none
 */
export async function importJsonBuild(
  jsonFile: string,
  target: string,
  otherwise?: () => Promise<string>,
): Promise<Result<string, Words>> {
  const name = path.basename(jsonFile);
  const text = await readTextFile(jsonFile);
  if (!text.ok) {
    const detail = `${text.error.detail}. Choose another file.`;
    return err({ message: `“${name}” could not be read.`, detail });
  }
  const content = parseBuildJson(text.value);
  if (!content.ok) {
    return err({ message: `“${name}” could not be taken in as a build.`, detail: problemsInWords(content.error) });
  }
  const made = await create(target, content.value);
  if (made.ok) return ok(target);
  if (made.error.code === 'unwritable' && otherwise !== undefined) {
    const second = await otherwise();
    const again = await create(second, content.value);
    return again.ok ? ok(second) : err(commitWords(again.error, second));
  }
  return err(commitWords(made.error, target));
}

const create = (file: string, { records, issues }: BuildContent) =>
  createStore(file, records, {
    fill: async (db) => {
      for (const { letter, title, note, issuedAt, records: issued } of issues) {
        const content = JSON.stringify(issued);
        // Revision 0: what was issued elsewhere lies before every step of this file's own journal.
        await db
          .insertInto('drawing_issue')
          .values({ letter, title, note, issued_at: issuedAt, revision: 0, content })
          .execute();
      }
    },
  });

function problemsInWords(problems: readonly JsonProblem[]): string {
  const shown = problems.slice(0, MOST_PROBLEMS).map((each) => `At ${each.place}: ${each.sentence} ${each.remedy}`);
  const rest = problems.length - shown.length;
  const tail = rest > 0 ? [`And ${rest} more.`] : [];
  return [...shown, ...tail, 'Nothing was taken in and the file was not changed.'].join('\n');
}
