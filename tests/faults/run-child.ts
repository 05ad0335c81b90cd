import { type ChildProcessWithoutNullStreams, spawn } from 'node:child_process';
import path from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';

const root = fileURLToPath(new URL('../../', import.meta.url));

/**
 * Bundles one of the programs in `children/` for plain Node, so that it can be run, killed and starved by itself.
 * @returns the path of the bundle.
 */
export async function bundleChild(name: string): Promise<string> {
  // Test files run at the same time; each has bundles of its own. Inside the project, so that sqlite3 is found.
  const outDir = path.join(root, 'out', 'tests', `${name}-${process.pid}`);
  await build({
    configFile: false,
    root,
    logLevel: 'error',
    ssr: { noExternal: true, external: ['sqlite3'] },
    build: {
      ssr: path.join(root, 'tests', 'faults', 'children', `${name}.ts`),
      outDir,
      emptyOutDir: true,
      target: 'node20.18',
      minify: false,
      rollupOptions: { output: { entryFileNames: `${name}.mjs` } },
    },
  });
  return path.join(outDir, `${name}.mjs`);
}

export interface Child {
  readonly process: ChildProcessWithoutNullStreams;
  /** Each line that the program prints, in order; ends when it does. */
  readonly lines: AsyncIterableIterator<string>;
  /** Settles when the program is gone and everything that it printed has been read. */
  readonly gone: Promise<void>;
  say(line: string): void;
}

export function startChild(bundle: string, args: readonly string[], env: Readonly<Record<string, string>> = {}): Child {
  const child = spawn(process.execPath, [bundle, ...args], { env: { ...process.env, ...env } });
  child.stderr.pipe(process.stderr);
  // A killed child no longer listens; that is no error of the test.
  child.stdin.on('error', () => undefined);
  const lines = createInterface({ input: child.stdout })[Symbol.asyncIterator]();
  const gone = new Promise<void>((resolve) => child.on('close', () => resolve()));
  return { process: child, lines, gone, say: (line) => child.stdin.write(`${line}\n`) };
}
