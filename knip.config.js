/** @param {string} text a style sheet @returns its imports in the form that a script would have them */
const importsOfStyles = (text) =>
  [...text.matchAll(/@import\s+["']([^"']+)["']/g)].map(([, request]) => `import '${request}';`).join('\n');

/** @type {import('knip').KnipConfig} */
export default {
  entry: [
    'src/main/cli/main.ts',
    'src/renderer/index.html',
    'src/shared/check/rules/**/*.ts',
    // Laid for the Pattern Shop and the Foundry, whose rooms of the window are not open yet.
    'src/shared/{pattern,foundry}/**/*.ts',
    'src/shared/build/{alloy,casting,pattern,pour}.ts',
    'src/shared/base/{ids,moment}.ts',
    'src/shared/tables/{alloys,foundry-practice}.ts',
    'scripts/*.mjs',
    'scripts/soak/*.mjs',
    'scripts/steps/bundle-cli.mjs',
    'bench/*.bench.ts',
    'tests/**/*.test.{ts,tsx}',
    'tests/faults/children/*.ts',
    'tests/screenshots/*.shot.ts',
    'tests/support/*-setup.mjs',
  ],
  project: [
    'src/**/*.{ts,tsx,css}',
    'scripts/**/*.mjs',
    'tests/**/*.{ts,tsx,mjs}',
    'bench/**/*.ts',
    'resources/examples/source/**/*.ts',
  ],
  compilers: { css: importsOfStyles },
  // A contract's types have names so that people can speak of them.
  ignoreExportsUsedInFile: { interface: true, type: true },
  // Read as a file and handed to the page, never imported.
  ignoreDependencies: ['axe-core'],
  ignoreBinaries: ['Xvfb'],
};
