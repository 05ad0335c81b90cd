import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { inRoot } from './place.mjs';

/**
 * A cheap fingerprint of files and folders: names, sizes and times of change, not contents.
 * @param {readonly string[]} places relative to the project; missing ones count as empty
 */
function fingerprint(places) {
  const hash = createHash('sha256');
  /** @param {string} place */
  const visit = (place) => {
    const full = inRoot(place);
    const stat = statSync(full, { throwIfNoEntry: false });
    if (stat === undefined) return;
    if (!stat.isDirectory()) {
      hash.update(`${place}\0${stat.size}\0${stat.mtimeMs}\n`);
      return;
    }
    for (const name of readdirSync(full).sort()) {
      if (!/\.test\.tsx?$/.test(name)) visit(path.join(place, name));
    }
  };
  for (const place of places) visit(place);
  return hash.digest('hex');
}

const STAMP = '.built-from';

/**
 * @param {string} output folder relative to the project
 * @param {readonly string[]} sources
 */
export function isFresh(output, sources) {
  const stamp = inRoot(output, STAMP);
  return existsSync(stamp) && readFileSync(stamp, 'utf8') === fingerprint(sources);
}

const WAIT_MS = 100;

/** @param {number} pid */
const isAlive = (pid) => {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error?.code === 'EPERM';
  }
};

/**
 * Two commands may want the same build at once: the second waits for the first. A lock whose owner has died is void.
 * @param {string} lock file
 * @param {() => Promise<boolean>} body
 */
async function alone(lock, body) {
  mkdirSync(path.dirname(lock), { recursive: true });
  for (;;) {
    try {
      writeFileSync(lock, String(process.pid), { flag: 'wx' });
      break;
    } catch (error) {
      if (error?.code !== 'EEXIST') throw error;
    }
    const owner = existsSync(lock) ? Number(readFileSync(lock, 'utf8')) : 0;
    const age = Date.now() - (statSync(lock, { throwIfNoEntry: false })?.mtimeMs ?? Date.now());
    if (owner > 0 ? !isAlive(owner) : age > WAIT_MS * 20) rmSync(lock, { force: true });
    else await new Promise((go) => setTimeout(go, WAIT_MS));
  }
  try {
    return await body();
  } finally {
    rmSync(lock, { force: true });
  }
}

/**
 * Builds unless the output already comes from these sources. What they were is noted before building, so that an edit
 * during the build makes the next call build again.
 * @param {string} output folder relative to the project
 * @param {readonly string[]} sources
 * @param {() => Promise<void>} build
 * @returns {Promise<boolean>} whether it built
 */
export function buildWhenStale(output, sources, build) {
  return alone(inRoot(`${output}.lock`), async () => {
    if (isFresh(output, sources)) return false;
    const before = fingerprint(sources);
    const stamp = inRoot(output, STAMP);
    rmSync(stamp, { force: true });
    await build();
    mkdirSync(inRoot(output), { recursive: true });
    writeFileSync(stamp, before);
    return true;
  });
}
