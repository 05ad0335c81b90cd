import type { Box, Sheet } from '../../../../shared/sheet/sheet.ts';

/** How the paper lies in its pane: pixels per mm, and where its upper left corner is, in pixels. */
export interface PaperLook {
  readonly scale: number;
  readonly x: number;
  readonly y: number;
}

interface Size {
  readonly width: number;
  readonly height: number;
}

const MARGIN_PX = 10;
const LEAST = 0.05;
const MOST = 60;
/** Small parts are not blown up beyond what a lens would show. */
const MOST_FITTED = 8;

/** Puts a piece of a sheet in the middle of the pane. @param heightMm of the whole sheet, whose y goes upwards. */
export function fitBox({ left, right, bottom, top }: Box, heightMm: number, pane: Size): PaperLook {
  const [width, height] = [Math.max(1, right - left), Math.max(1, top - bottom)];
  const scale = Math.min(
    MOST_FITTED,
    Math.max(LEAST, Math.min((pane.width - 2 * MARGIN_PX) / width, (pane.height - 2 * MARGIN_PX) / height)),
  );
  return {
    scale,
    x: (pane.width - width * scale) / 2 - left * scale,
    y: (pane.height - height * scale) / 2 - (heightMm - top) * scale,
  };
}

/** The whole paper in the middle of the pane. */
export const fitPaper = ({ widthMm, heightMm }: Pick<Sheet, 'widthMm' | 'heightMm'>, pane: Size): PaperLook =>
  fitBox({ left: 0, bottom: 0, right: widthMm, top: heightMm }, heightMm, pane);

/** What is drawn in and about the views; the whole frame when there is nothing in them. */
export function boxOfViews({ marks, frame }: Pick<Sheet, 'marks' | 'frame'>): Box {
  let box: Box | undefined;
  const take = (left: number, bottom: number, right: number, top: number) => {
    box = box
      ? {
          left: Math.min(box.left, left),
          bottom: Math.min(box.bottom, bottom),
          right: Math.max(box.right, right),
          top: Math.max(box.top, top),
        }
      : { left, bottom, right, top };
  };
  for (const mark of marks) {
    if (mark.view === undefined) continue;
    if (mark.is === 'text') take(mark.box.left, mark.box.bottom, mark.box.right, mark.box.top);
    else for (const [x, y] of mark.points) take(x, y, x, y);
  }
  return box ?? frame;
}

/** Comes closer by the factor about a place in the pane. */
export function zoomPaper(look: PaperLook, factor: number, x: number, y: number): PaperLook {
  const scale = Math.min(MOST, Math.max(LEAST, look.scale * factor));
  const by = scale / look.scale;
  return { scale, x: x - (x - look.x) * by, y: y - (y - look.y) * by };
}

export const panPaper = (look: PaperLook, dx: number, dy: number): PaperLook => ({
  ...look,
  x: look.x + dx,
  y: look.y + dy,
});
