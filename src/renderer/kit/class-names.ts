/** Joins class names, leaving out those that do not apply. */
export const classNames = (...names: readonly (string | false | undefined)[]): string =>
  names.filter(Boolean).join(' ');
