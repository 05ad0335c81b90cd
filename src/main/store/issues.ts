import type { DrawingIssue } from '../../shared/ipc/contract.ts';
import { readDocument } from './document.ts';
import { readRevision } from './revision.ts';
import type { StoreExecutor } from './schema.ts';

/** What the user says of an issue. */
export interface IssueWords {
  readonly letter: string;
  readonly title: string;
  readonly note: string;
}

/** All issues, oldest first, without their contents. */
export async function listIssues(db: StoreExecutor): Promise<readonly DrawingIssue[]> {
  const rows = await db
    .selectFrom('drawing_issue')
    .select(['letter', 'title', 'note', 'issued_at', 'revision'])
    .orderBy('issued_at')
    .orderBy('letter')
    .execute();
  return rows.map(({ issued_at, ...row }) => ({ ...row, issuedAt: issued_at }));
}

/** @returns all records as they were when issued, as one JSON array; undefined when there is no such issue. */
export async function readIssueContent(db: StoreExecutor, letter: string): Promise<string | undefined> {
  const row = await db.selectFrom('drawing_issue').select('content').where('letter', '=', letter).executeTakeFirst();
  return row?.content;
}

/** Keeps the present state under a letter. @returns undefined when the letter, upper or lower case alike, is taken. */
export async function keepIssue(
  db: StoreExecutor,
  words: IssueWords,
  issuedAt: string,
): Promise<DrawingIssue | undefined> {
  const taken = (await listIssues(db)).some((issue) => issue.letter.toLowerCase() === words.letter.toLowerCase());
  if (taken) return undefined;
  const revision = await readRevision(db);
  const { json } = await readDocument(db);
  await db
    .insertInto('drawing_issue')
    .values({
      letter: words.letter,
      title: words.title,
      note: words.note,
      issued_at: issuedAt,
      revision,
      content: json,
    })
    .execute();
  return { letter: words.letter, title: words.title, note: words.note, issuedAt, revision };
}
