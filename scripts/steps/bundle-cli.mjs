import { build } from 'vite';
import { inRoot, root } from './place.mjs';

// Bundled rather than run as it is: rules and commands are found by `import.meta.glob`, which is the bundler's, and one
// file starts many times faster than hundreds.
await build({
  root,
  configFile: false,
  logLevel: 'warn',
  publicDir: false,
  // The native database stays outside the bundle, and so do the kernel and the reader of STEP, which look for their
  // WebAssembly beside themselves.
  ssr: { noExternal: true, external: ['sqlite3', 'manifold-3d', 'occt-import-js'] },
  build: {
    ssr: true,
    outDir: inRoot('out', 'cli'),
    emptyOutDir: true,
    target: 'node20.18',
    minify: false,
    sourcemap: true,
    rollupOptions: {
      input: {
        main: inRoot('src', 'main', 'cli', 'main.ts'),
        'solid-thread': inRoot('src', 'main', 'files', 'solids', 'solid-thread.ts'),
      },
      output: { entryFileNames: '[name].js', chunkFileNames: '[name]-[hash].js' },
    },
  },
});
