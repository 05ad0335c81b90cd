import { readFileSync } from 'node:fs';
import { inRoot } from './steps/place.mjs';
import { main, run, say } from './steps/run.mjs';

// One compiler run per layer, since each layer has its own idea of the world (no Node in the engine, no Node in the window).
main(async () => {
  const { references } = JSON.parse(readFileSync(inRoot('tsconfig.json'), 'utf8'));
  let failed = 0;
  for (const { path } of references) {
    say(`types: ${path}`);
    if (
      (await run(process.execPath, [inRoot('node_modules', 'typescript', 'bin', 'tsc'), '--noEmit', '-p', path])) !== 0
    )
      failed++;
  }
  return failed === 0 ? 0 : 1;
});
