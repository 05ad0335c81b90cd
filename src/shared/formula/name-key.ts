/** Whether a name is its own key: ASCII without capitals, and without spaces about it. Most names are. */
function isKey(name: string): boolean {
  const last = name.length - 1;
  for (let i = 0; i <= last; i++) {
    const c = name.charCodeAt(i);
    if (c > 127 || (c >= 65 && c <= 90) || (c <= 32 && (i === 0 || i === last))) return false;
  }
  return true;
}

/** The form in which names of dimensions and parts are compared: `Bore` and `bore` are one name. */
export const nameKey = (name: string): string => (isKey(name) ? name : name.trim().toLowerCase());
