import { bedTop, discInto } from './bed-section.ts';
import { holdingRadius } from './lathe-front.ts';
import { drawnSizes } from './lathe-parts.ts';
import { reachOf } from './lathe-tool.ts';
import type { PictureItem, PictureView } from './picture.ts';
import type { LatheLook, LatheScene, Point } from './scene.ts';
import { area, boxAbout, circle, line, nameIn, rect } from './shapes.ts';
import { readZones, saddleAt, type Zone } from './zones.ts';

/** Along the bed from the tailstock: the operator stands to the left. */
export function latheEnd(scene: LatheScene, look: LatheLook): PictureView {
  const drawn = drawnSizes(scene);
  const box = endBox(scene);
  const holding = holdingRadius(scene);
  const zones = readZones(scene, look.tool, look.cut);
  const items: PictureItem[] = [
    ...bedItems(scene),
    ...(holding > 0 ? [area('holding', circle(holding))] : []),
    area('swept', circle(drawn.radius)),
    { is: 'work' },
    ...zones
      .filter(({ most }) => most < drawn.radius - 1e-6)
      .map(({ most }): PictureItem => ({ is: 'line', role: 'limit', points: circle(most), closed: true })),
    ...saddleItems(scene, look),
    ...collisions(scene, zones),
    line('axis', [box.left, 0], [box.right, 0]),
    line('axis', [0, box.bottom], [0, box.top]),
    ...measureItems(look),
  ];
  return { side: 'end', box, items };
}

/** Half width of the saddle and what it carries as it is drawn: no figure of the machine tells it. */
function halfWidth(scene: LatheScene): number {
  const top = bedTop(scene);
  const wide = top === undefined ? 0 : Math.max(...top.map(([x]) => Math.abs(x)));
  return Math.max(wide, (scene.saddle.wingRadius ?? 0) * 0.9, (scene.saddle.slideRadius ?? 0) * 0.9);
}

const blockAt = (scene: LatheScene, { cut }: LatheLook): number => {
  // A bar lies along the line: its block stands at the line, beside the work.
  if (cut?.way === 'inside') return 0;
  const radius = cut?.radius ?? drawnSizes(scene).radius;
  return radius + reachOf(scene, cut);
};

/** The block is about as deep as it is wide (for the eye). */
const blockDepth = ({ saddle }: LatheScene): number => saddle.blockWidth ?? 0;

function endBox(scene: LatheScene): PictureView['box'] {
  const drawn = drawnSizes(scene);
  const half = halfWidth(scene);
  const below = Math.max(scene.bed.radius ?? 0, scene.gap?.radius ?? 0, drawn.radius);
  const cuts = scene.cuts.map((cut) => blockAt(scene, { cut, tool: 0, shown: undefined }) + blockDepth(scene));
  const left = scene.saddle.toolHeight === undefined ? 0 : Math.max(0, ...cuts);
  const points: Point[] = [
    [-Math.max(half, drawn.radius, left), -below - drawn.bedDepth],
    [Math.max(half, drawn.radius), Math.max(drawn.radius, holdingRadius(scene))],
  ];
  const { left: l, bottom, right, top } = boxAbout(points, drawn.radius * 0.12);
  return { left: l, bottom, right, top: top + drawn.radius * 0.3 };
}

/** The bed cut across. */
function bedItems(scene: LatheScene): readonly PictureItem[] {
  const top = bedTop(scene);
  if (top === undefined) return [];
  const { bedDepth } = drawnSizes(scene);
  const low = Math.min(...top.map(([, y]) => y)) - bedDepth;
  const [first, last] = [top[0]!, top.at(-1)!];
  return [
    area('bed', [...top, [last[0], low], [first[0], low]]),
    nameIn('bed', 'bed', first[0], low, last[0], low + bedDepth),
  ];
}

function saddleItems(scene: LatheScene, look: LatheLook): readonly PictureItem[] {
  const { saddle, bed } = scene;
  const { wingRadius, slideRadius, slideWidth, toolHeight, blockWidth } = saddle;
  const half = halfWidth(scene);
  const items: PictureItem[] = [];
  if (saddleAt(scene, look.tool, look.cut) === undefined) return items;
  if (wingRadius !== undefined) {
    items.push(area('saddle', rect(-half, -(bed.radius ?? wingRadius * 1.15), half, -wingRadius)));
  }
  if (slideRadius !== undefined && slideWidth !== undefined) {
    const foot = wingRadius ?? bed.radius ?? slideRadius * 1.2;
    items.push(area('cross-slide', rect(-half * 0.94, -foot, half * 0.94, -slideRadius)));
    items.push(nameIn('cross-slide', 'cross slide', 0, -foot, half * 0.94, -slideRadius));
  }
  if (toolHeight !== undefined && blockWidth !== undefined) {
    const near = blockAt(scene, look);
    const far = near + blockDepth(scene);
    const foot = slideRadius ?? toolHeight * 1.4;
    if (foot > toolHeight) items.push(area('cross-slide', rect(-far, -foot, -near, -toolHeight)));
    items.push(area('tool-block', rect(-far, -toolHeight, -near, toolHeight * 0.45)));
    items.push(nameIn('tool-block', 'tool block', -far, -toolHeight, -near, 0));
  }
  if (toolHeight !== undefined && look.cut?.radius !== undefined && look.cut.way === 'outside') {
    const thick = toolHeight * 0.32;
    const [tip, root] = [-look.cut.radius, -blockAt(scene, look)];
    if (root < tip) {
      items.push(
        area('tool', [
          [tip, 0],
          [root, 0],
          [root, -thick],
          [tip - thick * 0.25, -thick],
        ]),
      );
    }
  }
  return items;
}

function collisions(scene: LatheScene, zones: readonly (Zone & { readonly most: number; readonly margin: number })[]) {
  const loops = zones.filter(({ margin }) => margin < 0).flatMap((zone) => discInto(topOf(scene, zone), zone.most));
  return loops.length === 0 ? [] : [area('collision', ...loops)];
}

/** The top of what lies under the work in a zone, across the bed. */
function topOf(scene: LatheScene, { kind, radius }: Zone): readonly Point[] {
  if (kind === 'over-bed' && scene.bed.outline.length > 1) return scene.bed.outline;
  const half = Math.max(halfWidth(scene), radius);
  return [
    [-half, -radius],
    [half, -radius],
  ];
}

function measureItems({ shown }: LatheLook): readonly PictureItem[] {
  if (shown?.has === undefined || shown.needs === undefined || shown.margin === undefined) return [];
  const { kind, state, has, needs, margin } = shown;
  const isRadial = kind === 'over-bed' || kind === 'in-gap' || kind === 'over-saddle' || kind === 'over-cross-slide';
  if (!isRadial) return [];
  return [{ is: 'measure', from: [0, -needs], to: [0, -has], mm: margin, means: 'margin', of: kind, state }];
}
