import { existsSync, mkdirSync, readdirSync } from 'node:fs';
import path from 'node:path';
import setUpWindow from '../tests/support/window-setup.mjs';
import { ensureNodePackages } from './steps/node-packages.mjs';
import { cacheFolder, inRoot } from './steps/place.mjs';
import { main, run, SetupError, say } from './steps/run.mjs';

/**
 * Programs that the benchmarks are held against but that the project does not depend on (their licences would bind it):
 * installed outside the project, and only when asked for.
 */
const peers = ['hyperformula@3.5.0'];
/** Benchmarks that start the program itself: they need its build, the runtime and a screen. */
const inWindow = ['opening'];
const peersFolder = path.join(cacheFolder, 'bench-peers');

async function installPeers() {
  mkdirSync(peersFolder, { recursive: true });
  say(`Installing ${peers.join(', ')} beside the project, for comparison only …`);
  const args = [
    'install',
    '--prefix',
    peersFolder,
    '--no-save',
    '--no-audit',
    '--no-fund',
    '--loglevel=error',
    ...peers,
  ];
  if ((await run('npm', args, { cwd: peersFolder, quiet: true })) !== 0)
    say('They could not be installed; they will be skipped.');
}

/** @param {string} name */
async function bundle(name) {
  const { build } = await import('vite');
  await build({
    root: inRoot(),
    configFile: false,
    logLevel: 'warn',
    publicDir: false,
    build: {
      ssr: inRoot('bench', `${name}.bench.ts`),
      outDir: inRoot('out', 'bench', name),
      emptyOutDir: true,
      target: 'node20.18',
      minify: false,
      rollupOptions: { output: { entryFileNames: 'bench.js' } },
    },
  });
}

// `npm run bench [-- NAME …] [--with-peers]`: each bench/NAME.bench.ts in a process of its own, one after another. A peer
// that is not there is skipped by the benchmark with a clear word; WAYWRIGHT_BENCH_PEERS names the folder it would be in.
main(async () => {
  const args = process.argv.slice(2);
  await ensureNodePackages();
  if (args.includes('--with-peers')) await installPeers();
  const folder = inRoot('bench');
  const all = existsSync(folder)
    ? readdirSync(folder)
        .filter((file) => file.endsWith('.bench.ts'))
        .map((file) => file.slice(0, -'.bench.ts'.length))
        .sort()
    : [];
  const wanted = args.filter((arg) => !arg.startsWith('-'));
  const unknown = wanted.filter((name) => !all.includes(name));
  if (unknown.length > 0)
    throw new SetupError(`There is no benchmark ${unknown.join(', ')}. There are: ${all.join(', ')}.`);
  const chosen = wanted.length > 0 ? wanted : all;
  const tearDown = chosen.some((name) => inWindow.includes(name)) ? await setUpWindow() : undefined;
  let failed = 0;
  for (const name of chosen) {
    say(`\n━━ ${name} ━━`);
    await bundle(name);
    const env = { ...process.env, WAYWRIGHT_BENCH_PEERS: path.join(peersFolder, 'node_modules') };
    // Garbage is collected on the measured thread: helpers that wait for a busy machine would be counted otherwise.
    const flags = ['--expose-gc', '--single-threaded-gc'];
    if ((await run(process.execPath, [...flags, inRoot('out', 'bench', name, 'bench.js')], { env })) !== 0) failed++;
  }
  tearDown?.();
  return failed === 0 ? 0 : 1;
});
