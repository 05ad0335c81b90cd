import type { DimensionId } from '../../base/ids.ts';
import type { Changes, Numbers } from '../../plan/numbers.ts';
import type { Share, Verdict, VerdictState } from '../setup-check.ts';
import type { World, Worlds } from '../setups/world.ts';
import type { Question, Term } from './question.ts';

/** Margins nearer to nothing than this are taken for it, mm: what rounding loses in a chain of dimensions is far less. */
export const NEAR_NOTHING_MM = 1e-6;

/** A dimension without limits is moved by this to see what hangs on it, mm or degrees. */
const STEP = 0.01;

/** What a shift of a dimension by 1 can move the margin by at most, roughly: only carriers that may come to be the worst are looked at closely. */
const MOST_PER_MM = 1.5;

/** Worlds in which one dimension stands at one of its limits, made once for all questions of a set-up. */
export interface Judging {
  readonly worlds: Worlds;
  readonly numbers: Numbers;
  /** The world with one dimension changed. */
  moved(dimension: DimensionId, by: number): World;
  /** How far a dimension may stray; undefined for one that cannot: a count, a thread. */
  deviationsOf(dimension: DimensionId): Deviations | undefined;
  /** What limits could add to the reach of a piece at the very most. */
  slackOf(piece: number): number;
}

interface Deviations {
  readonly minus: number;
  readonly plus: number;
  readonly isBound: boolean;
}

export function judging(worlds: Worlds): Judging {
  const known = new Map<DimensionId, Map<number, World>>();
  const strays = new Map<DimensionId, Deviations | undefined>();
  const slacks = new Map<number, number>();
  const { numbers } = worlds.work;
  const on: Judging = {
    worlds,
    numbers,
    moved(dimension, by) {
      let moves = known.get(dimension);
      if (!moves) {
        moves = new Map();
        known.set(dimension, moves);
      }
      let world = moves.get(by);
      if (!world) {
        world = worlds.changed(new Map([[dimension, by]]));
        moves.set(by, world);
      }
      return world;
    },
    deviationsOf(dimension) {
      if (!strays.has(dimension)) strays.set(dimension, deviationsOf(dimension, numbers));
      return strays.get(dimension);
    },
    slackOf(piece) {
      let slack = slacks.get(piece);
      if (slack === undefined) {
        slack = reachOfLimits(worlds.hangsOn(piece), on);
        slacks.set(piece, slack);
      }
      return slack;
    },
  };
  return on;
}

/** What limits do to a margin: `minus` ≤ 0 ≤ `plus`. */
interface Spread {
  readonly minus: number;
  readonly plus: number;
  readonly shares: readonly Share[];
}

const marginOf = (term: Term | undefined): number => (term ? term.has - term.needs : Infinity);

/** Whether a question is clear as drawn; limits are not counted. Undefined where it cannot be judged. */
export function clearsAsDrawn({ unknown, carriers, term }: Question, { worlds }: Judging): boolean | undefined {
  if (unknown.length > 0) return undefined;
  for (let i = 0; i < carriers; i++) if (marginOf(term(worlds.drawn, i)) < -NEAR_NOTHING_MM) return false;
  return true;
}

/** The least margin of a question in a world. */
export function leastMargin({ carriers, term }: Question, world: World): number {
  let least = Infinity;
  for (let i = 0; i < carriers; i++) least = Math.min(least, marginOf(term(world, i)));
  return world.broken ? Number.NaN : least;
}

/**
 * Judges one question: its margin as drawn, and what limits make of it.
 *
 * Each dimension that a carrier hangs on is set to its lower and to its upper limit, all else as drawn, and the margin worked out anew; the losses add up
 * (worst case), and where they could decide, all dimensions at their worse limits together are looked at as well. Where they could not by far, the lower
 * limit is not looked at by itself. Every carrier that limits could make the worst counts. What
 * comes near a stretch within its limits counts as in it.
 *
 * @returns undefined where nothing comes near what is asked
 */
export function judge(question: Question, on: Judging): Verdict | undefined {
  const { kind, operation, unknown, carriers } = question;
  const head = { kind, operation: operation } as const;
  if (unknown.length > 0) {
    const nothing = { margin: undefined, has: undefined, needs: undefined, at: undefined, carriedBy: undefined };
    return { ...head, state: 'unknown', ...nothing, band: { minus: 0, plus: 0 }, shares: [], unknown, remedies: [] };
  }
  const terms = Array.from({ length: carriers }, (_, i) => question.term(on.worlds.drawn, i));
  const worst = terms.reduce((least, term, i) => (marginOf(term) < marginOf(terms[least]) ? i : least), 0);
  const term = terms[worst];
  if (!term) return undefined;
  const margin = marginOf(term);
  const own = spreadOf(question, worst, margin, on);
  let [least, most] = [margin + own.minus, margin + own.plus];
  terms.forEach((other, i) => {
    if (i === worst) return;
    const far = question.atMost?.(i);
    if (far && far.margin - on.slackOf(far.piece) > least) return;
    const here = marginOf(other);
    if (here === Infinity) {
      least = Math.min(least, comesNear(question, i, on));
      return;
    }
    if (here - reachOfLimits(dimensionsOf(question, i, on), on) > least) return;
    const spread = spreadOf(question, i, here, on);
    least = Math.min(least, here + spread.minus);
    most = Math.min(most, here + spread.plus);
  });
  most = Math.max(most, margin);
  const state: VerdictState = margin < -NEAR_NOTHING_MM ? 'hits' : least < -NEAR_NOTHING_MM ? 'at the limit' : 'clears';
  return {
    ...head,
    state,
    margin,
    has: term.has,
    needs: term.needs,
    band: { minus: Math.min(0, least - margin), plus: most - margin },
    at: term.at,
    carriedBy: term.piece,
    shares: own.shares,
    unknown: [],
    remedies: [],
  };
}

