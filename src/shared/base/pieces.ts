/** Work that takes its time, done a piece at each `next`. It may be left at any piece, and is then as if it had not begun. */
export type Pieces<T> = Generator<undefined, T>;

/** Does all pieces in one go. */
export function allOf<T>(pieces: Pieces<T>): T {
  for (;;) {
    const step = pieces.next();
    if (step.done) return step.value;
  }
}
