/** A broken promise inside the program (not something the user did). */
export class BugError extends Error {
  override readonly name = 'BugError';
}

/** Ends an exhaustive `switch`: a new member of the union becomes a compile error here. */
export function unreachable(value: never): never {
  throw new BugError(`Unexpected value: ${JSON.stringify(value)}`);
}

/** Narrows or throws a {@link BugError} that says which promise was broken. */
export function assert(condition: unknown, promise: string): asserts condition {
  if (!condition) throw new BugError(`Broken promise: ${promise}`);
}
