/** Small matters of comfort kept on this machine (sizes of panes, folded groups). Losing them loses no work. */
const PREFIX = 'waywright:';

export function readKept(key: string): string | undefined {
  try {
    return window.localStorage.getItem(PREFIX + key) ?? undefined;
  } catch {
    return undefined;
  }
}

export function writeKept(key: string, value: string): void {
  try {
    window.localStorage.setItem(PREFIX + key, value);
  } catch {
    // A full or forbidden store only means that the size is not remembered.
  }
}
