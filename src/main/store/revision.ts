import type { StoreExecutor } from './schema.ts';

export async function readRevision(db: StoreExecutor): Promise<number> {
  const { revision } = await db.selectFrom('meta').select('revision').where('id', '=', 1).executeTakeFirstOrThrow();
  return revision;
}

/** @returns the new revision. */
export async function raiseRevision(db: StoreExecutor): Promise<number> {
  await db
    .updateTable('meta')
    .set((eb) => ({ revision: eb('revision', '+', 1) }))
    .where('id', '=', 1)
    .execute();
  return readRevision(db);
}
