/**
 * Opens a build, makes one edit that touches many pages, tries again once when it is refused, and closes: for seeing what
 * a failing disk makes of it. Prints what came of each step.
 */
import { writeSync } from 'node:fs';
import { openStore } from '../../../src/main/store/open-store.ts';
import type { Part } from '../../../src/shared/build/part.ts';
import type { BuildRecord } from '../../../src/shared/build/records.ts';

const tell = (line: object) => writeSync(1, `${JSON.stringify(line)}\n`);

const opened = await openStore(process.argv[2] ?? '');
if (!opened.ok) {
  tell({ open: opened.error.code });
  process.exit(0);
}
const store = opened.value;
tell({ open: store.readOnly ? 'read-only' : 'ok' });
const loaded = await store.load();
tell({ load: loaded.ok ? 'ok' : loaded.error.code });
if (loaded.ok) {
  const parts = (JSON.parse(loaded.value.records) as BuildRecord[]).filter((r): r is Part => r.kind === 'part');
  const updated = parts.map((part) => [part, { ...part, note: 'n'.repeat(3_000) }] as const);
  for (let attempt = 0; attempt < 2; attempt++) {
    const done = await store.commit(loaded.value.revision, 'edit', { added: [], updated, removed: [] });
    tell({ commit: done.ok ? 'ok' : done.error.code });
    if (done.ok) break;
  }
}
await store.close().then(
  () => tell({ close: 'ok' }),
  (error: unknown) => tell({ close: String(error) }),
);
