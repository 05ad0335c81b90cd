import { mkdtempSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { _electron, type ElectronApplication, type Page } from 'playwright-core';

const here = path.resolve(import.meta.dirname, '..', '..');

export interface Launch {
  /** For the program itself: files to open, `--example=…`. */
  readonly args?: readonly string[];
  readonly env?: Readonly<Record<string, string>>;
  /** A data folder to start with, and to keep; without it a new one is made and taken away again. */
  readonly userData?: string;
  /** The project's folder; to be given where this file was bundled into another place. */
  readonly root?: string;
}

export interface Launched {
  readonly app: ElectronApplication;
  /** The first window, loaded. */
  readonly page: Page;
  readonly userData: string;
  /** Process id of Electron's main process. */
  readonly pid: number;
  /** Ends the program as a user does; it is killed if it does not go. */
  close(): Promise<void>;
  /** Ends the program as a power cut does. */
  kill(): Promise<void>;
}

const START_MS = 60_000;
const CLOSE_MS = 15_000;

/** The superuser cannot use the browser's sandbox. */
const switches = process.platform === 'linux' && process.getuid?.() === 0 ? ['--no-sandbox'] : [];

const isAlive = (pid: number): boolean => {
  try {
    process.kill(pid, 0);
    return true;
  } catch {
    return false;
  }
};

/** The driver starts Electron as the head of a process group of its own; its helpers go with it. */
async function killHard(pid: number): Promise<void> {
  if (!isAlive(pid)) return;
  process.kill(process.platform === 'win32' ? pid : -pid, 'SIGKILL');
  for (let waited = 0; isAlive(pid) && waited < 5_000; waited += 20) await new Promise((go) => setTimeout(go, 20));
}

/**
 * Starts the built program in a real Electron. The display, the runtime and the build are there already: the global
 * set-up of the window tests sees to them. Call `close` or `kill` in a `finally`.
 */
export async function launch({ args = [], env = {}, userData, root = here }: Launch = {}): Promise<Launched> {
  const folder = userData ?? mkdtempSync(path.join(os.tmpdir(), 'waywright-data-'));
  const inherited = Object.entries(process.env).filter((entry): entry is [string, string] => entry[1] !== undefined);
  const app = await _electron.launch({
    args: ['--log-level=3', ...switches, root, ...args],
    cwd: root,
    env: { ...Object.fromEntries(inherited), WAYWRIGHT_USER_DATA: folder, ...env },
    // Otherwise the driver itself decides on light, and the program's own choice has no effect.
    colorScheme: null,
    timeout: START_MS,
  });
  const pid = app.process().pid;
  if (pid === undefined) throw new Error('Electron did not start.');
  const tidy = (): void => {
    if (userData === undefined) rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
  };
  const kill = async (): Promise<void> => {
    await killHard(pid);
    tidy();
  };
  const close = async (): Promise<void> => {
    let giveUp: NodeJS.Timeout | undefined;
    const late = new Promise<void>((go) => {
      giveUp = setTimeout(go, CLOSE_MS);
    });
    try {
      await Promise.race([app.close().catch(() => {}), late]);
    } finally {
      clearTimeout(giveUp);
      await kill();
    }
  };
  try {
    const page = await app.firstWindow({ timeout: START_MS });
    await page.waitForLoadState('domcontentloaded');
    return { app, page, userData: folder, pid, close, kill };
  } catch (error) {
    await kill();
    throw error;
  }
}
