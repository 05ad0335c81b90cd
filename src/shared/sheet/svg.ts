import { lineStyles, type Mark, type Point, type Sheet, type TextMark } from './sheet.ts';

/** Inks of a printed sheet: assumed figures look as if sketched in with a pencil. */
const INK = '#000000';
const PENCIL = '#6b6b6b';

/** Thousandths of a millimetre are finer than any printer; no -0, no exponents, no trailing zeros. */
const svgNumber = (value: number): string => {
  const text = (Math.round(value * 1000) / 1000 + 0).toFixed(3).replace(/\.?0+$/, '');
  return text === '-0' ? '0' : text;
};

/** Points of the sheet as the `d` of an SVG path, y downwards from the top of the sheet. */
export function pathData(points: readonly Point[], closed: boolean, heightMm: number): string {
  const steps = points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${svgNumber(x)} ${svgNumber(heightMm - y)}`);
  return `${steps.join('')}${closed ? 'Z' : ''}`;
}

/** Dashes of an assumed figure's lines, mm. */
export const ASSUMED_DASHES_MM: readonly number[] = [1.5, 1];

/** The sheet as an SVG file, full size in mm. Equal sheets give equal files. */
export function sheetSvg(sheet: Sheet, title: string): string {
  const { widthMm, heightMm } = sheet;
  const size = `width="${svgNumber(widthMm)}mm" height="${svgNumber(heightMm)}mm" viewBox="0 0 ${svgNumber(widthMm)} ${svgNumber(heightMm)}"`;
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" ${size} font-family="Barlow, 'DejaVu Sans', sans-serif">`,
    `<title>${escaped(title)}</title>`,
    `<rect width="${svgNumber(widthMm)}" height="${svgNumber(heightMm)}" fill="#ffffff"/>`,
    ...sheet.marks.map((mark) => markSvg(mark, heightMm)),
    '</svg>',
    '',
  ].join('\n');
}

function markSvg(mark: Mark, heightMm: number): string {
  const ink = mark.style === 'assumed' ? PENCIL : INK;
  switch (mark.is) {
    case 'fill':
      return `<path d="${pathData(mark.points, true, heightMm)}" fill="${ink}"/>`;
    case 'text':
      return textSvg(mark, heightMm, ink);
    case 'line': {
      const { widthMm, dashesMm } = lineStyles[mark.kind];
      const dashes = mark.style === 'assumed' && dashesMm.length === 0 ? ASSUMED_DASHES_MM : dashesMm;
      const dash = dashes.length === 0 ? '' : ` stroke-dasharray="${dashes.map(svgNumber).join(' ')}"`;
      return `<path d="${pathData(mark.points, mark.closed, heightMm)}" fill="none" stroke="${ink}" stroke-width="${widthMm}"${dash} stroke-linecap="round" stroke-linejoin="round"/>`;
    }
  }
}

/** Height of letters' bodies over that of their capitals, as in Barlow (1000 over 700). */
export const BODY_PER_CAPITAL = 10 / 7;

function textSvg(
  { text, at: [x, y], heightMm: size, widthMm, anchor, turn, bold, underlined }: TextMark,
  heightMm: number,
  ink: string,
): string {
  const [px, py] = [svgNumber(x), svgNumber(heightMm - y)];
  const parts = [
    `x="${px}" y="${py}"`,
    `font-size="${svgNumber(size * BODY_PER_CAPITAL)}"`,
    `textLength="${svgNumber(widthMm)}" lengthAdjust="spacingAndGlyphs"`,
    anchor === 'start' ? '' : `text-anchor="${anchor}"`,
    turn === 0 ? '' : `transform="rotate(-90 ${px} ${py})"`,
    bold ? 'font-weight="600"' : '',
    underlined ? 'text-decoration="underline"' : '',
    `fill="${ink}"`,
  ];
  return `<text ${parts.filter((part) => part !== '').join(' ')}>${escaped(text)}</text>`;
}

const entities: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

/** Text for XML; characters that XML cannot hold become spaces. */
const escaped = (text: string): string =>
  text.replace(/[&<>"]/g, (letter) => entities[letter]!).replace(/[\p{Cc}\p{Cs}\ufffe\uffff]/gu, ' ');
