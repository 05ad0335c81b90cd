import type { RowStatus } from './row.ts';

/**
 * ISO metric threads: coarse and fine pitches in mm by nominal diameter in mm.
 * Source: ISO 261:1998 and ISO 262. Coarse pitches read on published pitch charts; fine pitches to M20 read on published
 * charts of fine threads, except M14x1; M14x1 and those above M20 from memory.
 */
export interface MetricThread {
  readonly diameter: number;
  readonly coarse: number;
  readonly fine: readonly number[];
}

const row = (diameter: number, coarse: number, ...fine: readonly number[]): MetricThread => ({
  diameter,
  coarse,
  fine,
});

export const metricThreads: readonly MetricThread[] = [
  row(1, 0.25, 0.2),
  row(1.1, 0.25),
  row(1.2, 0.25, 0.2),
  row(1.4, 0.3, 0.2),
  row(1.6, 0.35, 0.2),
  row(1.8, 0.35),
  row(2, 0.4, 0.25),
  row(2.2, 0.45),
  row(2.5, 0.45, 0.35),
  row(3, 0.5, 0.35),
  row(3.5, 0.6),
  row(4, 0.7, 0.5),
  row(4.5, 0.75),
  row(5, 0.8, 0.5),
  row(6, 1, 0.75),
  row(7, 1),
  row(8, 1.25, 1, 0.75),
  row(9, 1.25),
  row(10, 1.5, 1.25, 1, 0.75),
  row(11, 1.5),
  row(12, 1.75, 1.5, 1.25, 1),
  row(14, 2, 1.5, 1.25, 1),
  row(16, 2, 1.5, 1),
  row(18, 2.5, 2, 1.5, 1),
  row(20, 2.5, 2, 1.5, 1),
  row(22, 2.5, 2, 1.5, 1),
  row(24, 3, 2, 1.5, 1),
  row(27, 3, 2, 1.5, 1),
  row(30, 3.5, 3, 2, 1.5, 1),
  row(33, 3.5, 3, 2, 1.5),
  row(36, 4, 3, 2, 1.5),
  row(39, 4, 3, 2, 1.5),
  row(42, 4.5, 4, 3, 2, 1.5),
  row(45, 4.5, 4, 3, 2, 1.5),
  row(48, 5, 4, 3, 2, 1.5),
  row(52, 5, 4, 3, 2, 1.5),
  row(56, 5.5, 4, 3, 2, 1.5),
  row(60, 5.5, 4, 3, 2, 1.5),
  row(64, 6, 4, 3, 2, 1.5),
];

/** Coarse pitch in mm of a nominal diameter in mm; undefined when it has none. */
export const coarsePitch = (diameter: number): number | undefined =>
  metricThreads.find((thread) => thread.diameter === diameter)?.coarse;

/** Whether a listed pitch was read on a page; undefined when the standard's list has no such pitch of the diameter. */
export function metricThreadStatus(diameter: number, pitch: number): RowStatus | undefined {
  const thread = metricThreads.find((row) => row.diameter === diameter);
  if (thread?.coarse === pitch) return 'read';
  if (!thread?.fine.includes(pitch)) return undefined;
  return diameter > 20 || (diameter === 14 && pitch === 1) ? 'from memory' : 'read';
}
