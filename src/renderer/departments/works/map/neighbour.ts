import type { Box } from './places.ts';

export type Direction = 'up' | 'down' | 'left' | 'right';

/**
 * The box that an arrow key leads to: the nearest whose middle lies that way. What lies straight ahead counts as nearer
 * than what lies aside.
 * @returns undefined when there is none that way.
 */
export function neighbour(boxes: Readonly<Record<string, Box>>, from: string, way: Direction): string | undefined {
  const here = boxes[from];
  if (here === undefined) return Object.keys(boxes)[0];
  const middle = (box: Box) => ({ x: box.x + box.width / 2, y: box.y + box.height / 2 });
  const start = middle(here);
  let best: { readonly id: string; readonly far: number } | undefined;
  for (const [id, box] of Object.entries(boxes)) {
    if (id === from) continue;
    const { x, y } = middle(box);
    const [along, aside] =
      way === 'up' || way === 'down'
        ? [(y - start.y) * (way === 'down' ? 1 : -1), Math.abs(x - start.x)]
        : [(x - start.x) * (way === 'right' ? 1 : -1), Math.abs(y - start.y)];
    if (along < 8) continue;
    const far = along + 2 * aside;
    if (best === undefined || far < best.far) best = { id, far };
  }
  return best?.id;
}
