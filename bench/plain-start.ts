import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { type Browser, chromium, type Page } from 'playwright-core';

/** A program that was started as a user does it: no driver holds it up. */
export interface Running {
  /** ms since 1970, just before its process was made. */
  readonly begun: number;
  /** Looks into it from outside, once it has come to rest. */
  attach(): Promise<Browser>;
  /** What it wrote. */
  output(): string;
  readonly ended: Promise<void>;
  close(): Promise<void>;
}

const PATIENCE_MS = 60_000;
const CLOSE_MS = 10_000;

const electron = (): string => {
  const chosen = process.env.ELECTRON_OVERRIDE_DIST_PATH;
  if (chosen !== undefined) return path.join(chosen, process.platform === 'win32' ? 'electron.exe' : 'electron');
  return String(createRequire(path.join(process.cwd(), 'package.json'))('electron'));
};

/** The superuser cannot use the browser's sandbox. */
const switches = process.platform === 'linux' && process.getuid?.() === 0 ? ['--no-sandbox'] : [];

/**
 * Starts Electron on a program. Its pages can be looked into over a port of this machine; nothing listens in it until
 * {@link Running.attach}, so nothing is slower than without.
 * @param args the program's folder and what it is to open
 */
export function startPlain(args: readonly string[], userData: string): Running {
  const begun = Date.now();
  const child: ChildProcess = spawn(electron(), ['--log-level=3', '--remote-debugging-port=0', ...switches, ...args], {
    env: { ...process.env, WAYWRIGHT_USER_DATA: userData },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let text = '';
  const ended = new Promise<void>((go) => {
    child.once('exit', () => go());
  });
  const port = new Promise<string>((resolve, reject) => {
    const hear = (piece: Buffer): void => {
      text += piece.toString();
      const address = /DevTools listening on (ws:\S+)/.exec(text)?.[1];
      if (address !== undefined) resolve(address);
    };
    child.stdout?.on('data', hear);
    child.stderr?.on('data', hear);
    void ended.then(() => reject(new Error(`Electron ended:\n${text}`)));
  });
  port.catch(() => {});
  return {
    begun,
    attach: async () => chromium.connectOverCDP(await port, { timeout: PATIENCE_MS }),
    output: () => text,
    ended,
    async close() {
      child.kill('SIGTERM');
      const late = setTimeout(() => child.kill('SIGKILL'), CLOSE_MS);
      await ended;
      clearTimeout(late);
    },
  };
}

export const pagesOf = (browser: Browser): readonly Page[] => browser.contexts().flatMap((context) => context.pages());

/**
 * A program of one window with one word in it: what Electron itself takes on this machine, whatever the program.
 * @param folder where to put it
 * @param graphics whether it may look for a graphics device; ours does not where there is none
 */
export function writeEmptyProgram(folder: string, graphics: boolean): string {
  const place = path.join(folder, graphics ? 'empty' : 'empty-plain');
  if (existsSync(place)) return place;
  mkdirSync(place);
  writeFileSync(path.join(place, 'package.json'), JSON.stringify({ name: 'empty', main: 'main.mjs', type: 'module' }));
  writeFileSync(
    path.join(place, 'main.mjs'),
    `import { app, BrowserWindow } from 'electron';
app.setPath('userData', process.env.WAYWRIGHT_USER_DATA);
${graphics ? '' : 'app.disableHardwareAcceleration();'}
void app.whenReady().then(() => {
  const window = new BrowserWindow({ width: 1440, height: 900, show: false, webPreferences: { sandbox: true } });
  window.once('ready-to-show', () => window.show());
  window.webContents.once('did-finish-load', async () => {
    const painted = await window.webContents.executeJavaScript(
      'new Promise((go) => requestAnimationFrame(() => setTimeout(() => go(Date.now()))))',
    );
    console.log('painted ' + painted);
    app.exit(0);
  });
  void window.loadURL('data:text/html,<p>empty</p>');
});
`,
  );
  return place;
}
