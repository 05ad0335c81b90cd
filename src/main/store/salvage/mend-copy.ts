import { open, readFile, rm } from 'node:fs/promises';
import { connectStore, migrate } from '../file-format.ts';
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
 * Gives a copy a new first page, and with it a new list of tables: those of a new build. The list says where each table
 * begins, and they begin at the same pages in every build, because all are made in the same order.
 */
export async function replaceTableList(copy: string): Promise<void> {
  const fresh = await newBuild(`${copy}.fresh`);
  const handle = await open(copy, 'r+');
  try {
    const { size } = await handle.stat();
    const end = Math.ceil(size / PAGE);
    const first = fresh.subarray(0, PAGE);
    // The rest of the list goes behind all that is there: what stands in its place here may be anything.
    const children = childPointers(first);
    for (const [i, at] of children.entries()) {
      const child = first.readUInt32BE(at);
      await handle.write(fresh, (child - 1) * PAGE, PAGE, (end + i) * PAGE);
      first.writeUInt32BE(end + i + 1, at);
    }
    first.writeUInt32BE(end + children.length, AT_PAGE_COUNT);
    first.writeUInt32BE(0, AT_FIRST_FREE_PAGE);
    first.writeUInt32BE(0, AT_FREE_PAGES);
    await handle.write(first, 0, PAGE, 0);
  } finally {
    await handle.close();
  }
  // Its log has been played in, or cannot be.
  for (const ending of ['-wal', '-shm']) await rm(copy + ending, { force: true });
}

/** SQLite file format, section 1.6: a page of a table's tree that leads on to others. */
const INTERIOR = 0x05;
/** The first page's own tree begins after the header of the file. */
const AT_TREE = 100;

/** @returns where on the first page the numbers of the pages stand that it leads to; none when it holds all itself. */
function childPointers(first: Buffer): readonly number[] {
  if (first[AT_TREE] !== INTERIOR) return [];
  const cells = first.readUInt16BE(AT_TREE + 3);
  const pointers = Array.from({ length: cells }, (_, i) => first.readUInt16BE(AT_TREE + 12 + 2 * i));
  return [...pointers, AT_TREE + 8];
}

async function newBuild(file: string): Promise<Buffer> {
  const { db } = await connectStore(file, 'create');
  try {
    await migrate(db, migrations);
  } finally {
    await db.destroy();
  }
  const bytes = await readFile(file);
  await rm(file);
  return bytes;
}
