import { type Drawn, drawnSizes } from './lathe-parts.ts';
import type { PictureItem } from './picture.ts';
import type { Cut, LatheLook, LatheScene, Span } from './scene.ts';
import { area, nameIn, rect } from './shapes.ts';
import { saddleAt } from './zones.ts';

/** How far a tool in the tailstock, with the barrel behind it, reaches for any of the cuts. */
export function drillReach(scene: LatheScene, drawn: Drawn): number | undefined {
  const ends = scene.cuts
    .filter(({ way }) => way === 'drilled')
    .map(({ from, to, toolLength }) => Math.max(from, to) + (toolLength ?? drawn.barrel * 4));
  if (ends.length === 0) return undefined;
  return Math.max(...ends) + drawn.barrel * 2.4 + drawn.tailstock.length;
}

/** Where the block stands along the bed for the cut on show; undefined while its width is not known, or it is not used. */
export function blockSpan(scene: LatheScene, { tool, cut }: LatheLook): Span | undefined {
  const { blockWidth } = scene.saddle;
  const middle = saddleAt(scene, tool, cut);
  if (blockWidth === undefined || middle === undefined) return undefined;
  if (cut === undefined || cut.way === 'inside') return [middle - blockWidth / 2, middle + blockWidth / 2];
  return [tool + cut.block[0] * blockWidth, tool + cut.block[1] * blockWidth];
}

/** From the front of the block to the edge, as far as it is known; drawn as long as the block is wide where it is not. */
export const reachOf = ({ saddle }: LatheScene, cut: Cut | undefined): number =>
  cut?.toolLength ?? saddle.toolOverhang ?? saddle.blockWidth ?? 0;

/** A drill, a boring bar or a turning tool. From the front the block stands before everything: its outline alone. */
export function toolItems(scene: LatheScene, look: LatheLook): readonly PictureItem[] {
  const { toolHeight } = scene.saddle;
  const { tool, cut } = look;
  const items: PictureItem[] = [];
  if (cut?.way === 'drilled') return drillItems(scene, look);
  const span = blockSpan(scene, look);
  if (toolHeight !== undefined && span !== undefined) {
    items.push(area('tool-block', rect(span[0], -toolHeight, span[1], toolHeight * 0.45)));
    items.push(nameIn('tool-block', 'tool block', span[0], -toolHeight, span[1], -toolHeight * 0.3));
  }
  if (cut?.way === 'inside') return [...items, ...barItems(look)];
  const half = (toolHeight ?? drawnSizes(scene).radius * 0.16) * 0.16;
  items.push(area('tool', rect(tool - half, -half * 1.6, tool + half, half * 0.4)));
  return items;
}

/** Seen from the front and from above a boring bar lies alike: along the line, as far off it as it cuts. */
export function barItems({ tool, cut }: LatheLook): readonly PictureItem[] {
  if (cut?.toolLength === undefined || cut.radius === undefined) return [];
  const half = Math.min(cut.toolRadius ?? cut.radius * 0.4, cut.radius * 0.8);
  const nose = Math.min(half, cut.toolLength * 0.1);
  return [
    area('tool', [
      [tool, -cut.radius],
      [tool + nose, -cut.radius + half * 0.3],
      [tool + nose, -cut.radius + half * 0.4],
      [tool + cut.toolLength, -cut.radius + half * 0.4],
      [tool + cut.toolLength, -cut.radius + half * 2.2],
      [tool, -cut.radius + half * 2.2],
    ]),
  ];
}

/** A drill in the tailstock: its point at the place, behind it the barrel. */
export function drillItems(scene: LatheScene, { tool, cut }: LatheLook): readonly PictureItem[] {
  if (cut === undefined) return [];
  const drawn = drawnSizes(scene);
  const half = cut.toolRadius ?? cut.radius ?? drawn.barrel * 0.4;
  const length = cut.toolLength ?? drawn.barrel * 4;
  const [root, body] = [tool + length, tool + length + drawn.barrel * 2.4];
  return [
    area('tool', [
      [tool, 0],
      [tool + half * 0.6, half],
      [root, half],
      [root, -half],
      [tool + half * 0.6, -half],
    ]),
    area('barrel', rect(root, -drawn.barrel, body, drawn.barrel)),
    area('tailstock', rect(body, -drawn.tailstock.half, body + drawn.tailstock.length, drawn.tailstock.half)),
  ];
}
