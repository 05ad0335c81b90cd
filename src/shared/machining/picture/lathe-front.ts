import { drawnSizes, headItems, noseOf, tailItems, tailReach } from './lathe-parts.ts';
import { drillReach, toolItems } from './lathe-tool.ts';
import type { PictureItem, PictureView } from './picture.ts';
import type { Cut, LatheLook, LatheScene, Point, Span, SweptStep } from './scene.ts';
import { area, boxAbout, line, nameIn, rect } from './shapes.ts';
import { outlineLoops, unsureLoops } from './swept-outline.ts';
import { gapOf, readZones, saddleAt, stepsIn, toolRange } from './zones.ts';

/** Bounds nearer to each other than this are one line to the eye, mm. */
const UNSURE = 0.05;
/** A length that can be seen, mm. */
const LEAST = 0.1;

/** Across the bed from the operator's place, headstock to the left. */
export function latheFront(scene: LatheScene, look: LatheLook): PictureView {
  const drawn = drawnSizes(scene);
  const box = frontBox(scene);
  const items: PictureItem[] = [
    ...bedItems(scene, box.left, box.right),
    ...headItems(scene, drawn),
    ...(scene.tail === undefined ? [] : tailItems(scene.tail, drawn)),
    ...sweptItems(scene),
    ...steadyItems(scene),
    { is: 'work' },
    ...saddleItems(scene, look),
    ...collisions(scene, look),
    line('axis', [box.left, 0], [box.right, 0]),
    ...cutItems(look.cut, 1),
    ...toolItems(scene, look),
    ...measureItems(scene, look, box.top),
  ];
  return { side: 'front', box, items };
}

export const sweptItems = (scene: LatheScene): readonly PictureItem[] => {
  const unsure = unsureLoops(scene.swept, UNSURE);
  return [area('swept', ...outlineLoops(scene)), ...(unsure.length > 0 ? [area('unsure', ...unsure)] : [])];
};

function frontBox(scene: LatheScene): PictureView['box'] {
  const drawn = drawnSizes(scene);
  const nose = noseOf(scene);
  const { saddle, bed, gap } = scene;
  const [first, last] = saddleRange(scene);
  const below = Math.max(bed.radius ?? 0, gapOf(scene) === undefined ? 0 : (gap?.radius ?? 0), drawn.radius);
  const points: Point[] = [
    [nose - drawn.headstock.length - drawn.spindle * 0.4, 0],
    [scene.extent[0], drawn.radius],
    [scene.extent[1], -below - drawn.bedDepth],
    [first - (saddle.towardsHead ?? 0), 0],
    [last + (saddle.towardsTail ?? 0), 0],
    [0, saddle.toolHeight === undefined ? 0 : saddle.toolHeight * 0.5],
  ];
  const across = holdingRadius(scene);
  points.push([nose, across]);
  if (scene.tail !== undefined) points.push([tailReach(scene.tail, drawn)[2], drawn.tailstock.half]);
  const drill = drillReach(scene, drawn);
  if (drill !== undefined) points.push([drill, drawn.tailstock.half]);
  const { left, bottom, right, top } = boxAbout(points, drawn.radius * 0.12);
  // Room for a measure over everything.
  return { left, bottom, right, top: top + drawn.radius * 0.3 };
}

/** Where the saddle may be asked to stand, over all cuts. */
export function saddleRange(scene: LatheScene): Span {
  const places = scene.cuts.flatMap((cut) =>
    [cut.from, cut.to].flatMap((at) => {
      const edge = saddleAt(scene, at, cut);
      return edge === undefined ? [] : [edge];
    }),
  );
  return places.length === 0 ? toolRange(scene) : [Math.min(...places), Math.max(...places)];
}

export const holdingRadius = ({ head }: LatheScene): number =>
  head.is === 'centre' || head.diameter === undefined ? 0 : head.diameter / 2;

function bedItems(scene: LatheScene, left: number, right: number): readonly PictureItem[] {
  const { bed, gap } = scene;
  if (bed.radius === undefined) return [];
  const { bedDepth } = drawnSizes(scene);
  const top = -bed.radius;
  const over = gapOf(scene);
  const bottom = -Math.max(bed.radius, over === undefined ? 0 : (gap?.radius ?? 0)) - bedDepth;
  const label = nameIn('bed', 'bed', right - bedDepth * 1.5, top - bedDepth, right, top);
  if (over === undefined || gap === undefined) return [area('bed', rect(left, bottom, right, top)), label];
  const floor = -gap.radius;
  return [
    area('bed', [
      [left, bottom],
      [right, bottom],
      [right, top],
      [over[1], top],
      [over[1], floor],
      [over[0], floor],
      [over[0], top],
      [left, top],
    ]),
    nameIn('bed', 'gap', over[0], bottom, over[1], floor),
    label,
  ];
}

