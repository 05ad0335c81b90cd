import type { LatheScene, Point, SweptStep } from './scene.ts';

/** Runs of steps that hang together, the empty ones left out. */
function runs(swept: readonly SweptStep[]): readonly (readonly SweptStep[])[] {
  const all: SweptStep[][] = [];
  for (const step of swept) {
    if (step.most <= 0) continue;
    const last = all.at(-1);
    const before = last?.at(-1);
    if (last === undefined || before === undefined || step.from > before.to + 1e-9) all.push([step]);
    else last.push(step);
  }
  return all;
}

/** The upper edge of a run of steps. */
function upper(run: readonly SweptStep[]): readonly Point[] {
  const points: Point[] = [];
  for (const step of run) {
    const r = step.most;
    const last = points.at(-1);
    // Neighbours of the same radius are one line.
    if (last !== undefined && last[1] === r) points[points.length - 1] = [step.to, r];
    else points.push([step.from, r], [step.to, r]);
  }
  return points;
}

/** What the work sweeps, seen across the line it turns about: one closed outline for each piece that hangs together. */
function sweptLoops(swept: readonly SweptStep[]): readonly (readonly Point[])[] {
  return runs(swept).map((run) => {
    const over = upper(run);
    return [...over, ...over.map(([x, y]): Point => [x, -y]).reverse()];
  });
}

/** The same from the outline itself, where there is one: slopes run straight. */
export function outlineLoops({ outline, swept }: Pick<LatheScene, 'outline' | 'swept'>): readonly (readonly Point[])[] {
  if (outline.length < 2) return sweptLoops(swept);
  const over = outline.map(({ at, r }): Point => [at, r]);
  return [[...over, ...over.map(([x, y]): Point => [x, -y]).reverse()]];
}

/** Where the bound from above and the one from below differ by more than can be seen: the work may reach into it. */
export function unsureLoops(swept: readonly SweptStep[], leastMm: number): readonly (readonly Point[])[] {
  return swept.flatMap(({ from, to, most, least }) => {
    if (most - least < leastMm) return [];
    const over: readonly Point[] = [
      [from, least],
      [to, least],
      [to, most],
      [from, most],
    ];
    return [over, over.map(([x, y]): Point => [x, -y])];
  });
}

export const greatestRadius = (swept: readonly SweptStep[]): number =>
  swept.reduce((most, step) => Math.max(most, step.most), 0);
