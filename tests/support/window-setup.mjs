import { spawn } from 'node:child_process';
import { ensureApp } from '../../scripts/steps/build.mjs';
import { ensureDebianPackages, packageSets } from '../../scripts/steps/debian-packages.mjs';
import { hasDisplay } from '../../scripts/steps/display.mjs';
import { ensureElectronRuntime } from '../../scripts/steps/electron-runtime.mjs';

/** Starts a virtual screen on a free number and names it in DISPLAY. @returns what ends it */
async function startVirtualScreen() {
  const screen = spawn('Xvfb', ['-displayfd', '3', '-screen', '0', '1920x1080x24', '-nolisten', 'tcp'], {
    stdio: ['ignore', 'ignore', 'ignore', 'pipe'],
  });
  const number = await new Promise((resolve, reject) => {
    let text = '';
    screen.stdio[3].on('data', (piece) => {
      text += piece;
      if (text.includes('\n')) resolve(text.trim());
    });
    screen.once('error', reject);
    screen.once('exit', (code) => reject(new Error(`Xvfb ended with ${code}`)));
  });
  process.env.DISPLAY = `:${number}`;
  return () => {
    delete process.env.DISPLAY;
    screen.kill();
  };
}

/** Before the window tests, whichever way they are run: the runtime, the built program, a display. */
export default async function setUp() {
  await ensureDebianPackages(packageSets.forWindow);
  const runtime = ensureElectronRuntime();
  if (runtime !== undefined) process.env.ELECTRON_OVERRIDE_DIST_PATH = runtime;
  await ensureApp();
  return hasDisplay() ? undefined : startVirtualScreen();
}
