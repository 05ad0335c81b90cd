/** The word that a typed beginning means, whatever its case; what stands there now when it means none. */
export function choiceOf(choices: readonly string[], typed: string, now: string): string {
  const wanted = typed.toLowerCase();
  const begun = wanted === '' ? undefined : choices.find((choice) => choice.toLowerCase().startsWith(wanted));
  return begun ?? (choices.includes(now) ? now : (choices[0] ?? ''));
}
