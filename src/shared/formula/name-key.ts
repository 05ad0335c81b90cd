/** The form in which names of dimensions and parts are compared: upper and lower case, and runs of spaces, alike. */
export function nameKey(name: string): string {
  return name.trim().replace(/\s+/g, ' ').toLowerCase();
}
