import { strFromU8, unzipSync } from 'fflate';
import { ok, type Result } from '../../../base/result.ts';
import { LARGEST_FILE_BYTES, refuse, type SolidProblem } from '../mesh-file.ts';

const MOST_ENTRIES = 2_000;
const DAMAGED = 'Copy or write the file again; it is damaged.';

/** The texts of a package, by their paths in lower case with a stroke before them: paths differ by more than case. */
export type PackageTexts = ReadonlyMap<string, string>;

/**
 * Unpacks the texts that say where a package keeps its model, and the models.
 *
 * Sizes are looked at before anything is unpacked, and each text is unpacked into exactly the room that it claims, so a
 * small file cannot fill the memory; its check sum then says whether the claim was true.
 */
export function unpackModels(bytes: Uint8Array): Result<PackageTexts, SolidProblem> {
  const sums = checkSums(bytes);
  if (sums === undefined) {
    return refuse('broken-off', '', 'The end of the package is missing, with the list of what is in it.', DAMAGED);
  }
  try {
    let entries = 0;
    let size = 0;
    const isWanted = (name: string) => /\.(?:model|rels)$/i.test(name);
    unzipSync(bytes, {
      filter({ name, originalSize }) {
        entries++;
        if (isWanted(name)) size += originalSize;
        return false;
      },
    });
    if (entries > MOST_ENTRIES || size > LARGEST_FILE_BYTES) {
      const mb = (count: number) => Math.ceil(count / 1024 / 1024);
      return refuse(
        'too-large',
        '',
        `Unpacked, the package would take ${mb(size)} MB in ${entries} files; up to ${mb(LARGEST_FILE_BYTES)} MB in ${MOST_ENTRIES} files are taken.`,
        'Write it again with a coarser setting.',
      );
    }
    const unpacked = unzipSync(bytes, { filter: ({ name }) => isWanted(name) });
    const texts = new Map<string, string>();
    for (const [name, content] of Object.entries(unpacked)) {
      const sum = sums.get(name);
      if (sum !== undefined && sum !== crc32(content)) {
        return refuse('unreadable', name, 'The content does not agree with its check sum.', DAMAGED);
      }
      texts.set(`/${name.replace(/^\/+/, '').toLowerCase()}`, textOf(content));
    }
    return ok(texts);
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    return refuse('unreadable', '', `The package cannot be unpacked (${reason}).`, DAMAGED);
  }
}

/** UTF-8, or UTF-16 with its mark: the two that a model may be written in (3MF Core Specification 1.3, section 2.3). */
function textOf(bytes: Uint8Array): string {
  const isLittle = bytes[0] === 0xff && bytes[1] === 0xfe;
  const isBig = bytes[0] === 0xfe && bytes[1] === 0xff;
  if (!isLittle && !isBig) return strFromU8(bytes);
  const units = new Uint16Array((bytes.length >> 1) - 1);
  for (let i = 0; i < units.length; i++) {
    const [first, second] = [bytes[2 * i + 2]!, bytes[2 * i + 3]!];
    units[i] = isLittle ? first | (second << 8) : (first << 8) | second;
  }
  const pieces: string[] = [];
  for (let i = 0; i < units.length; i += 8192) pieces.push(String.fromCharCode(...units.subarray(i, i + 8192)));
  return pieces.join('');
}

const END_MARK = 0x06054b50;
const ENTRY_MARK = 0x02014b50;
const END_BYTES = 22;
const LONGEST_REMARK = 65_535;

/** The check sums that a package lists, by name (PKWARE's note on ZIP files, sections 4.3.12 and 4.3.16); undefined when it has no list. */
function checkSums(bytes: Uint8Array): ReadonlyMap<string, number> | undefined {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  let end = bytes.length - END_BYTES;
  const last = Math.max(0, end - LONGEST_REMARK);
  while (end >= last && view.getUint32(end, true) !== END_MARK) end--;
  if (end < last || end < 0) return undefined;
  const sums = new Map<string, number>();
  let at = view.getUint32(end + 16, true);
  while (at + 46 <= bytes.length && view.getUint32(at, true) === ENTRY_MARK) {
    const name = strFromU8(bytes.subarray(at + 46, at + 46 + view.getUint16(at + 28, true)));
    sums.set(name, view.getUint32(at + 16, true));
    at += 46 + view.getUint16(at + 28, true) + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
  }
  return sums;
}

const CRC_STEPS = Uint32Array.from({ length: 256 }, (_, byte) => {
  let rest = byte;
  for (let bit = 0; bit < 8; bit++) rest = rest & 1 ? (rest >>> 1) ^ 0xedb88320 : rest >>> 1;
  return rest;
});

/** CRC-32 as ZIP files keep it (ITU-T V.42, section 8.1.1.6.2). */
function crc32(bytes: Uint8Array): number {
  let rest = 0xffffffff;
  for (const byte of bytes) rest = (rest >>> 8) ^ CRC_STEPS[(rest ^ byte) & 255]!;
  return (rest ^ 0xffffffff) >>> 0;
}
