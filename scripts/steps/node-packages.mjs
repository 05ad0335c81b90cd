import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { inRoot } from './place.mjs';
import { run, SetupError, say } from './run.mjs';

/** @param {string} file */
const lockedPackages = (file) => JSON.parse(readFileSync(file, 'utf8')).packages ?? {};

/**
 * Compares what the lock file wants with what npm wrote down as installed. Optional packages (other platforms' binaries)
 * may be absent.
 * @returns {boolean}
 */
function packagesMatchLock() {
  const wantedFile = inRoot('package-lock.json');
  const installedFile = inRoot('node_modules', '.package-lock.json');
  if (!existsSync(installedFile)) return false;
  const wanted = lockedPackages(wantedFile);
  const installed = lockedPackages(installedFile);
  for (const [place, entry] of Object.entries(wanted)) {
    if (place === '') continue;
    const there = installed[place];
    if (there === undefined) {
      if (entry.optional === true || entry.devOptional === true || entry.peer === true) continue;
      return false;
    }
    if (there.version !== entry.version || there.integrity !== entry.integrity) return false;
  }
  return true;
}

const sqliteBinary = () => inRoot('node_modules', 'sqlite3', 'build', 'Release', 'node_sqlite3.node');

/** Native packages are compiled where no ready-made file can be fetched; Node's headers usually lie beside Node itself. */
function environmentForNpm() {
  const prefix = path.resolve(path.dirname(process.execPath), '..');
  const hasHeaders = existsSync(path.join(prefix, 'include', 'node', 'node.h'));
  // What the reader has set goes before what we would.
  return { ...(hasHeaders ? { npm_config_nodedir: prefix } : {}), JOBS: 'max', ...process.env };
}

/** Makes node_modules agree with package-lock.json; does nothing when it already does. */
export async function ensureNodePackages() {
  const env = environmentForNpm();
  if (!packagesMatchLock()) {
    say('Installing the packages of package-lock.json (compiling the database takes a minute or two) …');
    if ((await run('npm', ['ci', '--no-audit', '--no-fund', '--loglevel=error'], { env, quiet: true })) !== 0) {
      throw new SetupError('npm could not install the packages. The lines above say why.');
    }
  }
  if (!existsSync(sqliteBinary())) {
    say('Compiling the database (sqlite3) …');
    await run('npm', ['rebuild', 'sqlite3', '--loglevel=error'], { env, quiet: true });
    if (!existsSync(sqliteBinary())) {
      throw new SetupError(
        'sqlite3 could not be compiled. It needs a C++ compiler, make and python3; on Debian: apt-get install build-essential python3',
      );
    }
  }
}
