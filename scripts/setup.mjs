import { ensureDebianPackages, packageSets } from './steps/debian-packages.mjs';
import { ensureElectronRuntime } from './steps/electron-runtime.mjs';
import { ensureNodePackages } from './steps/node-packages.mjs';
import { main, say } from './steps/run.mjs';

// Everything that the other commands would set up when they first need it, in one go.
main(async () => {
  await ensureDebianPackages([...packageSets.forPackages, ...packageSets.forWindow, ...packageSets.forPaper]);
  await ensureNodePackages();
  const runtime = ensureElectronRuntime();
  say(`Ready. Electron: ${runtime ?? 'the official runtime'}`);
  return 0;
});
