import { open } from 'node:fs/promises';

/** @returns the beginning of a file, shorter when the file is; see the trap in `open-here.ts`. */
export async function firstBytes(file: string, count: number): Promise<Buffer> {
  const handle = await open(file, 'r');
  try {
    const bytes = Buffer.alloc(count);
    const { bytesRead } = await handle.read(bytes, 0, count, 0);
    return bytes.subarray(0, bytesRead);
  } finally {
    await handle.close();
  }
}
