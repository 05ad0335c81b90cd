import { spawn, spawnSync } from 'node:child_process';
import { root } from './place.mjs';

/** A failure that the reader can mend; shown without a stack. */
export class SetupError extends Error {}

const windowsNeedsShell = process.platform === 'win32';

/**
 * Runs a command to its end with the output shown (on stderr when `quiet`, so that stdout stays the program's own).
 * @param {string} command
 * @param {readonly string[]} args
 * @param {{ cwd?: string, env?: NodeJS.ProcessEnv, quiet?: boolean }} [options]
 * @returns {Promise<number>} the exit status; 128 + the signal's number when it was killed
 */
export function run(command, args, { cwd = root, env = process.env, quiet = false } = {}) {
  return new Promise((resolve, reject) => {
    const child = spawn(command, [...args], {
      cwd,
      env,
      stdio: ['inherit', quiet ? 2 : 'inherit', 'inherit'],
      shell: windowsNeedsShell && command === 'npm',
    });
    // Ctrl+C reaches the child by itself; this script must live on to hand back the child's answer.
    const wait = () => {};
    process.on('SIGINT', wait);
    const stop = () => child.kill('SIGTERM');
    process.on('SIGTERM', stop);
    const done = () => {
      process.off('SIGINT', wait);
      process.off('SIGTERM', stop);
    };
    child.once('error', (error) => {
      done();
      reject(new SetupError(`Could not run ${command}: ${error.message}`));
    });
    child.once('exit', (code, signal) => {
      done();
      resolve(code ?? 128 + (signal === 'SIGINT' ? 2 : 15));
    });
  });
}

/**
 * Runs a command and returns what it said.
 * @param {string} command
 * @param {readonly string[]} args
 * @param {{ cwd?: string, timeoutMs?: number }} [options]
 */
export function ask(command, args, { cwd = root, timeoutMs } = {}) {
  const answer = spawnSync(command, [...args], {
    cwd,
    encoding: 'utf8',
    timeout: timeoutMs,
    maxBuffer: 64 * 1024 * 1024,
    shell: windowsNeedsShell && command === 'npm',
  });
  return { status: answer.status ?? 1, stdout: answer.stdout ?? '', stderr: answer.stderr ?? '' };
}

/** Says what is going on, on stderr. @param {string} text */
export const say = (text) => process.stderr.write(`${text}\n`);

/**
 * The outermost frame of a script: sets the exit status, shows a {@link SetupError} as a plain sentence.
 * @param {() => Promise<number>} body
 */
export function main(body) {
  body().then(
    (status) => {
      process.exitCode = status;
    },
    (error) => {
      say(error instanceof SetupError ? error.message : String(error?.stack ?? error));
      process.exitCode = 1;
    },
  );
}
