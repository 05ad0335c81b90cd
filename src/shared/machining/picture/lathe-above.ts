import { cutItems, holdingRadius, saddleRange, sweptItems } from './lathe-front.ts';
import { drawnSizes, headItems, noseOf, tailItems, tailReach } from './lathe-parts.ts';
import { barItems, blockSpan, drillItems, drillReach, reachOf } from './lathe-tool.ts';
import type { PictureItem, PictureView } from './picture.ts';
import type { Cut, LatheLook, LatheScene, Point, Span } from './scene.ts';
import { area, boxAbout, line, nameIn, rect } from './shapes.ts';
import { saddleAt, stepsWithin } from './zones.ts';

/** From above, the operator's side at the foot: the room that the tool and its block have. */
export function latheAbove(scene: LatheScene, look: LatheLook): PictureView {
  const drawn = drawnSizes(scene);
  const box = aboveBox(scene);
  const block = blockOf(scene, look);
  const items: PictureItem[] = [
    ...slideItems(scene, look, box),
    ...headItems(scene, drawn),
    ...(scene.tail === undefined ? [] : tailItems(scene.tail, drawn)),
    ...sweptItems(scene),
    { is: 'work' },
    line('axis', [box.left, 0], [box.right, 0]),
    ...cutItems(look.cut, -1),
    ...(look.cut?.way === 'drilled' ? drillItems(scene, look) : []),
    ...(block === undefined ? [] : blockItems(scene, look, block)),
    ...(block === undefined ? [] : collisions(scene, block)),
    ...(block === undefined ? [] : measureItems(look, block)),
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
function blockOf(scene: LatheScene, look: LatheLook): Block | undefined {
  const { cut } = look;
  const along = blockSpan(scene, look);
  const { blockWidth, toolOverhang } = scene.saddle;
  if (along === undefined || blockWidth === undefined || cut === undefined) return undefined;
  // A bar is held in a block at the line itself.
  if (cut.way === 'inside') return { along, face: -blockWidth / 2, back: blockWidth / 2 };
  const least = leastRadius(cut);
  if (least === undefined || (cut.toolLength ?? toolOverhang) === undefined) return undefined;
  const face = least + reachOf(scene, cut);
  return { along, face, back: face + blockWidth };
}

/** The least radius that the edge comes to: of a face its inner one, the centre where none is said. */
const leastRadius = ({ from, to, radius, inner }: Cut): number | undefined => inner ?? (from === to ? 0 : radius);

function aboveBox(scene: LatheScene): PictureView['box'] {
  const drawn = drawnSizes(scene);
  const { saddle } = scene;
  const [first, last] = saddleRange(scene);
  const backs = scene.cuts.map((cut) => blockOf(scene, { tool: first, cut, shown: undefined })?.back ?? 0);
  const points: Point[] = [
    [noseOf(scene) - drawn.headstock.length - drawn.spindle * 0.4, Math.max(drawn.radius, holdingRadius(scene))],
    [scene.extent[1], -Math.max(drawn.radius, ...backs)],
    [first - (saddle.towardsHead ?? 0), 0],
    [last + (saddle.towardsTail ?? 0), 0],
  ];
  if (scene.tail !== undefined) points.push([tailReach(scene.tail, drawn)[2], drawn.tailstock.half]);
  const drill = drillReach(scene, drawn);
  if (drill !== undefined) points.push([drill, drawn.tailstock.half]);
  return boxAbout(points, drawn.radius * 0.12);
}

function slideItems(scene: LatheScene, look: LatheLook, box: PictureView['box']): readonly PictureItem[] {
  const { towardsHead, towardsTail, slideWidth } = scene.saddle;
  const tool = saddleAt(scene, look.tool, look.cut);
  if (tool === undefined) return [];
  const items: PictureItem[] = [];
  const [low, high] = [box.bottom * 0.97, box.top * 0.97];
  if (towardsHead !== undefined && towardsTail !== undefined)
    items.push(area('saddle', rect(tool - towardsHead, low * 0.8, tool + towardsTail, high * 0.8)));
  if (slideWidth !== undefined) {
    items.push(area('cross-slide', rect(tool - slideWidth / 2, low, tool + slideWidth / 2, high)));
    items.push(nameIn('cross-slide', 'cross slide', tool - slideWidth / 2, high * 0.8, tool + slideWidth / 2, high));
  }
  return items;
}

function blockItems(scene: LatheScene, look: LatheLook, { along, face, back }: Block): readonly PictureItem[] {
  const { saddle } = scene;
  const { tool, cut } = look;
  const label = nameIn('tool-block', 'tool block', along[0], -back, along[1], -face);
  if (cut?.way === 'inside')
    return [area('tool-block', rect(along[0], -back, along[1], -face)), ...barItems(look), label];
  const half = (saddle.blockWidth ?? 0) * 0.12;
  const tip = -((cut && leastRadius(cut)) ?? face);
  return [
    area('tool-block', rect(along[0], -back, along[1], -face)),
    area('tool', [
      [tool, tip],
      [tool - half, tip - half * 1.5],
      [tool - half, -face],
      [tool + half, -face],
      [tool + half, tip - half * 1.5],
    ]),
    label,
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

/** Room for the block: off the line against what stands beside the cut, or along the bed against head and tail. */
function measureItems({ shown }: LatheLook, { face }: Block): readonly PictureItem[] {
  if (shown?.at === undefined || shown.has === undefined || shown.needs === undefined || shown.margin === undefined)
    return [];
  const { kind, state, at, has, needs, margin } = shown;
  const measure = (from: Point, to: Point): readonly PictureItem[] => [
    { is: 'measure', from, to, mm: margin, means: 'margin', of: kind, state },
  ];
  switch (kind) {
    case 'tool-reach':
      // What is needed counts from the least radius of the cut, as the tool's own reach does.
      return measure([at, -(face - has + needs)], [at, -face]);
    case 'tool-block-head':
    case 'tool-block-tail': {
      if (Math.abs(has - face) < 1e-6) return measure([at, -needs], [at, -face]);
      return measure([at, -face], [kind === 'tool-block-tail' ? at - margin : at + margin, -face]);
    }
    default:
      return [];
  }
}
