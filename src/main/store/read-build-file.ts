import { readFile, stat } from 'node:fs/promises';
import path from 'node:path';
import { err, ok, type Result } from '../../shared/base/result.ts';
import { type BuildContent, type JsonProblem, parseBuildJson } from '../../shared/build/build-json.ts';
import type { BuildRecord } from '../../shared/build/records.ts';
import type { OpenError } from '../../shared/ipc/contract.ts';
import { codeOf, openErrorOf } from './failures.ts';
import { firstBytes } from './first-bytes.ts';
import { MAX_BUILD_BYTES } from './inspect-file.ts';
import { isOpenHere } from './open-here.ts';
import { openStore } from './open-store.ts';

/** Why a file could not be read as a build: as a build file, or, when it is text, as the JSON form. */
export type ReadError =
  | OpenError
  | { readonly code: 'json'; readonly path: string; readonly problems: readonly JsonProblem[] };

/**
 * Reads a build for a moment: a build file, or its JSON form (told apart by what is in it, not by its name). It takes no
 * lock, makes no backup copy and leaves nothing behind; a build that is being edited is read as it was last saved.
 */
export async function readBuildFile(file: string): Promise<Result<BuildContent, ReadError>> {
  const full = path.resolve(file);
  try {
    if (!(await isOpenHere(full)) && (await isText(full))) {
      const parsed = parseBuildJson(await readFile(full, 'utf8'));
      return parsed.ok ? parsed : err({ code: 'json', path: full, problems: parsed.error });
    }
  } catch (error) {
    if (codeOf(error) !== 'EISDIR') return err(openErrorOf(error, full));
  }
  const opened = await openStore(full, { readOnly: true });
  if (!opened.ok) return opened;
  const store = opened.value;
  try {
    const loaded = await store.load();
    if (!loaded.ok) return loaded;
    const issues: BuildContent['issues'][number][] = [];
    for (const { letter, title, note, issuedAt } of await store.issues()) {
      const records = JSON.parse((await store.issueContent(letter)) ?? '[]') as BuildRecord[];
      issues.push({ letter, title, note, issuedAt, records });
    }
    return ok({ records: JSON.parse(loaded.value.records) as BuildRecord[], issues });
  } finally {
    await store.close();
  }
}

/** JSON begins with a brace or a bracket, after a byte order mark and blanks at most. */
async function isText(file: string): Promise<boolean> {
  const { size } = await stat(file);
  if (size > MAX_BUILD_BYTES) return false;
  const start = await firstBytes(file, 64);
  return /^\uFEFF?\s*[{[]/.test(start.toString('utf8'));
}
