import { readFileSync } from 'node:fs';
import path from 'node:path';
import { protocol } from 'electron';
import { CONTENT_SECURITY_POLICY, isOurPage, SCHEME } from './policy.ts';

const mediaTypes: Readonly<Record<string, string>> = {
  '.css': 'text/css; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.ico': 'image/x-icon',
  '.jpg': 'image/jpeg',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.mjs': 'text/javascript; charset=utf-8',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.txt': 'text/plain; charset=utf-8',
  '.wasm': 'application/wasm',
  '.woff': 'font/woff',
  '.woff2': 'font/woff2',
};

/** Must run before Electron is ready. */
export function registerScheme(): void {
  protocol.registerSchemesAsPrivileged([
    { scheme: SCHEME, privileges: { standard: true, secure: true, supportFetchAPI: true, codeCache: true } },
  ]);
}

/**
 * @param folder the folder that is served
 * @returns the file that an address of ours means, or undefined when it means none or reaches out of the folder
 */
export function fileFor(folder: string, address: string): string | undefined {
  if (!isOurPage(address)) return undefined;
  let name: string;
  try {
    name = decodeURIComponent(new URL(address).pathname);
  } catch {
    return undefined;
  }
  // A backslash is a separator on one system and a letter on the others; a NUL ends a name early. Ours have neither.
  if (name.includes('\\') || name.includes('\0')) return undefined;
  const base = path.resolve(folder);
  const file = path.resolve(base, `.${name}`);
  return file.startsWith(base + path.sep) ? file : undefined;
}

const headers = (type: string): Record<string, string> => ({
  'Content-Type': type,
  'Content-Security-Policy': CONTENT_SECURITY_POLICY,
  'Referrer-Policy': 'no-referrer',
  'X-Content-Type-Options': 'nosniff',
});

const plain = headers('text/plain; charset=utf-8');

export interface Answer {
  readonly status: number;
  readonly headers: Record<string, string>;
  readonly body: Buffer;
}

const refusal = (status: number, words: string): Answer => ({ status, headers: plain, body: Buffer.from(words) });

/**
 * Answers one request for the window's own files. Every answer, refusals included, carries the policy. The files are few
 * and small and lie in the system's memory by then: reading them at once spares the page a wait behind other work.
 */
export function answer(folder: string, request: { readonly method: string; readonly url: string }): Answer {
  if (request.method !== 'GET') return refusal(405, 'Only reading is possible.');
  const file = fileFor(folder, request.url);
  const type = file === undefined ? undefined : mediaTypes[path.extname(file)];
  if (file === undefined || type === undefined) return refusal(404, 'Not found.');
  try {
    return { status: 200, headers: headers(type), body: readFileSync(file) };
  } catch {
    return refusal(404, 'Not found.');
  }
}

/**
 * Serves the window. `protocol.handle` would answer with a `Response`: the first of them makes Node load its whole client
 * of the web, 45 ms at the worst moment of the start.
 * @param folder the built window, `out/renderer`
 */
export function serveWindow(folder: string): void {
  protocol.registerBufferProtocol(SCHEME, (request, give) => {
    const { status, headers: sent, body } = answer(folder, request);
    const [mimeType = '', charset] = (sent['Content-Type'] ?? '').split('; charset=');
    give({ statusCode: status, headers: sent, data: body, mimeType, ...(charset === undefined ? {} : { charset }) });
  });
}