/** The dimensions that a carrier hangs on. */
function dimensionsOf(question: Question, carrier: number, { worlds }: Judging): ReadonlySet<DimensionId> {
  const noted = new Set<DimensionId>();
  question.term(worlds.noting(noted), carrier);
  return noted;
}

function deviationsOf(id: DimensionId, numbers: Numbers): Deviations | undefined {
  const record = numbers.record(id);
  const resolved = numbers.resolved(id);
  if (record?.kind !== 'dimension' || resolved?.value === undefined) return undefined;
  const { measure } = record;
  if (measure.type === 'size' && (measure.form === 'count' || measure.form === 'thread')) return undefined;
  const { limits, value } = resolved;
  return limits
    ? { minus: limits.lower - value, plus: limits.upper - value, isBound: true }
    : { minus: 0, plus: 0, isBound: false };
}

/** The margin of a carrier with one dimension moved; undefined where that leaves nothing to ask. */
function marginMoved(question: Question, carrier: number, world: World): number | undefined {
  const term = question.term(world, carrier);
  return term && !world.broken ? marginOf(term) : undefined;
}

function spreadOf(question: Question, carrier: number, margin: number, on: Judging): Spread {
  let [minus, plus] = [0, 0];
  const shares: Share[] = [];
  const worst = new Map<DimensionId, number>();
  for (const dimension of dimensionsOf(question, carrier, on)) {
    const deviations = on.deviationsOf(dimension);
    if (!deviations) continue;
    const up = deviations.plus > 0 ? deviations.plus : STEP;
    const down = deviations.minus < 0 ? deviations.minus : -STEP;
    const change = (by: number): number => (marginMoved(question, carrier, on.moved(dimension, by)) ?? margin) - margin;
    const [more, less] = [change(up), change(down)];
    const [rising, falling] = [more / up, less / down];
    const sensitivity = Math.abs(rising) >= Math.abs(falling) ? rising : falling;
    if (Math.abs(sensitivity) < 1e-7) continue;
    // Only what limits allow counts for the band; a step was taken to see what hangs on it.
    const atUp = deviations.plus > 0 ? more : 0;
    const atDown = deviations.minus < 0 ? less : 0;
    const share = { minus: Math.min(0, atUp, atDown), plus: Math.max(0, atUp, atDown) };
    shares.push({ dimension, sensitivity, ...share });
    minus += share.minus;
    plus += share.plus;
    if (share.minus < 0) worst.set(dimension, atUp < atDown ? up : down);
  }
  // Together they differ from their sum in the second order only: that matters where it could decide.
  if (worst.size > 1 && margin > -NEAR_NOTHING_MM && margin + 1.5 * minus < 0) {
    const together = marginMoved(question, carrier, on.worlds.changed(worst satisfies Changes));
    if (together !== undefined) minus = Math.min(minus, together - margin);
  }
  return { minus, plus, shares: inOrder(shares, on) };
}

/** Largest first: what a dimension moves by, then how large it is itself. */
function inOrder(shares: readonly Share[], { numbers }: Judging): readonly Share[] {
  const sizeOf = ({ dimension }: Share) => Math.abs(numbers.resolved(dimension)?.value ?? 0);
  const weight = ({ sensitivity }: Share) => Math.round(Math.abs(sensitivity) * 1e5);
  return [...shares].sort(
    (a, b) => weight(b) - weight(a) || sizeOf(b) - sizeOf(a) || (a.dimension < b.dimension ? -1 : 1),
  );
}

/** What limits of some dimensions could take from a margin at the very most. */
function reachOfLimits(dimensions: Iterable<DimensionId>, on: Judging): number {
  let sum = 0;
  for (const id of dimensions) {
    const deviations = on.deviationsOf(id);
    if (!deviations) continue;
    const per = on.numbers.resolved(id)?.unit === 'angle' ? 10 : MOST_PER_MM;
    sum += per * Math.max(-deviations.minus, deviations.plus);
  }
  return sum;
}

/** The least margin that a carrier comes to which as drawn does not come near, with one dimension at a limit. */
function comesNear(question: Question, carrier: number, on: Judging): number {
  let least = Infinity;
  for (const dimension of dimensionsOf(question, carrier, on)) {
    const deviations = on.deviationsOf(dimension);
    if (!deviations?.isBound) continue;
    for (const by of [deviations.minus, deviations.plus]) {
      if (by === 0) continue;
      least = Math.min(least, marginMoved(question, carrier, on.moved(dimension, by)) ?? Infinity);
    }
  }
  return least;
}