function steadyItems({ steady }: LatheScene): readonly PictureItem[] {
  if (steady?.radius === undefined) return [];
  const [half, r] = [(steady.width ?? 10) / 2, steady.radius];
  return [
    area(
      'steady',
      rect(steady.at - half, r, steady.at + half, r * 1.6),
      rect(steady.at - half, -r, steady.at + half, -r * 1.6),
    ),
  ];
}

/** Wings and cross slide, as far as they are known, where they stand for the cut. */
function saddleItems(scene: LatheScene, { tool: at, cut }: LatheLook): readonly PictureItem[] {
  const { saddle, bed } = scene;
  const tool = saddleAt(scene, at, cut);
  if (tool === undefined) return [];
  const items: PictureItem[] = [];
  const { wingRadius, towardsHead, towardsTail, slideRadius, slideWidth } = saddle;
  const hasWings = wingRadius !== undefined && towardsHead !== undefined && towardsTail !== undefined;
  if (hasWings) {
    const foot = bed.radius ?? wingRadius * 1.15;
    items.push(area('saddle', rect(tool - towardsHead, -foot, tool + towardsTail, -wingRadius)));
    items.push(nameIn('saddle', 'saddle', tool, -foot, tool + towardsTail, -wingRadius));
  }
  if (slideRadius !== undefined && slideWidth !== undefined) {
    const foot = wingRadius ?? bed.radius ?? slideRadius * 1.2;
    items.push(area('cross-slide', rect(tool - slideWidth / 2, -foot, tool + slideWidth / 2, -slideRadius)));
    items.push(nameIn('cross-slide', 'cross slide', tool - slideWidth / 2, -foot, tool + slideWidth / 2, -slideRadius));
  }
  return items;
}

/** Where the work would be in bed, wings or cross slide, seen across the line. */
function collisions(scene: LatheScene, { tool, cut }: LatheLook): readonly PictureItem[] {
  const loops = readZones(scene, tool, cut)
    .filter(({ margin }) => margin < 0)
    .flatMap((zone) => belowTop(stepsIn(scene, zone), zone.radius));
  return loops.length === 0 ? [] : [area('collision', ...loops)];
}

/** What of some steps lies beyond a radius, seen below the line: neighbours are one outline. */
function belowTop(steps: readonly SweptStep[], radius: number): readonly (readonly Point[])[] {
  const loops: Point[][] = [];
  let end = Number.NaN;
  for (const { from, to, most } of steps) {
    if (most <= radius) continue;
    let loop = loops.at(-1);
    if (loop === undefined || Math.abs(from - end) > 1e-9) {
      loop = [[from, -radius]];
      loops.push(loop);
    } else loop.pop();
    loop.push([from, -most], [to, -most], [to, -radius]);
    end = to;
  }
  return loops;
}

/** The way of the edge; `side` −1 puts it before the line, where the tool really is, as seen from above. */
export function cutItems(cut: Cut | undefined, side: 1 | -1): readonly PictureItem[] {
  if (cut?.radius === undefined) return [];
  const { from, to, radius, inner } = cut;
  if (from === to) return [line('cut', [from, side * radius], [from, side * (inner ?? 0)])];
  return [line('cut', [from, side * radius], [to, side * radius])];
}

function measureItems(scene: LatheScene, { shown }: LatheLook, top: number): readonly PictureItem[] {
  if (shown === undefined) return [];
  const { kind, state, at, has, needs, margin } = shown;
  switch (kind) {
    case 'over-bed':
    case 'in-gap':
    case 'over-saddle':
    case 'over-cross-slide':
      if (at === undefined || has === undefined || needs === undefined || margin === undefined) return [];
      return [{ is: 'measure', from: [at, -needs], to: [at, -has], mm: margin, means: 'margin', of: kind, state }];
    case 'between-centres': {
      if (needs === undefined) return [];
      const from = scene.head.is === 'centre' ? scene.extent[0] : noseOf(scene);
      const to = scene.tail?.point ?? scene.extent[1];
      const high = top - drawnSizes(scene).radius * 0.22;
      return [
        {
          is: 'measure',
          from: [from, high],
          to: [to, high],
          mm: to - from,
          means: 'needed',
          of: kind,
          state,
        },
      ];
    }
    case 'barrel-travel': {
      // A barrel that need not come out is not measured.
      if (scene.tail === undefined || needs === undefined || needs < LEAST) return [];
      const drawn = drawnSizes(scene);
      const [root, body] = tailReach(scene.tail, drawn);
      const high = drawn.barrel * 1.3;
      return [{ is: 'measure', from: [root, high], to: [body, high], mm: needs, means: 'needed', of: kind, state }];
    }
    default:
      return [];
  }
}
