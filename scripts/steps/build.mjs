import { existsSync } from 'node:fs';
import { inRoot } from './place.mjs';
import { run, SetupError, say } from './run.mjs';
import { buildWhenStale, isFresh } from './stale.mjs';

const cliSources = ['src/shared', 'src/main', 'package.json', 'package-lock.json', 'scripts/steps/bundle-cli.mjs'];
const appSources = ['src', 'resources', 'package.json', 'package-lock.json', 'electron.vite.config.ts'];

export const cliEntry = () => inRoot('out', 'cli', 'main.js');
export const cliIsFresh = () => isFresh('out/cli', cliSources);

/** Builds the command line into out/cli when a source changed. Says nothing on stdout. */
export async function ensureCli() {
  if (!existsSync(inRoot('src', 'main', 'cli', 'main.ts')))
    throw new SetupError('There is no command line in src/main/cli.');
  await buildWhenStale('out/cli', cliSources, async () => {
    // In a process of its own: the bundler's memory and exit handlers are not the command's business.
    if ((await run(process.execPath, [inRoot('scripts', 'steps', 'bundle-cli.mjs')], { quiet: true })) !== 0) {
      throw new SetupError('The command line could not be built. The lines above say why.');
    }
  });
}

/** Builds the window's program into out/main, out/preload and out/renderer when a source changed. */
export async function ensureApp() {
  await buildWhenStale('out/main', appSources, async () => {
    say('Building the program …');
    const command = inRoot('node_modules', 'electron-vite', 'bin', 'electron-vite.js');
    if ((await run(process.execPath, [command, 'build', '--logLevel', 'warn'], { quiet: true })) !== 0) {
      throw new SetupError('The program could not be built. The lines above say why.');
    }
  });
}
