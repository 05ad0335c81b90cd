import { sql } from 'kysely';
import type { HistoryLabels } from '../../shared/ipc/contract.ts';
import { type Document, readDocument } from './document.ts';
import { connectStore } from './file-format.ts';
import { readLabels } from './journal.ts';
import { readRevision } from './revision.ts';
import type { StoreExecutor } from './schema.ts';

/** A build as it stood on disk at one moment. */
export interface Moment {
  readonly document: Document;
  readonly revision: number;
  readonly labels: HistoryLabels;
}

/** To be called within a transaction, so that all of it is of the same moment. */
export const readMoment = async (db: StoreExecutor): Promise<Moment> => ({
  document: await readDocument(db),
  revision: await readRevision(db),
  labels: await readLabels(db),
});

/**
 * Reads a build over a connection of its own, while another one still looks whether the file is sound: what it reads is
 * good for nothing until that one has said so, and no one may write meanwhile.
 * @returns undefined when it cannot be read.
 */
export async function readBeside(file: string): Promise<Moment | undefined> {
  try {
    const { db } = await connectStore(file, 'read');
    try {
      await sql`begin`.execute(db);
      return await readMoment(db);
    } finally {
      await db.destroy();
    }
  } catch {
    return undefined;
  }
}
