import { ask, run } from './run.mjs';

/** @returns whether a window can be shown. */
export const hasDisplay = () =>
  process.platform !== 'linux' || Boolean(process.env.DISPLAY) || Boolean(process.env.WAYLAND_DISPLAY);

const screen = '-screen 0 1920x1080x24 -nolisten tcp';

/**
 * Runs a command where windows can be opened: on the display at hand, else on a virtual one.
 * @param {string} command
 * @param {readonly string[]} args
 * @param {{ env?: NodeJS.ProcessEnv, quiet?: boolean }} [options]
 */
export function runWithDisplay(command, args, options) {
  if (hasDisplay()) return run(command, args, options);
  return run('xvfb-run', ['-a', '-s', screen, command, ...args], options);
}

/** @returns the switches that this machine needs: the superuser cannot use the browser's sandbox. */
export const electronSwitches = () => [
  ...(process.platform === 'linux' && process.getuid?.() === 0 ? ['--no-sandbox'] : []),
  '--log-level=3',
];

/** @param {string} name @returns whether a program is there */
export const hasProgram = (name) => ask('which', [name]).status === 0;
