import type { LatheScene, Point } from './scene.ts';

// A bed of which only its height is known is drawn this much wider than it is low, for the eye alone.
const WIDTH = 1.15;

/** The top of the bed across it, front to back, upwards positive; undefined while nothing is known of it. */
export function bedTop({ bed }: Pick<LatheScene, 'bed'>): readonly Point[] | undefined {
  if (bed.outline.length > 1) return bed.outline;
  if (bed.radius === undefined) return undefined;
  const half = (bed.radius * WIDTH) / 2 + bed.radius * 0.25;
  return [
    [-half, -bed.radius],
    [half, -bed.radius],
  ];
}

/** Height of an outline at a place across; undefined beside it. The higher one where it stands upright. */
function heightAt(top: readonly Point[], across: number): number | undefined {
  let height: number | undefined;
  for (let i = 1; i < top.length; i++) {
    const [[x0, y0], [x1, y1]] = [top[i - 1]!, top[i]!];
    if (across < Math.min(x0, x1) || across > Math.max(x0, x1)) continue;
    const here = x0 === x1 ? Math.max(y0, y1) : y0 + ((y1 - y0) * (across - x0)) / (x1 - x0);
    height = height === undefined ? here : Math.max(height, here);
  }
  return height;
}

const SAMPLES = 160;

/** What a disc about the line of centres has in common with what lies under an outline: nothing where it clears. */
export function discInto(top: readonly Point[], radius: number): readonly (readonly Point[])[] {
  const first = top[0];
  const last = top.at(-1);
  if (first === undefined || last === undefined || radius <= 0) return [];
  const [left, right] = [Math.max(first[0], -radius), Math.min(last[0], radius)];
  if (right <= left) return [];
  const places = [...top.map(([x]) => x).filter((x) => x > left && x < right)];
  for (let i = 0; i <= SAMPLES; i++) places.push(left + ((right - left) * i) / SAMPLES);
  places.sort((a, b) => a - b);
  const loops: Point[][] = [];
  let over: Point[] = [];
  let under: Point[] = [];
  const close = () => {
    if (over.length > 1) loops.push([...over, ...under.reverse()]);
    over = [];
    under = [];
  };
  for (const x of places) {
    const low = -Math.sqrt(Math.max(0, radius * radius - x * x));
    const height = heightAt(top, x);
    const high = height === undefined ? undefined : Math.min(height, -low);
    if (high === undefined || high <= low) close();
    else {
      over.push([x, high]);
      under.push([x, low]);
    }
  }
  close();
  return loops;
}
