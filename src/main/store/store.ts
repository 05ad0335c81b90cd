import path from 'node:path';
import { assert } from '../../shared/base/assert.ts';
import { err, ok, type Result } from '../../shared/base/result.ts';
import { type BuildDiff, isEmpty } from '../../shared/build/diff.ts';
import type {
  CommitError,
  DrawingIssue,
  OpenError,
  OpenedBuild,
  ReadOnlyReason,
  Saved,
} from '../../shared/ipc/contract.ts';
import { type BackupError, backUpFile } from './backup.ts';
import { assertSound, findFault, findUnwritable, writeDiff } from './document.ts';
import { commitErrorOf, messageOf, openErrorOf } from './failures.ts';
import { type IssueWords, keepIssue, listIssues, readIssueContent } from './issues.ts';
import { appendStep, type JournalEntry, readJournal, readLabels, turnStep } from './journal.ts';
import { type Moment, readMoment } from './moment.ts';
import { writeNewFile } from './new-file.ts';
import { vacuumInto } from './private-copy.ts';
import { raiseRevision, readRevision } from './revision.ts';
import type { StoreDb, StoreExecutor } from './schema.ts';

export type Direction = 'undo' | 'redo';
/** What a step did: the diff to apply to the document in memory. */
export type Stepped = Saved & { readonly diff: BuildDiff; readonly label: string };

/** An open build file. Every method may be called at any time; they take turns. */
export interface Store {
  readonly path: string;
  /** Set when edits are refused, with the reason. */
  readonly readOnly: ReadOnlyReason | undefined;
  /** Reads and validates the whole document. @returns `damaged` when some row is not what a build file holds. */
  load(): Promise<Result<OpenedBuild, OpenError>>;
  /** The first half of {@link load}: the document as it stands on disk. */
  read(): Promise<Result<OpenedBuild, OpenError>>;
  /** The other half: whether every row of what was read is what a build file holds. It lets other work go between. */
  verify(read: OpenedBuild): Promise<Result<undefined, OpenError>>;
  /** Begins what {@link read} does before it is asked for, while its page is still on the way. An edit makes it void. */
  readAhead(): void;
  /** Makes the backup copy soon, if none was begun: when the window has come to rest, or before the first edit. */
  backUpSoon(): void;
  /**
   * Puts an edit on disk, document and journal in one transaction; when it returns ok, the edit outlives a power cut.
   * @param revision the revision that the edit was made on.
   * @throws BugError when the edit breaks a reference or a check; nothing is then changed.
   */
  commit(revision: number, label: string, diff: BuildDiff): Promise<Result<Saved, CommitError>>;
  /** Undoes or redoes one step, also those of earlier sittings. */
  step(direction: Direction, revision: number): Promise<Result<Stepped, CommitError>>;
  /** Issues of the drawings, oldest first. */
  issues(): Promise<readonly DrawingIssue[]>;
  /** Keeps the present state of the drawings under a letter, for good. */
  makeIssue(words: IssueWords): Promise<Result<DrawingIssue, CommitError | { readonly code: 'letter-taken' }>>;
  /** All records as they were when issued, as one JSON array; undefined when there is no such issue. */
  issueContent(letter: string): Promise<string | undefined>;
  /** Every step ever taken, oldest first, with those undone and abandoned. */
  journal(): Promise<readonly JournalEntry[]>;
  /**
   * Settles with the path of the backup copy that the first loading sets going (or {@link backUpSoon}), or with why there is none; with
   * undefined when no copy is wanted. It runs beside the editing and never fails the opening.
   */
  readonly backedUp: Promise<Result<string | undefined, BackupError>>;
  /** Writes a compact copy of this moment to another place. It must not be the file itself. */
  copyTo(place: string, options?: { readonly replace?: boolean }): Promise<Result<undefined, CommitError>>;
  /** Writes the log back into the file and lets go of it. Nothing else may be called after. */
  close(): Promise<void>;
}

export interface StoreParts {
  /** The file that the user opened. */
  readonly path: string;
  /** The file that `db` reads: the same, or a private copy of it. */
  readonly source: string;
  readonly db: StoreDb;
  readonly readOnly: ReadOnlyReason | undefined;
  /** Where to keep a backup copy; undefined for none. A private copy needs none. */
  readonly backups: string | undefined;
  readonly now: () => string;
  /** What was read of it while it was opened, if it was. */
  readonly ahead?: Promise<Moment | undefined> | undefined;
  /** Lets go of lock and private copy. Runs after the database is closed. */
  readonly release: () => Promise<void>;
}

/** Thrown inside a transaction to roll it back with an expected outcome. */
class Refused extends Error {
  readonly refusal: CommitError;
  constructor(refusal: CommitError) {
    super(refusal.code);
    this.refusal = refusal;
  }
}

