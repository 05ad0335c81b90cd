/** The scheme and host from which the window is served; nothing else is ever loaded. */
export const SCHEME = 'app';
const HOST = 'waywright';
export const START_PAGE = `${SCHEME}://${HOST}/index.html`;

/**
 * The content security policy of every response. `wasm-unsafe-eval` is for the solids kernel, which is WebAssembly; there
 * is no inline code and no inline style element anywhere.
 */
export const CONTENT_SECURITY_POLICY = [
  "default-src 'none'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "style-src 'self'",
  "img-src 'self' data: blob:",
  "font-src 'self'",
  "connect-src 'self'",
  "worker-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ');

/** @returns whether an address is a page of ours. Malformed addresses are not. */
export function isOurPage(address: string): boolean {
  if (!URL.canParse(address)) return false;
  const url = new URL(address);
  return url.protocol === `${SCHEME}:` && url.host === HOST;
}
