import { textLength } from './letter-widths.ts';
import type { Box, FigureStyle, Pick, Point, TextMark, ViewName } from './sheet.ts';

/** Height of capitals of figures and words, mm (series of ISO 3098-1:2015). */
export const FIGURE_MM = 3.5;
export const SMALL_MM = 2.5;

/** Length of a text, mm. */
export const textWidth = (text: string, heightMm: number, bold = false): number => textLength(text, bold) * heightMm;

export interface TextSketch {
  readonly text: string;
  readonly at: Point;
  readonly heightMm: number;
  readonly anchor?: TextMark['anchor'];
  readonly turn?: 0 | 90;
  readonly bold?: boolean;
  readonly underlined?: boolean;
  readonly style?: FigureStyle;
  readonly stands?: readonly Pick[];
  readonly view?: ViewName | undefined;
}

/** What a line of text covers: from below its descenders to a little above its capitals. */
function textBox(at: Point, widthMm: number, heightMm: number, anchor: TextMark['anchor'], turn: 0 | 90): Box {
  const back = anchor === 'start' ? 0 : anchor === 'middle' ? widthMm / 2 : widthMm;
  const [x, y] = at;
  const below = 0.3 * heightMm;
  const above = 1.1 * heightMm;
  return turn === 0
    ? { left: x - back, right: x - back + widthMm, bottom: y - below, top: y + above }
    : { left: x - above, right: x + below, bottom: y - back, top: y - back + widthMm };
}

export function textMark(sketch: TextSketch): TextMark {
  const { text, at, heightMm, anchor = 'start', turn = 0 } = sketch;
  const widthMm = textWidth(text, heightMm, sketch.bold);
  return {
    is: 'text',
    text,
    at,
    heightMm,
    widthMm,
    anchor,
    turn,
    bold: sketch.bold ?? false,
    underlined: sketch.underlined ?? false,
    style: sketch.style ?? 'plain',
    stands: sketch.stands ?? [],
    view: sketch.view,
    box: textBox(at, widthMm, heightMm, anchor, turn),
  };
}

/** Breaks words into lines no longer than `widthMm`; a word that is longer is cut. */
export function wrapped(text: string, heightMm: number, widthMm: number): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (textWidth(longer, heightMm) <= widthMm) {
      line = longer;
      continue;
    }
    if (line !== '') lines.push(line);
    line = '';
    for (const letter of word) {
      if (textWidth(line + letter, heightMm) > widthMm) {
        lines.push(line);
        line = '';
      }
      line += letter;
    }
  }
  if (line !== '') lines.push(line);
  return lines;
}

/** A text cut to a length, with three dots where something is left out. */
export function shortened(text: string, heightMm: number, widthMm: number): string {
  if (textWidth(text, heightMm) <= widthMm) return text;
  let kept = '';
  for (const letter of text) {
    if (textWidth(`${kept}${letter}…`, heightMm) > widthMm) break;
    kept += letter;
  }
  return `${kept.trimEnd()}…`;
}
