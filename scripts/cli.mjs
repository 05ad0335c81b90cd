import { pathToFileURL } from 'node:url';
import { cliEntry, cliIsFresh, ensureCli } from './steps/build.mjs';
import { main } from './steps/run.mjs';

// `npm run -s cli -- check FILE`: the command line from the sources. stdout is the command's alone; what the building
// says goes to stderr. The command itself sets the exit status.
main(async () => {
  if (!cliIsFresh()) {
    const { ensureNodePackages } = await import('./steps/node-packages.mjs');
    await ensureNodePackages();
    await ensureCli();
  }
  // npm runs scripts in the project's folder; the files named on the line are meant from where it was typed.
  const { INIT_CWD: typedIn, npm_lifecycle_event: script } = process.env;
  if (script === 'cli' && typedIn !== undefined) process.chdir(typedIn);
  await import(pathToFileURL(cliEntry()).href);
  return Number(process.exitCode ?? 0);
});
