/** One weighing: hours from the first, mass in kg. */
export interface Weighing {
  readonly hours: number;
  readonly massKg: number;
}

export interface DryingCase {
  /** In order of time. */
  readonly weighings: readonly Weighing[];
  /** Of the pattern before it was coated, kg. */
  readonly bareKg: number;
  /** Smallest step of the scale, kg. */
  readonly resolutionKg: number;
  /** Dry when the last interval lost no more than this share of the coating's own mass: 0.001 (ASTM C566: 0.1 %, from memory). */
  readonly share: number;
  /** Shortest interval that counts, hours: 1 (EN 1097-5), 2 suggested. */
  readonly leastHours: number;
}

/** Stable codes of what the log says. */
export type DryingState =
  /** Fewer than three weighings far enough apart: nothing can be said. */
  | 'too-few'
  /** The scale cannot see so small a loss: its step is more than the share of the coating's mass. */
  | 'scale-too-coarse'
  | 'losing'
  /** Heavier than before by more than the share: it takes up moisture where it stands. */
  | 'gaining'
  /** One interval holds the rule, twice running is asked for. */
  | 'nearly'
  | 'constant';

export interface Drying {
  readonly state: DryingState;
  /** Of the coating as last weighed, kg. */
  readonly coatingKg: number;
  /** Loss of the last counted interval as a share of the coating's mass, undefined before there is one. */
  readonly lastShare: number | undefined;
  /** Fit m(t) = end + span · e^(−t/τ): where it ends, and how much is still to leave, kg. Undefined where it cannot be fitted. */
  readonly fit:
    | { readonly endKg: number; readonly spanKg: number; readonly hours: number; readonly leavingKg: number }
    | undefined;
  /** Hours from the last weighing until the rule will hold, by the fit. */
  readonly hoursLeft: number | undefined;
}

/**
 * Weighing to constant mass, reckoned on the coating's own mass (the loss of a coat of 200 g is lost in a pattern with an
 * arbor of 2 kg). Constant when two intervals running, each of `leastHours` or more, lose no more than `share` of it, and the
 * scale can tell so small a loss. Free water only: what gypsum has bound does not leave at drying temperatures.
 *
 * @throws nothing; weighings out of order are taken in order of time.
 */
export function dryingOf({ weighings, bareKg, resolutionKg, share, leastHours }: DryingCase): Drying {
  const log = [...weighings].sort((a, b) => a.hours - b.hours);
  const last = log.at(-1);
  const coatingKg = last ? last.massKg - bareKg : 0;
  const fit = fitDecay(log);
  const intervals = countedIntervals(log, leastHours);
  const shares = intervals.map(([from, to]) => (from.massKg - to.massKg) / Math.max(coatingKg, 1e-9));
  const lastShare = shares.at(-1);
  const hold = shares.map((loss) => Math.abs(loss) <= share + 1e-12);
  const state = stateOf(shares, hold, coatingKg > 0 ? resolutionKg / coatingKg : 0, share);
  return { state, coatingKg, lastShare, fit, hoursLeft: hoursLeft(state, fit, coatingKg, share, leastHours) };
}

/** A coarse scale still sees a large loss: only what it shows as constant says nothing. */
function stateOf(shares: readonly number[], hold: readonly boolean[], step: number, share: number): DryingState {
  const last = shares.at(-1);
  const coarse = step > share * (1 + 1e-9);
  if (last !== undefined && Math.abs(last) > share + (coarse ? step : 1e-12)) return last > 0 ? 'losing' : 'gaining';
  if (coarse) return 'scale-too-coarse';
  if (shares.length < 2) return 'too-few';
  return hold.at(-2) ? 'constant' : 'nearly';
}

/** Back from the last weighing: the nearest earlier one that is far enough off, and so on. Latest last. */
function countedIntervals(log: readonly Weighing[], leastHours: number): readonly (readonly [Weighing, Weighing])[] {
  const intervals: (readonly [Weighing, Weighing])[] = [];
  let to = log.length - 1;
  for (let from = to - 1; from >= 0; from--) {
    if (log[to]!.hours - log[from]!.hours < leastHours - 1e-9) continue;
    intervals.unshift([log[from]!, log[to]!]);
    to = from;
  }
  return intervals;
}

/** Hours from the last weighing until an interval of `leastHours` loses no more than the share. */
function hoursLeft(
  state: DryingState,
  fit: Drying['fit'],
  coatingKg: number,
  share: number,
  leastHours: number,
): number | undefined {
  if (state === 'constant') return 0;
  if (!fit || coatingKg <= 0) return undefined;
  // loss over an interval that begins at t: leaving · e^(−t/τ) · (1 − e^(−Δ/τ)); two such intervals are asked for, and the
  // share is then of the coating when it is dry
  const lossNow = fit.leavingKg * (1 - Math.exp(-leastHours / fit.hours));
  const least = share * (coatingKg - fit.leavingKg);
  if (least <= 0) return undefined;
  const wait = lossNow <= least ? 0 : fit.hours * Math.log(lossNow / least);
  return wait + 2 * leastHours;
}

/**
 * Least squares of m(t) = end + span · e^(−t/τ). For a given τ it is linear; τ is found by a golden-section search over its
 * logarithm. Needs three weighings at different times and a loss.
 */
function fitDecay(log: readonly Weighing[]): Drying['fit'] {
  const [first] = log;
  const last = log.at(-1);
  if (!first || !last || log.length < 3 || last.hours <= first.hours || last.massKg >= first.massKg) return undefined;
  const span = last.hours - first.hours;
  const at = (logTau: number) => linearFit(log, first.hours, Math.exp(logTau));
  let low = Math.log(span / 50);
  let high = Math.log(span * 10);
  const ratio = (Math.sqrt(5) - 1) / 2;
  for (let i = 0; i < 80; i++) {
    const a = high - ratio * (high - low);
    const b = low + ratio * (high - low);
    if (at(a).error <= at(b).error) high = b;
    else low = a;
  }
  const hours = Math.exp((low + high) / 2);
  const { end, size } = linearFit(log, first.hours, hours);
  const leavingKg = size * Math.exp(-span / hours);
  if (!(size > 0) || !(end > 0)) return undefined;
  return { endKg: end, spanKg: size, hours, leavingKg };
}

function linearFit(log: readonly Weighing[], t0: number, tau: number): { end: number; size: number; error: number } {
  let s = 0;
  let sx = 0;
  let sy = 0;
  let sxx = 0;
  let sxy = 0;
  for (const { hours, massKg } of log) {
    const x = Math.exp(-(hours - t0) / tau);
    s += 1;
    sx += x;
    sy += massKg;
    sxx += x * x;
    sxy += x * massKg;
  }
  const det = s * sxx - sx * sx;
  const size = det > 1e-15 ? (s * sxy - sx * sy) / det : 0;
  const end = (sy - size * sx) / s;
  let error = 0;
  for (const { hours, massKg } of log) error += (massKg - end - size * Math.exp(-(hours - t0) / tau)) ** 2;
  return { end, size, error };
}
