import { cutItems, holdingRadius, type LatheLook, sweptItems } from './lathe-front.ts';
import { drawnSizes, headItems, noseOf, tailItems, tailReach } from './lathe-parts.ts';
import type { PictureItem, PictureView } from './picture.ts';
import type { LatheScene, Point, Span } from './scene.ts';
import { area, boxAbout, line, name, rect } from './shapes.ts';
import { stepsWithin, toolRange } from './zones.ts';

/** From above, the operator's side at the foot: the room that the tool and its block have. */
export function latheAbove(scene: LatheScene, look: LatheLook): PictureView {
  const drawn = drawnSizes(scene);
  const box = aboveBox(scene);
  const block = blockOf(scene, look);
  const items: PictureItem[] = [
    ...slideItems(scene, look.tool, box),
    ...headItems(scene, drawn),
    ...(scene.tail === undefined ? [] : tailItems(scene.tail, drawn)),
    ...sweptItems(scene),
    { is: 'work' },
    line('axis', [box.left, 0], [box.right, 0]),
    ...cutItems(look.cut, -1),
    ...(block === undefined ? [] : blockItems(scene, look, block)),
    ...(block === undefined ? [] : collisions(scene, block)),
  ];
  return { side: 'above', box, items };
}

interface Block {
  readonly along: Span;
  /** How far its face stands before the line, and its back. */
  readonly face: number;
  readonly back: number;
}

/** Where the tool block stands for the cut on show; undefined while its size or the cut is not known. */
function blockOf({ saddle }: LatheScene, { tool, cut }: LatheLook): Block | undefined {
  const { blockWidth, toolOverhang } = saddle;
  if (blockWidth === undefined || toolOverhang === undefined || cut?.radius === undefined) return undefined;
  const face = cut.radius + toolOverhang;
  return { along: [tool - blockWidth / 2, tool + blockWidth / 2], face, back: face + blockWidth };
}

function aboveBox(scene: LatheScene): PictureView['box'] {
  const drawn = drawnSizes(scene);
  const { saddle } = scene;
  const [first, last] = toolRange(scene);
  const backs = scene.cuts.map((cut) => blockOf(scene, { tool: first, cut, shown: undefined })?.back ?? 0);
  const points: Point[] = [
    [noseOf(scene) - drawn.headstock.length - drawn.spindle * 0.4, Math.max(drawn.radius, holdingRadius(scene))],
    [scene.extent[1], -Math.max(drawn.radius, ...backs)],
    [first - (saddle.towardsHead ?? 0), 0],
    [last + (saddle.towardsTail ?? 0), 0],
  ];
  if (scene.tail !== undefined) points.push([tailReach(scene.tail, drawn)[2], drawn.tailstock.half]);
  return boxAbout(points, drawn.radius * 0.12);
}

function slideItems({ saddle }: LatheScene, tool: number, box: PictureView['box']): readonly PictureItem[] {
  const { towardsHead, towardsTail, slideWidth } = saddle;
  const items: PictureItem[] = [];
  const [low, high] = [box.bottom * 0.97, box.top * 0.97];
  if (towardsHead !== undefined && towardsTail !== undefined)
    items.push(area('saddle', rect(tool - towardsHead, low * 0.8, tool + towardsTail, high * 0.8)));
  if (slideWidth !== undefined) {
    items.push(area('cross-slide', rect(tool - slideWidth / 2, low, tool + slideWidth / 2, high)));
    items.push(name('cross-slide', 'cross slide', [tool, high * 0.9], slideWidth));
  }
  return items;
}

function blockItems({ saddle }: LatheScene, { tool, cut }: LatheLook, { along, face, back }: Block) {
  const half = (saddle.blockWidth ?? 0) * 0.12;
  const tip = -(cut?.radius ?? face);
  return [
    area('tool-block', rect(along[0], -back, along[1], -face)),
    area('tool', [
      [tool, tip],
      [tool - half, tip - half * 1.5],
      [tool - half, -face],
      [tool + half, -face],
      [tool + half, tip - half * 1.5],
    ]),
    name('tool-block', 'tool block', [tool, -(face + back) / 2], along[1] - along[0]),
  ];
}

/** Where the block would stand in the work, the chuck or plate, or the tailstock. */
function collisions(scene: LatheScene, { along, face, back }: Block): readonly PictureItem[] {
  const loops: (readonly Point[])[] = [];
  for (const { from, to, most } of stepsWithin(scene.swept, along[0], along[1]))
    if (most > face) loops.push(rect(from, -Math.min(most, back), to, -face));
  const against = (from: number, to: number, half: number) => {
    const [a, b] = [Math.max(from, along[0]), Math.min(to, along[1])];
    if (b > a && half > face) loops.push(rect(a, -Math.min(half, back), b, -face));
  };
  const nose = scene.nose;
  const { head, tail } = scene;
  if (nose !== undefined && head.is === 'chuck' && head.diameter !== undefined && head.length !== undefined)
    against(nose, nose + head.length - (head.depth ?? 0), head.diameter / 2);
  if (nose !== undefined && head.is === 'plate' && head.diameter !== undefined)
    against(nose, nose + (head.face ?? 0), head.diameter / 2);
  if (tail?.barrelDiameter !== undefined && tail.centreLength !== undefined && tail.out !== undefined) {
    const root = tail.point + tail.centreLength;
    against(root, root + tail.out, tail.barrelDiameter / 2);
  }
  return loops.length === 0 ? [] : [area('collision', ...loops)];
}
