import { open, rm } from 'node:fs/promises';
import { connectStore, migrate } from '../file-format.ts';
import { firstBytes } from '../first-bytes.ts';
import { migrations } from '../migrations/registry.ts';

/** SQLite file format (sqlite.org/fileformat2.html), section 1.3: offsets into the header. */
const AT_PAGE_SIZE = 16;
const AT_PAGE_COUNT = 28;
const AT_FIRST_FREE_PAGE = 32;
const AT_FREE_PAGES = 36;
/** Page size of every build: the default of our SQLite. */
const PAGE = 4096;

/** Fills up a copy that was cut off, so that SQLite does not refuse the part that is there. */
export async function padCopy(copy: string): Promise<void> {
  const handle = await open(copy, 'r+');
  try {
    const header = Buffer.alloc(100);
    await handle.read(header, 0, header.length, 0);
    const { size } = await handle.stat();
    const declared = header.readUInt16BE(AT_PAGE_SIZE) === PAGE ? header.readUInt32BE(AT_PAGE_COUNT) * PAGE : 0;
    const wanted = Math.max(Math.ceil(size / PAGE) * PAGE, declared);
    // A destroyed header may declare anything; what was really cut off is never more than the file held.
    if (wanted > size && wanted <= Math.max(size * 8, 64 * PAGE)) await handle.truncate(wanted);
  } finally {
    await handle.close();
  }
}

/**
 * Gives a copy a new first page: the one that a new build has. It lists the tables and where each begins, and they begin
 * at the same pages in every build, because all are made in the same order.
 */
export async function replaceFirstPage(copy: string): Promise<void> {
  const page = await newFirstPage(copy);
  const handle = await open(copy, 'r+');
  try {
    const { size } = await handle.stat();
    page.writeUInt32BE(Math.ceil(size / PAGE), AT_PAGE_COUNT);
    page.writeUInt32BE(0, AT_FIRST_FREE_PAGE);
    page.writeUInt32BE(0, AT_FREE_PAGES);
    await handle.write(page, 0, PAGE, 0);
  } finally {
    await handle.close();
  }
  // Its log has been played in, or cannot be.
  for (const ending of ['-wal', '-shm']) await rm(copy + ending, { force: true });
}

async function newFirstPage(copy: string): Promise<Buffer> {
  const fresh = `${copy}.fresh`;
  const { db } = await connectStore(fresh, 'create');
  try {
    await migrate(db, migrations);
  } finally {
    await db.destroy();
  }
  const page = await firstBytes(fresh, PAGE);
  await rm(fresh);
  return page;
}
