import { open } from 'node:fs/promises';
import { err, ok, type Result } from '../../shared/base/result.ts';
import { troubleInWords } from './disk-trouble.ts';

/** Far above any table or build written by hand; below what a window can take in one message without stalling. */
export const LARGEST_TEXT_BYTES = 64 * 1024 * 1024;

export type TextTrouble = { readonly code: 'too-large' | 'unreadable'; readonly detail: string };

/** Reads a text that someone else's program wrote: its size is bounded and its encoding recognised. */
export async function readTextFile(file: string): Promise<Result<string, TextTrouble>> {
  try {
    const handle = await open(file, 'r');
    try {
      const { size } = await handle.stat();
      if (size > LARGEST_TEXT_BYTES) {
        const mb = (bytes: number) => Math.round(bytes / 1024 / 1024);
        const detail = `${file} has ${mb(size)} MB; up to ${mb(LARGEST_TEXT_BYTES)} MB can be read.`;
        return err({ code: 'too-large', detail });
      }
      return ok(decodeText(await handle.readFile()));
    } finally {
      await handle.close();
    }
  } catch (error) {
    return err({ code: 'unreadable', detail: `${file}: ${troubleInWords(error)}` });
  }
}

/**
 * Recognises UTF-8 and UTF-16 (by byte order mark), and takes text that is not UTF-8 as Windows-1252, which older
 * spreadsheets write. No marks remain.
 */
export function decodeText(bytes: Uint8Array): string {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return new TextDecoder('utf-16le').decode(bytes);
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return new TextDecoder('utf-16be').decode(bytes);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes);
  }
}
