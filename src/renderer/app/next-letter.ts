/** The n-th letter of issues, counted from 0: A … Z, AA, AB … as drawing offices go on after Z. */
function letterAt(n: number): string {
  const last = String.fromCharCode(65 + (n % 26));
  return n < 26 ? last : letterAt(Math.floor(n / 26) - 1) + last;
}

/** The first letter of issues that is not taken. */
export function nextLetter(taken: readonly string[]): string {
  const letters = new Set(taken.map((letter) => letter.toUpperCase()));
  let n = 0;
  while (letters.has(letterAt(n))) n++;
  return letterAt(n);
}
