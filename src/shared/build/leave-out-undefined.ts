/** The same value without the members that are undefined, at any depth: records never hold them. */
export function leaveOutUndefined<T>(value: T): T {
  if (Array.isArray(value)) return value.map(leaveOutUndefined) as T;
  if (typeof value !== 'object' || value === null) return value;
  const kept = Object.entries(value).flatMap(([key, member]) =>
    member === undefined ? [] : [[key, leaveOutUndefined<unknown>(member)] as const],
  );
  return Object.fromEntries(kept) as T;
}
