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

/** The whole paper in the middle of the pane. */
export function fitPaper(paper: { readonly widthMm: number; readonly heightMm: number }, pane: Size): PaperLook {
  const scale = Math.max(
    LEAST,
    Math.min((pane.width - 2 * MARGIN_PX) / paper.widthMm, (pane.height - 2 * MARGIN_PX) / paper.heightMm),
  );
  return { scale, x: (pane.width - paper.widthMm * scale) / 2, y: (pane.height - paper.heightMm * scale) / 2 };
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
