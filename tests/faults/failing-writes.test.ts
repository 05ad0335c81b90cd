import { execFile } from 'node:child_process';
import { existsSync } from 'node:fs';
import { copyFile, rm } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openStore } from '../../src/main/store/open-store.ts';
import type { Part } from '../../src/shared/build/part.ts';
import { byId, okOf, recordsOf, sampleBuild, workbench } from '../store/sample-build.ts';
import { bundleChild, startChild } from './run-child.ts';

/**
 * In the manner of SQLite's own tests (sqlite.org/testing.html, section 3): the first write fails, then the second, and
 * so on until none is left to fail. What is on disk afterwards is the old document or the new one, never between, and
 * the new one if the edit was acknowledged.
 */
const run = promisify(execFile);
const bench = workbench();
const source = fileURLToPath(new URL('./fail-write.c', import.meta.url));

const hasCompiler =
  process.platform === 'linux' &&
  (await run('cc', ['--version']).then(
    () => true,
    () => false,
  ));
if (!hasCompiler) console.warn('Skipped: failing single writes needs Linux and a C compiler (`cc`).');

describe.skipIf(!hasCompiler)('when a write fails', () => {
  let bundle = '';
  let shim = '';
  let pristine = '';
  const before = sampleBuild(6, 3, 4);
  const after = before.map((r) => (r.kind === 'part' ? ({ ...r, note: 'n'.repeat(3_000) } satisfies Part) : r));

  beforeAll(async () => {
    bundle = await bundleChild('edit-once');
    shim = path.join(path.dirname(bundle), 'fail-write.so');
    await run('cc', ['-shared', '-fPIC', '-O1', '-o', shim, source, '-ldl']);
  });
  afterAll(() => rm(path.dirname(bundle), { recursive: true, force: true }));

  /** @returns whether there was a call of that number to fail. */
  async function failAt(call: number, how: string): Promise<boolean> {
    const folder = path.dirname(pristine);
    const file = path.join(folder, `${how}-${call}.wayw`);
    const log = path.join(folder, `${how}-${call}.log`);
    await copyFile(pristine, file);
    const child = startChild(bundle, [file], {
      LD_PRELOAD: shim,
      FAIL_AT: String(call),
      FAIL_HOW: how,
      FAIL_LOG: log,
    });
    const said: Record<string, string> = {};
    for await (const line of child.lines) Object.assign(said, JSON.parse(line));
    await child.gone;
    const where = `${how} at call ${call}: ${JSON.stringify(said)}`;
    const reached = existsSync(log);
    if (how !== 'die' && how !== 'torn') {
      expect(child.process.exitCode, where).toBe(0);
      // An outcome with a name, whatever failed.
      expect(['ok', 'read-only', 'unreadable'], where).toContain(said.open);
      if (said.commit) expect(['ok', 'disk-full', 'unwritable', 'read-only'], where).toContain(said.commit);
      // A failure that passes leaves a store that works: the second attempt succeeded.
      if (how !== 'full' && said.open === 'ok') expect(said.commit, where).toBe('ok');
    }
    const opened = await openStore(file);
    const store = okOf(opened);
    expect(store.readOnly, where).toBeUndefined();
    const found = JSON.stringify(byId(await recordsOf(store)));
    const [old, new_] = [JSON.stringify(byId(before)), JSON.stringify(byId(after))];
    if (said.commit === 'ok') expect(found === new_, where).toBe(true);
    else expect(found === old || found === new_, where).toBe(true);
    await store.close();
    return reached;
  }

  /** One way of failing at every call, the others at every fourth; with WAYWRIGHT_SOAK set, all at every call. */
  const step = (how: string): number => (how === 'eio' || process.env.WAYWRIGHT_SOAK ? 1 : 4);

  test.each(['eio', 'enospc', 'full', 'short', 'die', 'torn'])('%s', { timeout: 600_000 }, async (how) => {
    pristine = await bench.file(before);
    let call = 1;
    let reached = true;
    while (reached) {
      // Two at a time: there are two processors almost everywhere.
      [reached = false] = (await Promise.all([failAt(call, how), failAt(call + step(how), how)])).sort();
      call += 2 * step(how);
    }
    // Opening, an edit and closing are dozens of calls; far fewer would mean that they were not seen.
    expect(call).toBeGreaterThan(15);
  });
});
