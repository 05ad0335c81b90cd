/** A flat face of a pattern across the axis that it is cut along: a wire that stands along the axis cannot make it. */
export interface Step {
  readonly at: number;
  readonly areaMm2: number;
}

export interface CutsGiven {
  readonly low: number;
  readonly high: number;
  readonly steps: readonly Step[];
  /** Of the boards, mm; any order. */
  readonly thicknesses: readonly number[];
  readonly glueMm: number;
  /** No section is made thinner where it can be helped, mm. */
  readonly leastMm: number;
}

/** A section from one cut to the next, the halves of its glue joints taken off. */
export interface Layer {
  readonly low: number;
  readonly high: number;
}

/** Faces nearer to one another than this are cut as one, mm. */
const ONE_MM = 0.05;
/** A step that is left within a section costs so many joints, were it as large as the largest. */
const STEP_COST = 20;
/** Forced below the least thickness: worse than any number of joints. */
const THIN_COST = 1000;

/**
 * Where a pattern is cut into sections: at its steps, so that each section is as nearly straight as it may be, and between them
 * by the thickest board in stock. Small steps are left within a section, to be carved, where a cut would make one too thin or a
 * joint is not worth it.
 *
 * @returns the sections from low to high; nothing where there is no board, or nothing to cut.
 */
export function chooseCuts({ low, high, steps, thicknesses, glueMm, leastMm }: CutsGiven): readonly Layer[] {
  const thickest = Math.max(0, ...thicknesses);
  if (!(thickest > 0) || !(high - low > 0)) return [];
  const inner = together(steps.filter(({ at }) => at > low + ONE_MM && at < high - ONE_MM));
  const largest = Math.max(1e-9, ...inner.map(({ areaMm2 }) => areaMm2));
  const places = [low, ...inner.map(({ at }) => at), high];
  const end = places.length - 1;
  const cost: number[] = [0];
  const from: number[] = [0];
  for (let j = 1; j <= end; j++) {
    cost[j] = Infinity;
    let missed = 0;
    for (let i = j - 1; i >= 0; i--) {
      const cuts = filled(places[i]!, places[j]!, i === 0, j === end, thickest, glueMm, leastMm);
      const thin = Math.min(...cuts.map((layer) => layer.high - layer.low)) < leastMm - 1e-9 ? THIN_COST : 0;
      // Nearer together than a joint is thick, nothing can be cut between.
      const sum = cuts.length === 0 ? Infinity : cost[i]! + cuts.length + missed + thin;
      if (sum < cost[j]!) {
        cost[j] = sum;
        from[j] = i;
      }
      // Going back, the place just looked at comes to lie within.
      missed += i > 0 ? (STEP_COST * inner[i - 1]!.areaMm2) / largest : 0;
    }
  }
  const layers: Layer[] = [];
  for (let j = end; j > 0; j = from[j]!) {
    const i = from[j]!;
    layers.unshift(...filled(places[i]!, places[j]!, i === 0, j === end, thickest, glueMm, leastMm));
  }
  return layers;
}

/** Sections between two places, whole boards first; a remainder that is too thin takes some of the board before it. */
function filled(
  low: number,
  high: number,
  isFirst: boolean,
  isLast: boolean,
  thickest: number,
  glueMm: number,
  leastMm: number,
): readonly Layer[] {
  const half = glueMm / 2;
  const layers: Layer[] = [];
  let at = isFirst ? low : low + half;
  const end = isLast ? high : high - half;
  while (end - at > thickest + 1e-9) {
    const rest = end - at - thickest - glueMm;
    const thickness = rest < leastMm ? Math.max(thickest / 2, thickest - (leastMm - rest)) : thickest;
    layers.push({ low: at, high: at + thickness });
    at += thickness + glueMm;
  }
  if (end - at > 1e-9) layers.push({ low: at, high: end });
  return layers;
}

/** Faces that lie as good as in one plane, at the place of the largest of them. */
function together(steps: readonly Step[]): readonly Step[] {
  const sorted = [...steps].sort((a, b) => a.at - b.at);
  const groups: Step[][] = [];
  for (const step of sorted) {
    const group = groups.at(-1);
    if (group && step.at - group[0]!.at <= ONE_MM) group.push(step);
    else groups.push([step]);
  }
  return groups.map((group) => ({
    at: group.reduce((best, step) => (step.areaMm2 > best.areaMm2 ? step : best)).at,
    areaMm2: group.reduce((sum, { areaMm2 }) => sum + areaMm2, 0),
  }));
}
