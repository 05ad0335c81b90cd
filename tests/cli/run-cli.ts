import { spawn } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll } from 'vitest';

const entry = fileURLToPath(new URL('../../out/cli/main.js', import.meta.url));

export const example = (state: 'as-first-drawn' | 'as-corrected'): string =>
  fileURLToPath(new URL(`../../resources/examples/bench-filing-machine-${state}.json`, import.meta.url));

export interface Ended {
  readonly status: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

/** Runs the bundled command line as a process of its own. */
export function cli(args: readonly string[], stdin = ''): Promise<Ended> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [entry, ...args], { stdio: 'pipe' });
    let stdout = '';
    let stderr = '';
    child.stdout.setEncoding('utf8').on('data', (text: string) => {
      stdout += text;
    });
    child.stderr.setEncoding('utf8').on('data', (text: string) => {
      stderr += text;
    });
    child.on('error', reject);
    child.on('close', (status) => resolve({ status, stdout, stderr }));
    // One that does not read its input may end before all of it is written.
    child.stdin.on('error', () => {});
    child.stdin.end(stdin);
  });
}

/** A folder of their own for the tests of a file; `inFolder('a.json')` is a path in it. */
export function temporaryFolder(): (name: string) => string {
  let folder = '';
  beforeAll(async () => {
    folder = await mkdtemp(path.join(tmpdir(), 'waywright-cli-'));
  });
  afterAll(() => rm(folder, { recursive: true, force: true }));
  return (name) => path.join(folder, name);
}
