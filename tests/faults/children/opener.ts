/**
 * Opens and closes builds on request: each line that it reads is a file to open, or `close`. It answers with one line:
 * what came of it.
 */
import { writeSync } from 'node:fs';
import { createInterface } from 'node:readline';
import { openStore } from '../../../src/main/store/open-store.ts';
import type { Store } from '../../../src/main/store/store.ts';

const tell = (line: object) => writeSync(1, `${JSON.stringify(line)}\n`);
let store: Store | undefined;
tell({ ready: true });

for await (const line of createInterface({ input: process.stdin })) {
  if (line === 'close') {
    await store?.close();
    store = undefined;
    tell({ closed: true });
    continue;
  }
  const opened = await openStore(line);
  if (opened.ok) store = opened.value;
  tell(opened.ok ? { readOnly: opened.value.readOnly ?? false } : { error: opened.error });
}
