import { existsSync } from 'node:fs';
import { ask, run, SetupError, say } from './run.mjs';

const forWindow = ['libgtk-3-0', 'libnss3', 'libasound2', 'libgbm1', 'xvfb', 'xauth'];
const forPackages = ['ca-certificates', 'build-essential', 'python3'];
const forPaper = ['poppler-utils'];

export const packageSets = { forWindow, forPackages, forPaper };

/**
 * Names the Debian packages of a set that are not installed. A package that another one provides (libgtk-3-0t64 for
 * libgtk-3-0 on newer releases) counts as installed.
 * @param {readonly string[]} names
 */
function missingOf(names) {
  // biome-ignore lint/suspicious/noTemplateCurlyInString: the braces are dpkg's own placeholders
  const answer = ask('dpkg-query', ['-W', '-f', '${db:Status-Status}\\t${Package}\\t${Provides}\\n']);
  const present = new Set();
  for (const line of answer.stdout.split('\n')) {
    const [status, name, provides = ''] = line.split('\t');
    if (status !== 'installed' || name === undefined) continue;
    present.add(name);
    for (const provided of provides.split(',')) present.add(provided.trim().split(' ')[0]);
  }
  return names.filter((name) => !present.has(name));
}

/**
 * Installs what is missing when we may (root on Debian or a relative of it); otherwise says which command does. On
 * other systems it does nothing: there the tools come with the system or its developer kit.
 * @param {readonly string[]} names
 */
export async function ensureDebianPackages(names) {
  if (process.platform !== 'linux' || !existsSync('/usr/bin/dpkg-query')) return;
  const missing = missingOf(names);
  if (missing.length === 0) return;
  const command = `apt-get install -y --no-install-recommends ${missing.join(' ')}`;
  if (process.getuid?.() !== 0) {
    throw new SetupError(
      `These system packages are missing: ${missing.join(', ')}.\nInstall them with: sudo ${command}`,
    );
  }
  say(`Installing system packages: ${missing.join(', ')}`);
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  // The package lists may be missing or old on a fresh machine. A refresh that fails is no matter if the install works.
  await run('apt-get', ['update', '-qq'], { env, quiet: true });
  const install = ['install', '-y', '-qq', '--no-install-recommends', ...missing];
  if ((await run('apt-get', install, { env, quiet: true })) !== 0) {
    throw new SetupError(`The system packages could not be installed. Try: ${command}`);
  }
}