export function storeOf({ path: file, source, db, readOnly, backups, now, release, ...early }: StoreParts): Store {
  const backup = backupToCome(file, readOnly ? undefined : backups, now);
  const running = new Set<Promise<unknown>>();
  let ahead: Promise<Result<OpenedBuild, OpenError>> | undefined;
  /** One transaction on a given revision, which it raises by one. */
  const change = async <T>(
    revision: number,
    work: (tx: StoreExecutor) => Promise<T>,
  ): Promise<Result<Saved & T, CommitError>> => {
    if (readOnly) return err({ code: 'read-only' });
    ahead = undefined;
    backup.hurry();
    try {
      return ok(
        await db.transaction().execute(async (tx) => {
          const current = await readRevision(tx);
          if (current !== revision) throw new Refused({ code: 'stale-revision', current });
          const result = await work(tx);
          return { ...result, revision: await raiseRevision(tx), ...(await readLabels(tx)) };
        }),
      );
    } catch (error) {
      return err(error instanceof Refused ? error.refusal : await commitErrorOf(error, file));
    }
  };
  const write = async (tx: StoreExecutor, revision: number, diff: BuildDiff): Promise<void> => {
    const written = await writeDiff(tx, diff);
    if (!written.ok) throw new Refused({ code: 'stale-revision', current: revision });
  };

  const read = async (first?: Promise<Moment | undefined>): Promise<Result<OpenedBuild, OpenError>> => {
    try {
      const { document, revision, labels } = (await first) ?? (await db.transaction().execute(readMoment));
      const { dir, name } = path.parse(file);
      return ok({ fileName: name, folder: dir, records: document.json, revision, readOnly, ...labels });
    } catch (error) {
      return err(openErrorOf(error, file));
    }
  };

  const readAhead = (first?: Promise<Moment | undefined>): void => {
    const reading = read(first);
    ahead = reading;
    running.add(reading);
    void reading.finally(() => running.delete(reading));
  };
  if (early.ahead !== undefined) readAhead(early.ahead);

  const store: Store = {
    path: file,
    readOnly,

    async load() {
      const loaded = await store.read();
      if (!loaded.ok) return loaded;
      const sound = await store.verify(loaded.value);
      if (!sound.ok) return sound;
      backup.start();
      return loaded;
    },

    read() {
      const reading = ahead ?? read();
      ahead = undefined;
      return reading;
    },

    async verify({ records }) {
      const damaged = (detail: string) => err({ code: 'damaged', path: file, detail } as const);
      try {
        const fault = await findFault(records);
        return fault === undefined ? ok(undefined) : damaged(fault);
      } catch (error) {
        if (error instanceof SyntaxError) return damaged(messageOf(error));
        throw error;
      }
    },

    readAhead() {
      if (!ahead) readAhead();
    },

    backUpSoon: () => backup.startSoon(),

    async commit(revision, label, diff) {
      assertSound(diff);
      assert(!isEmpty(diff), 'an edit changes something');
      const unwritable = findUnwritable(diff);
      if (unwritable !== undefined) return err({ code: 'unwritable', detail: unwritable });
      return change(revision, async (tx) => {
        await write(tx, revision, diff);
        await appendStep(tx, { state: 'done', label, diff, at: now() });
      });
    },

    step: (direction, revision) =>
      change(revision, async (tx) => {
        const step = await turnStep(tx, direction);
        if (!step) throw new Refused({ code: 'nothing-to-step' });
        await write(tx, revision, step.diff);
        return step;
      }),

    issues: () => listIssues(db),
    issueContent: (letter) => readIssueContent(db, letter),
    async makeIssue(words) {
      if (readOnly) return err({ code: 'read-only' });
      try {
        const issue = await db.transaction().execute((tx) => keepIssue(tx, words, now()));
        return issue ? ok(issue) : err({ code: 'letter-taken' });
      } catch (error) {
        return err(await commitErrorOf(error, file));
      }
    },
    journal: () => readJournal(db),

    backedUp: backup.done,
    async copyTo(place, { replace = false } = {}) {
      if (path.resolve(place) === file) {
        return err({ code: 'unwritable', detail: `${path.basename(file)} is the build itself. Choose another name.` });
      }
      const copying = writeNewFile(path.resolve(place), replace, (beside) => vacuumInto(source, beside));
      running.add(copying);
      return copying.finally(() => running.delete(copying));
    },

    async close() {
      backup.skip();
      await Promise.allSettled([...running, backup.done]);
      try {
        await db.destroy();
      } finally {
        await release();
      }
    },
  };
  return store;
}

/** A copy is a second's work on a large build: the window that has just opened goes first. */
const BACK_UP_AFTER_MS = 2_000;

/** One copy at most, when asked for the first time. */
function backupToCome(file: string, folder: string | undefined, now: () => string) {
  let settle: (result: Result<string | undefined, BackupError>) => void = () => {};
  const done = new Promise<Result<string | undefined, BackupError>>((resolve) => {
    settle = resolve;
  });
  let wanted = folder;
  let waiting: NodeJS.Timeout | undefined;
  if (wanted === undefined) settle(ok(undefined));
  const start = () => {
    clearTimeout(waiting);
    waiting = undefined;
    if (wanted === undefined) return;
    void backUpFile(file, wanted, now()).then(settle);
    wanted = undefined;
  };
  return {
    done,
    start,
    startSoon() {
      if (wanted !== undefined) waiting ??= setTimeout(start, BACK_UP_AFTER_MS);
    },
    /** What was to start soon starts now. */
    hurry() {
      if (waiting !== undefined) start();
    },
    /** From now on none is begun; one that runs is finished. */
    skip() {
      clearTimeout(waiting);
      if (wanted !== undefined) settle(ok(undefined));
      wanted = undefined;
    },
  };
}
