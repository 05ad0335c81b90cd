/** Figures of one run: the middle, and the value that 99 of 100 stay below. In ms. */
export interface Times {
  readonly median: number;
  readonly p99: number;
}

export function timesOf(samples: readonly number[]): Times {
  const sorted = [...samples].sort((a, b) => a - b);
  const at = (share: number): number => sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]!;
  return { median: at(0.5), p99: at(0.99) };
}

/**
 * Processor times of a whole piece of work, done `runs` times after one run to warm up; garbage is collected between
 * runs. Time by the clock would tell how busy the machine is: the same work took up to ten times as long beside others.
 */
export function timesOfRuns(runs: number, work: () => void): Times {
  const { gc } = globalThis as { gc?: () => void };
  const samples: number[] = [];
  for (let run = -1; run < runs; run++) {
    gc?.();
    const start = process.cpuUsage();
    work();
    const { user, system } = process.cpuUsage(start);
    if (run >= 0) samples.push((user + system) / 1000);
  }
  return timesOf(samples);
}

/** `12.3 ms` or `4.56 µs`. */
export const inWords = (ms: number): string => (ms >= 0.1 ? `${ms.toFixed(1)} ms` : `${(ms * 1000).toFixed(2)} µs`);

/** One line that holds a ratio against its goal. */
export function ratioLine(what: string, ours: number, theirs: number, goal: number): string {
  const ratio = theirs / ours;
  return `${ratio >= goal ? 'reached' : 'MISSED '}  ${what}: ${ratio.toFixed(1)}× (goal ${goal}×; ${inWords(ours)} against ${inWords(theirs)})`;
}

/** One line that holds a time against the most that it may be. */
export function goalLine(what: string, ms: number, mostMs: number): string {
  return `${ms <= mostMs ? 'reached' : 'MISSED '}  ${what}: ${inWords(ms)} (goal ${inWords(mostMs)})`;
}
