/** Stretches of a line: from, to, from, to, … ascending and apart from one another. */
export type Intervals = readonly number[];

/** Brings stretches in any order (from ≤ to, in pairs) into ascending ones, joining those nearer than `gap`. */
export function joined(pairs: Intervals, gap: number): Intervals {
  if (pairs.length <= 2) return pairs;
  const order = Array.from({ length: pairs.length / 2 }, (_, i) => i).sort((a, b) => pairs[2 * a]! - pairs[2 * b]!);
  const out: number[] = [];
  for (const i of order) {
    const from = pairs[2 * i]!;
    const to = pairs[2 * i + 1]!;
    if (out.length > 0 && from <= out.at(-1)! + gap) out[out.length - 1] = Math.max(out.at(-1)!, to);
    else out.push(from, to);
  }
  return out;
}

/** What of `from`..`to` the stretches leave; remains shorter than `least` are not worth keeping. */
export function without(from: number, to: number, taken: Intervals, least: number): Intervals {
  const out: number[] = [];
  let at = from;
  for (let i = 0; i < taken.length; i += 2) {
    const start = Math.min(taken[i]!, to);
    if (start - at > least) out.push(at, start);
    at = Math.max(at, taken[i + 1]!);
  }
  if (to - at > least) out.push(at, to);
  return out;
}
