import { defineConfig } from 'vitest/config';

const unitFolders = ['properties', 'golden', 'outside', 'arch', 'formats', 'support'];

export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: 'unit',
          // Long enough for a machine that has other work; a test that needs it when idle is too slow.
          testTimeout: 30_000,
          include: [
            'src/shared/**/*.test.ts',
            'src/renderer/**/*.test.{ts,tsx}',
            ...unitFolders.map((folder) => `tests/${folder}/**/*.test.ts`),
          ],
        },
      },
      {
        test: {
          name: 'store',
          include: ['src/main/**/*.test.ts', 'tests/{store,faults,cli}/**/*.test.ts'],
          globalSetup: 'tests/support/cli-setup.mjs',
          testTimeout: 60_000,
          hookTimeout: 60_000,
        },
      },
      {
        test: {
          name: 'window',
          include: ['tests/window/**/*.test.ts'],
          globalSetup: 'tests/support/window-setup.mjs',
          testTimeout: 120_000,
          hookTimeout: 120_000,
          fileParallelism: false,
        },
      },
      {
        // Not tests: `npm run screenshots` takes the pictures of the documentation with the same machinery.
        test: {
          name: 'screenshots',
          include: ['tests/screenshots/**/*.shot.ts'],
          globalSetup: 'tests/support/window-setup.mjs',
          testTimeout: 120_000,
          hookTimeout: 120_000,
          fileParallelism: false,
        },
      },
    ],
  },
});
