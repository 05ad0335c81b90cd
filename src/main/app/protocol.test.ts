import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { CONTENT_SECURITY_POLICY } from './policy.ts';

vi.mock('electron', () => ({ protocol: {} }));
const { answer, fileFor } = await import('./protocol.ts');

describe('fileFor', () => {
  const folder = path.resolve('/srv/window');
  test('names a file in the folder', () => {
    expect(fileFor(folder, 'app://waywright/assets/a%20b.js?x#y')).toBe(path.join(folder, 'assets', 'a b.js'));
  });
  test.each([
    'app://waywright/../secret.js',
    'app://waywright/%2e%2e/%2e%2e/secret.js',
    'app://waywright/assets/..%2f..%2f..%2fsecret.js',
    'app://waywright/..%5c..%5csecret.js',
    'app://waywright/index.html%00.png',
    'app://waywright/%E0%A4%A',
    'app://elsewhere/index.html',
    'file:///etc/passwd',
    'no address',
    'app://waywright/',
  ])('refuses or keeps inside: %s', (address) => {
    const file = fileFor(folder, address);
    if (file !== undefined) expect(file.startsWith(folder + path.sep)).toBe(true);
    if (/%2f|%5c|%00|elsewhere|file:|no address|%A$|\/$/.test(address)) expect(file).toBeUndefined();
  });
});

describe('answer', () => {
  let folder: string;
  beforeAll(() => {
    folder = mkdtempSync(path.join(os.tmpdir(), 'waywright-served-'));
    mkdirSync(path.join(folder, 'window'));
    writeFileSync(path.join(folder, 'window', 'index.html'), '<p>here</p>');
    writeFileSync(path.join(folder, 'window', 'kernel.wasm'), 'x');
    writeFileSync(path.join(folder, 'window', 'key.pem'), 'x');
    writeFileSync(path.join(folder, 'outside.js'), 'x');
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  const get = (address: string, method = 'GET') => answer(path.join(folder, 'window'), { method, url: address });

  test('hands over a file with its type and the policy', () => {
    const page = get('app://waywright/index.html');
    expect(page.status).toBe(200);
    expect(page.body.toString()).toBe('<p>here</p>');
    expect(page.headers['Content-Type']).toBe('text/html; charset=utf-8');
    expect(get('app://waywright/kernel.wasm').headers['Content-Type']).toBe('application/wasm');
  });
  test.each([
    ['app://waywright/index.html', 'GET', 200],
    ['app://waywright/absent.html', 'GET', 404],
    ['app://waywright/key.pem', 'GET', 404],
    ['app://waywright/..%2foutside.js', 'GET', 404],
    ['app://waywright/index.html', 'POST', 405],
  ])('%s by %s is answered %i, with the policy', (address, method, status) => {
    const response = get(address, method);
    expect(response.status).toBe(status);
    expect(response.headers['Content-Security-Policy']).toBe(CONTENT_SECURITY_POLICY);
  });
});
