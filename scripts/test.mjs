import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import path from 'node:path';
import { ensureApp, ensureCli } from './steps/build.mjs';
import { ensureDebianPackages, packageSets } from './steps/debian-packages.mjs';
import { ensureElectronRuntime } from './steps/electron-runtime.mjs';
import { ensureNodePackages } from './steps/node-packages.mjs';
import { inRoot } from './steps/place.mjs';
import { main, run, say } from './steps/run.mjs';

/** @typedef {{ passed: number, failed: number, skipped: number }} Count */

/** @param {boolean} well @returns {Count} a step that is one thing that passes or fails */
const single = (well) => ({ passed: well ? 1 : 0, failed: well ? 0 : 1, skipped: 0 });

/** @param {...string} parts a script's path in the project, or a package's program, then its arguments */
const node = async (program, ...args) => single((await run(process.execPath, [inRoot(program), ...args])) === 0);

/** Runs one of the test projects of vitest.config.ts and counts what really ran. @param {string} project @returns {Promise<Count>} */
async function tests(project) {
  const report = inRoot('out', 'test-results', `${project}.json`);
  mkdirSync(path.dirname(report), { recursive: true });
  rmSync(report, { force: true });
  const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${report}`];
  const status = await run(process.execPath, [
    inRoot('node_modules', 'vitest', 'vitest.mjs'),
    'run',
    '--project',
    project,
    ...reporters,
  ]);
  if (!existsSync(report)) return single(false);
  const result = JSON.parse(readFileSync(report, 'utf8'));
  // A file that breaks before its first test counts as one failure; so does a run that ended badly or tested nothing.
  const broken = result.testResults.filter(
    (file) => file.status === 'failed' && !file.assertionResults.some((one) => one.status === 'failed'),
  ).length;
  const failed = result.numFailedTests + broken;
  const silent = failed === 0 && (status !== 0 || result.numPassedTests === 0) ? 1 : 0;
  return {
    passed: result.numPassedTests,
    failed: failed + silent,
    skipped: result.numPendingTests + result.numTodoTests,
  };
}

/** Without what these bring, no other step can say anything. */
const groundwork = new Set(['set-up']);

/** @type {readonly { name: string, title: string, run: () => Promise<Count> }[]} */
const steps = [
  {
    name: 'set-up',
    title: 'Set-up',
    run: async () => {
      await ensureDebianPackages([...packageSets.forPackages, ...packageSets.forWindow, ...packageSets.forPaper]);
      await ensureNodePackages();
      say(`Electron: ${ensureElectronRuntime() ?? 'the official runtime'}`);
      return single(true);
    },
  },
  { name: 'types', title: 'Types', run: () => node('scripts/check-types.mjs') },
  {
    name: 'lint',
    title: 'Lint and format',
    run: () => node('node_modules/@biomejs/biome/bin/biome', 'check', '--error-on-warnings', '.'),
  },
  { name: 'layers', title: 'Layers', run: () => node('scripts/layers.mjs') },
  { name: 'unused', title: 'Unused code', run: () => node('node_modules/knip/bin/knip.js', '--no-config-hints') },
  {
    name: 'build',
    title: 'Build',
    run: async () => {
      await ensureApp();
      await ensureCli();
      return single(true);
    },
  },
  { name: 'unit', title: 'Engine and window parts', run: () => tests('unit') },
  { name: 'store', title: 'Store, shell and command line', run: () => tests('store') },
  { name: 'window', title: 'The real window', run: () => tests('window') },
];

// `npm test`: everything, in order, each step to its end whatever became of those before it. `npm test -- types unit`
// runs only the steps that are named (and the set-up).
main(async () => {
  const wanted = process.argv.slice(2);
  const unknown = wanted.filter((name) => !steps.some((step) => step.name === name));
  if (unknown.length > 0) {
    say(`There is no step ${unknown.join(', ')}. The steps are: ${steps.map(({ name }) => name).join(', ')}.`);
    return 2;
  }
  const chosen = steps.filter(({ name }) => wanted.length === 0 || groundwork.has(name) || wanted.includes(name));
  const total = { passed: 0, failed: 0, skipped: 0 };
  const lines = [];
  for (const [place, step] of chosen.entries()) {
    say(`\n━━ ${place + 1}/${chosen.length} ${step.title} ━━`);
    const start = performance.now();
    let count;
    try {
      count = await step.run();
    } catch (error) {
      say(String(error?.message ?? error));
      count = single(false);
    }
    total.passed += count.passed;
    total.failed += count.failed;
    total.skipped += count.skipped;
    const seconds = ((performance.now() - start) / 1000).toFixed(1);
    lines.push(
      `${count.failed === 0 ? 'passed' : 'FAILED'}  ${step.title}: ${count.passed} passed, ${count.failed} failed, ${seconds} s`,
    );
    if (count.failed > 0 && groundwork.has(step.name)) break;
  }
  process.stdout.write(`\n${lines.join('\n')}\n\n`);
  const skipped = total.skipped > 0 ? `, ${total.skipped} skipped` : '';
  process.stdout.write(`${total.passed} passed, ${total.failed} failed${skipped}\n`);
  return total.failed === 0 ? 0 : 1;
});
