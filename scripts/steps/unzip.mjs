import { createHash } from 'node:crypto';
import { closeSync, mkdirSync, openSync, readSync, statSync, symlinkSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { inflateRawSync } from 'node:zlib';

const END_OF_DIRECTORY = 0x06054b50;
const DIRECTORY_ENTRY = 0x02014b50;
const LOCAL_ENTRY = 0x04034b50;
const END_SIZE = 22;
const SYMLINK = 0o120000;

/**
 * Unpacks a zip archive of less than 4 GiB, keeping file modes and symbolic links (the plain-Node world has no unzip).
 * Layout after the ZIP application note, sections 4.3.7, 4.3.12 and 4.3.16.
 * @param {string} archive
 * @param {string} folder made when absent
 * @param {(name: string) => string | undefined} place where an entry goes inside the folder; undefined leaves it out
 */
export function unzip(archive, folder, place) {
  const size = statSync(archive).size;
  const file = openSync(archive, 'r');
  /** @param {number} offset @param {number} length */
  const bytes = (offset, length) => {
    const buffer = Buffer.alloc(length);
    if (readSync(file, buffer, 0, length, offset) !== length) throw new Error(`${archive} ends too early`);
    return buffer;
  };
  try {
    const tail = bytes(Math.max(0, size - 65_557), Math.min(size, 65_557));
    let at = tail.length - END_SIZE;
    while (at >= 0 && tail.readUInt32LE(at) !== END_OF_DIRECTORY) at--;
    if (at < 0) throw new Error(`${archive} is not a zip archive`);
    const directory = bytes(tail.readUInt32LE(at + 16), tail.readUInt32LE(at + 12));
    for (let p = 0; p < directory.length && directory.readUInt32LE(p) === DIRECTORY_ENTRY; ) {
      const nameLength = directory.readUInt16LE(p + 28);
      const entry = {
        method: directory.readUInt16LE(p + 10),
        packed: directory.readUInt32LE(p + 20),
        mode: directory.readUInt32LE(p + 38) >>> 16,
        offset: directory.readUInt32LE(p + 42),
        name: directory.toString('utf8', p + 46, p + 46 + nameLength),
      };
      p += 46 + nameLength + directory.readUInt16LE(p + 30) + directory.readUInt16LE(p + 32);
      const name = place(entry.name);
      if (name === undefined || entry.name.endsWith('/')) continue;
      const target = path.resolve(folder, name);
      if (!target.startsWith(path.resolve(folder) + path.sep)) throw new Error(`${archive} reaches outside: ${name}`);
      const local = bytes(entry.offset, 30);
      if (local.readUInt32LE(0) !== LOCAL_ENTRY) throw new Error(`${archive} is damaged at ${entry.name}`);
      const start = entry.offset + 30 + local.readUInt16LE(26) + local.readUInt16LE(28);
      const packed = bytes(start, entry.packed);
      const content = entry.method === 0 ? packed : inflateRawSync(packed);
      mkdirSync(path.dirname(target), { recursive: true });
      if ((entry.mode & 0o170000) === SYMLINK) symlinkSync(content.toString('utf8'), target);
      else writeFileSync(target, content, { mode: entry.mode & 0o777 || 0o644 });
    }
  } finally {
    closeSync(file);
  }
}

/** @param {string} file @returns the digest in the form that lock files use, e.g. `sha512-…` */
export function integrityOf(file) {
  const hash = createHash('sha512');
  const descriptor = openSync(file, 'r');
  const buffer = Buffer.alloc(1 << 20);
  for (let read = readSync(descriptor, buffer); read > 0; read = readSync(descriptor, buffer))
    hash.update(buffer.subarray(0, read));
  closeSync(descriptor);
  return `sha512-${hash.digest('base64')}`;
}
