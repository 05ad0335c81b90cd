import { type Side, sidesOf } from '../../solid/outline.ts';
import type { Extrusion } from '../../solid/placed.ts';
import type { Pose } from './pose.ts';
import { type Reach, takeEven, takeExact } from './reach.ts';
import { SLIVER_MM } from './sweep-piece.ts';

/** Part of an outline along which x rises and m rises or falls throughout: straight, or within a quarter of a circle. */
interface Run {
  readonly x0: number;
  readonly m0: number;
  readonly x1: number;
  readonly m1: number;
  /** Of an arc: the centre, and the half of it: m = cm ± √(R² − (x − cx)²). Radius 0 = straight. */
  readonly cx: number;
  readonly cm: number;
  readonly radius: number;
  readonly half: 1 | -1;
}

/**
 * An outline drawn out square to the line. With w along its axis and m square to both axis and line, all measured from the line,
 * r(x)² = max m(x)² + max w²: the second is the same everywhere, the first comes from the outline seen in (x, m). Between the
 * corners of the outline and the four sides of its arcs m rises or falls throughout, so |m| is greatest at an end.
 */
export function acrossExtrusion({ a0, a1, outline }: Extrusion, pose: Pose): Reach {
  const { ox, oy, oz, ux, uy, uz, vx, vy, vz, ay, az } = pose;
  const base = oy * ay + oz * az;
  const w = Math.abs(base + a0) > Math.abs(base + a1) ? base + a0 : base + a1;
  // In (x, m): m along (−az, ay) across the line.
  const [mo, mu, mv] = [oz * ay - oy * az, uz * ay - uy * az, vz * ay - vy * az];
  const runs = sidesOf(outline).flatMap((side) => runsOf(side, [ox, ux, vx], [mo, mu, mv]));
  let [lo, hi] = [Infinity, -Infinity];
  const breaks: number[] = [];
  for (const { x0, x1 } of runs) {
    lo = Math.min(lo, x0);
    hi = Math.max(hi, x1);
    breaks.push(x0, x1);
  }
  return {
    lo,
    hi,
    breaks,
    within(from, to, found) {
      // Plain numbers throughout: this runs for every cell of every profile.
      let farthest = -1;
      let m = 0;
      let x = 0;
      let least = -1;
      for (const run of runs) {
        if (run.x1 - from <= SLIVER_MM || to - run.x0 <= SLIVER_MM) continue;
        const x0 = Math.max(run.x0, from);
        const x1 = Math.min(run.x1, to);
        const m0 = run.x0 < from ? mAt(run, from) : run.m0;
        const m1 = run.x1 > to ? mAt(run, to) : run.m1;
        const off0 = Math.abs(m0);
        const off1 = Math.abs(m1);
        if (off0 > farthest) {
          farthest = off0;
          m = m0;
          x = x0;
        }
        if (off1 > farthest) {
          farthest = off1;
          m = m1;
          x = x1;
        }
        if (x0 - from < SLIVER_MM && to - x1 < SLIVER_MM) {
          const nearest = m0 * m1 <= 0 ? 0 : Math.min(off0, off1);
          if (nearest > least) least = nearest;
        }
      }
      if (farthest < 0) return;
      takeExact(found, Math.sqrt(w * w + m * m), x, w * ay - m * az, w * az + m * ay);
      if (least >= 0) takeEven(found, Math.sqrt(w * w + least * least));
    },
  };
}

function mAt({ x0, m0, x1, m1, cx, cm, radius, half }: Run, x: number): number {
  if (radius === 0) return m0 + ((m1 - m0) * (x - x0)) / (x1 - x0);
  return cm + half * Math.sqrt(Math.max(0, radius * radius - (x - cx) * (x - cx)));
}

type Row = readonly [origin: number, perU: number, perV: number];

/** The runs of a side; those that stand square to the line are left to their neighbours, which meet them at their ends. */
function runsOf({ from, to, arc }: Side, [ox, ux, vx]: Row, [om, um, vm]: Row): readonly Run[] {
  const xOf = (u: number, v: number) => ox + ux * u + vx * v;
  const mOf = (u: number, v: number) => om + um * u + vm * v;
  const start = { x: xOf(from.u, from.v), m: mOf(from.u, from.v) };
  const end = { x: xOf(to.u, to.v), m: mOf(to.u, to.v) };
  if (!arc) return run(start, end, 0, 0, 0);
  const [cx, cm] = [xOf(arc.centre.u, arc.centre.v), mOf(arc.centre.u, arc.centre.v)];
  const { radius, sweep } = arc;
  // The arc in (x, m) may run the other way round: the shape may be mirrored.
  const turn = Math.sign(ux * vm - vx * um) * sweep;
  const first = Math.atan2(start.m - cm, start.x - cx);
  const quarter = Math.PI / 2;
  const points = [start];
  const step = Math.sign(turn);
  for (let k = step > 0 ? Math.floor(first / quarter) + 1 : Math.ceil(first / quarter) - 1; ; k += step) {
    if (step > 0 ? k * quarter >= first + turn : k * quarter <= first + turn) break;
    const side = ((k % 4) + 4) % 4;
    points.push({ x: cx + radius * (quarters[side] ?? 0), m: cm + radius * (quarters[(side + 3) % 4] ?? 0) });
  }
  points.push(end);
  return points.slice(1).flatMap((point, i) => run(points[i]!, point, cx, cm, radius));
}

/** Cosines of 0, 90, 180 and 270 degrees; the sines are those of the quarter before. */
const quarters = [1, 0, -1, 0];

interface At {
  readonly x: number;
  readonly m: number;
}

function run(a: At, b: At, cx: number, cm: number, radius: number): readonly Run[] {
  const [p, q] = a.x < b.x ? [a, b] : [b, a];
  if (q.x - p.x <= SLIVER_MM) return [];
  const half = (p.m + q.m) / 2 >= cm ? 1 : -1;
  return [{ x0: p.x, m0: p.m, x1: q.x, m1: q.m, cx, cm, radius, half }];
}
