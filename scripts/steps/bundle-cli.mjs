import { build } from 'vite';
import { inRoot, root } from './place.mjs';

// Bundled rather than run as it is: rules and commands are found by `import.meta.glob`, which is the bundler's, and one
// file starts many times faster than hundreds.
await build({
  root,
  configFile: false,
  logLevel: 'warn',
  publicDir: false,
  // The native database and the kernel, which looks for its WebAssembly beside itself, stay outside the bundle.
  ssr: { noExternal: true, external: ['sqlite3', 'manifold-3d'] },
  build: {
    ssr: inRoot('src', 'main', 'cli', 'main.ts'),
    outDir: inRoot('out', 'cli'),
    emptyOutDir: true,
    target: 'node20.18',
    minify: false,
    sourcemap: true,
    rollupOptions: { output: { entryFileNames: 'main.js', chunkFileNames: '[name]-[hash].js' } },
  },
});
