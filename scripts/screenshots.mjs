import { ensureNodePackages } from './steps/node-packages.mjs';
import { inRoot } from './steps/place.mjs';
import { main, run } from './steps/run.mjs';

// `npm run screenshots`: takes the pictures of docs/pictures anew from the real window.
main(async () => {
  await ensureNodePackages();
  return run(process.execPath, [inRoot('node_modules', 'vitest', 'vitest.mjs'), 'run', '--project', 'screenshots']);
});
