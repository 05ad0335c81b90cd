import { access, constants, stat } from 'node:fs/promises';
import path from 'node:path';
import { err, ok, type Result } from '../../shared/base/result.ts';
import type { OpenError } from '../../shared/ipc/contract.ts';
import { openErrorOf } from './failures.ts';
import { APPLICATION_ID } from './file-format.ts';
import { firstBytes } from './first-bytes.ts';

/** A build of 100 000 dimensions with a long history stays far below. */
export const MAX_BUILD_BYTES = 512 * 1024 * 1024;

export interface Inspected {
  /** Whether the file and its folder may be written. */
  readonly writable: boolean;
  /** Whether a log of an earlier sitting lies beside it, not yet written back. */
  readonly hasLog: boolean;
  /** Whether it is in the format whose writes go to a log first, as every build that was closed as it should be. */
  readonly hasLogFormat: boolean;
}

/**
 * Looks at a file from outside, without SQLite and without changing anything: is it a build at all, of a version we
 * know, and may we write it?
 * @param newest the newest version that the program knows.
 */
export async function inspectFile(file: string, newest: number): Promise<Result<Inspected, OpenError>> {
  try {
    const found = await stat(file);
    if (!found.isFile())
      return err({ code: 'unreadable', path: file, detail: 'It is a folder or a device, not a file.' });
    if (found.size > MAX_BUILD_BYTES) {
      const detail = `It is larger than ${MAX_BUILD_BYTES / 1024 / 1024} MB, more than any build needs.`;
      return err({ code: 'unreadable', path: file, detail });
    }
    const fault = await inspectHeader(file, newest);
    if (fault) return err(fault);
    const log = await stat(`${file}-wal`).catch(() => undefined);
    const hasLog = (log?.size ?? 0) > 0;
    // With a log there may be half a page at the end that the log holds whole.
    if (!hasLog && found.size % PAGE_BYTES !== 0)
      return err({ code: 'damaged', path: file, detail: 'The file is cut off.' });
    const writable = (await isWritable(file)) && (await isWritable(path.dirname(file)));
    const [version] = (await firstBytes(file, AT_WRITE_VERSION + 1)).subarray(AT_WRITE_VERSION);
    return ok({ writable, hasLog, hasLogFormat: version === LOG_FORMAT });
  } catch (error) {
    return err(openErrorOf(error, file));
  }
}

/** The fields of the header that matter here: SQLite file format, section 1.3 (sqlite.org/fileformat2.html). */
const HEADER_BYTES = 100;
/** The smallest page there is; every page size is a multiple of it. */
const PAGE_BYTES = 512;
const MAGIC = 'SQLite format 3\0';
const AT_WRITE_VERSION = 18;
const LOG_FORMAT = 2;
const AT_VERSION = 60;
const AT_APPLICATION_ID = 68;

async function inspectHeader(file: string, newest: number): Promise<OpenError | undefined> {
  const start = await firstBytes(file, HEADER_BYTES);
  if (start.length === 0) return { code: 'not-a-build', path: file };
  const header = Buffer.concat([start, Buffer.alloc(HEADER_BYTES - start.length)]);
  const isDatabase = header.toString('latin1', 0, MAGIC.length) === MAGIC;
  const isOurs = header.readUInt32BE(AT_APPLICATION_ID) === APPLICATION_ID;
  if (isDatabase && isOurs) {
    const version = header.readUInt32BE(AT_VERSION);
    return version > newest ? { code: 'newer-version', path: file, version, newest } : undefined;
  }
  // The start may be gone while what follows is a build that can be recovered.
  if (isDatabase || !(isOurs || (await holdsTraces(file)))) return { code: 'not-a-build', path: file };
  return { code: 'damaged', path: file, detail: 'The beginning of the file is destroyed.' };
}

/** Every build has the one row of settings, near its beginning. */
const TRACE = 'settings:build';
const TRACE_BYTES = 1024 * 1024;

async function holdsTraces(file: string): Promise<boolean> {
  const start = await firstBytes(file, TRACE_BYTES);
  // A JSON build holds the same words, but no zero bytes.
  return start.includes(TRACE) && start.includes(0);
}

const isWritable = (place: string): Promise<boolean> =>
  access(place, constants.W_OK).then(
    () => true,
    () => false,
  );
