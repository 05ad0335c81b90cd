import type { Box, Paper, Scale } from './sheet.ts';

/** A sheet in one of its two ways. */
export interface PaperForm {
  readonly paper: Paper;
  readonly widthMm: number;
  readonly heightMm: number;
}

/** Trimmed sizes, mm: ISO 5457:1999, table 1 (ISO 216 A series), the short side first. */
const sides: Readonly<Record<Paper, readonly [number, number]>> = {
  A4: [210, 297],
  A3: [297, 420],
  A2: [420, 594],
  A1: [594, 841],
  A0: [841, 1189],
};

/** The ways a sheet is used: lying, and A4 upright as well. */
export function formsOf(paper: Paper): readonly PaperForm[] {
  const [short, long] = sides[paper];
  const lying: PaperForm = { paper, widthMm: long, heightMm: short };
  return paper === 'A4' ? [lying, { paper, widthMm: short, heightMm: long }] : [lying];
}

/** The drawing frame: a filing margin of 20 mm on the left, 10 mm elsewhere (ISO 5457:1999, 4.2). */
export const frameOf = ({ widthMm, heightMm }: PaperForm): Box => ({
  left: 20,
  bottom: 10,
  right: widthMm - 10,
  top: heightMm - 10,
});

const scale = (paper: number, part: number): Scale => ({ paper, part, words: `${paper} : ${part}` });

/** ISO 5455:1979, table 1, the greatest first; beyond it the series goes on in the same steps, as the standard allows. */
export const scales: readonly Scale[] = [
  ...[1000, 500, 200, 100, 50, 20, 10, 5, 2].map((times) => scale(times, 1)),
  scale(1, 1),
  ...[2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000, 20_000, 50_000, 100_000].map((over) => scale(1, over)),
];
