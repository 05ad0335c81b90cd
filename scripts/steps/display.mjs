/** @returns whether a window can be shown. */
export const hasDisplay = () =>
  process.platform !== 'linux' || Boolean(process.env.DISPLAY) || Boolean(process.env.WAYLAND_DISPLAY);

/** @returns the switches that this machine needs: the superuser cannot use the browser's sandbox. */
export const electronSwitches = () => [
  ...(process.platform === 'linux' && process.getuid?.() === 0 ? ['--no-sandbox'] : []),
  '--log-level=3',
];
