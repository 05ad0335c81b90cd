import type { Kysely } from 'kysely';

/** One step from a version of the file format to the next. A released migration is never edited again. */
export interface Migration {
  /** The version that it leads to; also the number at the front of its file name. */
  readonly version: number;
  /** What it brings, in a few words. */
  readonly title: string;
  /** Runs inside the one transaction of the whole upgrade. It knows only the tables of its own time. */
  up(db: Kysely<unknown>): Promise<void>;
}
