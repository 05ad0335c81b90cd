import { execFile } from 'node:child_process';
import { readFile } from 'node:fs/promises';
import { promisify } from 'node:util';

const run = promisify(execFile);

/** Whether a process of that number is running now, ours or another user's. */
export function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'EPERM';
  }
}

/**
 * When a process began, in the system's own words: together with its number it names a process for good, because
 * numbers are given again. Meant for comparison only.
 * @returns undefined when there is no such process or the system does not tell.
 */
export async function startOf(pid: number): Promise<string | undefined> {
  try {
    switch (process.platform) {
      case 'linux':
        return await startOnLinux(pid);
      case 'win32': {
        const command = `(Get-Process -Id ${pid}).StartTime.ToFileTimeUtc()`;
        const { stdout } = await run('powershell.exe', ['-NoProfile', '-NonInteractive', '-Command', command]);
        return stdout.trim() || undefined;
      }
      default: {
        const { stdout } = await run('ps', ['-o', 'lstart=', '-p', String(pid)], {
          env: { ...process.env, LC_ALL: 'C' },
        });
        return stdout.trim() || undefined;
      }
    }
  } catch {
    return undefined;
  }
}

/** Ticks since the machine started (field 22 of proc(5) stat), with the mark of that start. */
async function startOnLinux(pid: number): Promise<string | undefined> {
  const stat = await readFile(`/proc/${pid}/stat`, 'utf8');
  // The second field, the program's name, is in brackets and may itself hold blanks and brackets.
  const ticks = stat.slice(stat.lastIndexOf(')') + 2).split(' ')[19];
  const boot = await readFile('/proc/sys/kernel/random/boot_id', 'utf8');
  return ticks === undefined ? undefined : `${boot.trim()}/${ticks}`;
}
