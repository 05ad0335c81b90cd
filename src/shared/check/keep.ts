/** @returns `before` where `now` holds the very same entries, so that its identity tells that nothing changed. */
export function keepList<T>(before: readonly T[] | undefined, now: readonly T[]): readonly T[] {
  if (!before || before.length !== now.length) return now;
  for (let i = 0; i < now.length; i++) if (before[i] !== now[i]) return now;
  return before;
}
