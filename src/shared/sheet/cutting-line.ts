import type { StationId } from '../base/ids.ts';
import { arrowMark, lineMark, plainOf } from './marks.ts';
import type { Box, Mark, Point } from './sheet.ts';
import { textMark } from './text.ts';
import type { ViewPicture, Way } from './view-picture.ts';

const LETTER_MM = 5;
const STROKE_MM = 6;
const ARROW_LENGTH_MM = 8;

export interface CuttingLine {
  readonly marks: readonly Mark[];
  readonly texts: readonly Box[];
  readonly lines: readonly Box[];
}

/**
 * The trace of a cut in another view: a thin chain line with thick ends, arrows in the direction of sight, and letters
 * (ISO 128-3:2020, cuts and sections). In mm of paper from where zero of the part lies.
 *
 * @param sight +1 when the eye looks towards greater places of the way.
 */
export function cuttingLine(
  view: ViewPicture,
  way: Way,
  at: number,
  sight: 1 | -1,
  station: StationId,
  times: number,
): CuttingLine {
  const owner = plainOf(view.name, station);
  const { box } = view;
  const [low, high] = way === 'across' ? [box.bottom, box.top] : [box.left, box.right];
  const along = at * times;
  const point = (a: number, c: number): Point => (way === 'across' ? [a, c] : [c, a]);
  const marks: Mark[] = [lineMark(owner, 'centre', [point(along, low * times), point(along, high * times)])];
  const texts: Box[] = [];
  const lines: Box[] = [];
  for (const side of [-1, 1] as const) {
    const edge = (side < 0 ? low : high) * times;
    const end = edge + side * STROKE_MM;
    marks.push(lineMark(owner, 'cutting', [point(along, edge - side), point(along, end)]));
    const tip = point(along + sight * ARROW_LENGTH_MM, end);
    marks.push(lineMark(owner, 'dimension', [point(along, end), tip]), arrowMark(owner, tip, point(sight, 0)));
    // The letter stands behind the arrow, off the line.
    const letterAt = point(along - sight * 4, end);
    const letter = textMark({
      text: 'A',
      at: [letterAt[0], letterAt[1] - LETTER_MM / 2],
      heightMm: LETTER_MM,
      anchor: 'middle',
      bold: true,
      stands: [station],
      view: view.name,
    });
    marks.push(letter);
    texts.push(letter.box);
    const [[ax, ay], [bx, by]] = [point(along, edge), tip];
    lines.push({
      left: Math.min(ax, bx) - 0.5,
      right: Math.max(ax, bx) + 0.5,
      bottom: Math.min(ay, by) - 0.5,
      top: Math.max(ay, by) + 0.5,
    });
  }
  return { marks, texts, lines };
}
