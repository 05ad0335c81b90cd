import { existsSync } from 'node:fs';
import path from 'node:path';
import { ensureApp } from './steps/build.mjs';
import { ensureDebianPackages, packageSets } from './steps/debian-packages.mjs';
import { electronSwitches, hasDisplay } from './steps/display.mjs';
import { ensureElectronRuntime } from './steps/electron-runtime.mjs';
import { ensureNodePackages } from './steps/node-packages.mjs';
import { inRoot, root } from './steps/place.mjs';
import { main, run, say } from './steps/run.mjs';

const exampleFile = () => inRoot('resources', 'examples', 'bench-filing-machine-as-first-drawn.json');

/** Without a display: what the window would show first, in words. */
async function showInTerminal() {
  say('There is no display here, so no window can be opened. What follows is the check of the example build;');
  say('with a display, `npm start` opens it in the window. Other files: npm run -s cli -- check FILE');
  say('');
  if (!existsSync(exampleFile())) {
    say('The example build is not there yet.');
    return 0;
  }
  const status = await run(process.execPath, [inRoot('scripts', 'cli.mjs'), 'check', exampleFile()]);
  // 1 means that the build has stops, which is what the example is for.
  return status === 1 ? 0 : status;
}

/** @param {readonly string[]} args */
async function openWindow(args) {
  const runtime = ensureElectronRuntime();
  await ensureApp();
  const { default: electron } =
    runtime === undefined ? await import('electron') : { default: path.join(runtime, 'electron') };
  const wanted =
    args.length > 0 ? args.map((arg) => (arg.startsWith('-') ? arg : path.resolve(arg))) : ['--example=as-first-drawn'];
  return run(String(electron), [...electronSwitches(), root, ...wanted]);
}

// `npm start [-- FILE]`: everything from a fresh clone to the open window.
main(async () => {
  const display = hasDisplay();
  await ensureDebianPackages(
    display ? [...packageSets.forPackages, ...packageSets.forWindow] : packageSets.forPackages,
  );
  await ensureNodePackages();
  return display ? openWindow(process.argv.slice(2)) : showInTerminal();
});
