import path from 'node:path';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'electron-vite';

const here = import.meta.dirname;

// The targets are those of the oldest runtime that the program is tried on, not of the one that it is packaged with.
const NODE = 'node20.18';
const CHROMIUM = 'chrome130';

export default defineConfig({
  main: {
    build: {
      target: NODE,
      outDir: 'out/main',
      // Only the native database stays outside: one file starts faster than a tree of packages.
      externalizeDeps: { exclude: ['kysely', 'zod', 'papaparse'] },
      rollupOptions: {
        input: {
          main: path.join(here, 'src/main/app/main.ts'),
          'solid-thread': path.join(here, 'src/main/files/solids/solid-thread.ts'),
        },
        // All side by side: the thread is looked for beside whatever starts it.
        output: { format: 'es', entryFileNames: '[name].js', chunkFileNames: '[name]-[hash].js' },
      },
    },
  },
  preload: {
    build: {
      target: NODE,
      outDir: 'out/preload',
      externalizeDeps: false,
      rollupOptions: {
        input: { preload: path.join(here, 'src/main/preload.ts') },
        // Preload scripts of sandboxed windows cannot be ES modules.
        output: { format: 'cjs', entryFileNames: '[name].cjs' },
      },
    },
  },
  renderer: {
    root: 'src/renderer',
    plugins: [react()],
    worker: { format: 'es' },
    build: {
      target: CHROMIUM,
      outDir: 'out/renderer',
      // Half the text is half the reading at every start.
      minify: true,
      // The content security policy allows no inline code, and fonts must stay files.
      assetsInlineLimit: 0,
      modulePreload: { polyfill: false },
      rollupOptions: { input: path.join(here, 'src/renderer/index.html') },
    },
  },
});
