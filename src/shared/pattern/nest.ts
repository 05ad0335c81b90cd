import { regionArea } from '../solid/flat-region.ts';
import type { Board } from './boards.ts';
import type { Section } from './cut-sections.ts';
import { packRectangles } from './pack-rectangles.ts';

/** A section laid on a board: the rectangle about it, from the board's corner along its length and its width. */
export interface LaidSection {
  readonly section: string;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  /** Turned by a quarter. */
  readonly turned: boolean;
}

/** One board with what is cut from it. */
export interface NestedBoard {
  /** Index of its kind in the casting's list, and which of that kind, from 1. */
  readonly board: number;
  readonly nth: number;
  readonly laid: readonly LaidSection[];
  /** Of the board's length; the rest stays in stock. */
  readonly usedMm: number;
}

export interface Nesting {
  readonly boards: readonly NestedBoard[];
  /** Sections that are thinner than their board: it is first sliced to their thickness. */
  readonly sliced: readonly string[];
  /** Larger than every board of the thickness, or thicker than any. */
  readonly tooLarge: readonly string[];
  /** For which no board is left. */
  readonly short: readonly string[];
  /** Share of what is used of the boards that is no section, 0…1. */
  readonly waste: number;
}

/** Sections within this of a board's thickness are cut from it as it is, mm. */
const SAME_THICKNESS_MM = 0.1;

/**
 * Lays sections on the boards in stock: each on the thinnest that is thick enough, with a kerf between; rectangles about them,
 * turned by a quarter where that serves.
 *
 * @param boards thickest first, as `readBoards` gives them.
 */
export function nestSections(sections: readonly Section[], boards: readonly Board[], kerfMm: number): Nesting {
  const thinnestFirst = [...boards].reverse();
  const left = new Map(boards.map((board) => [board, board.count]));
  const used = new Map(boards.map((board) => [board, 0]));
  const nested: NestedBoard[] = [];
  const sliced: string[] = [];
  const tooLarge: string[] = [];
  let waiting = [...sections].sort((a, b) => areaOfBox(b) - areaOfBox(a) || (a.name < b.name ? -1 : 1));
  const usable = waiting.filter((section) => boards.some((board) => fits(section, board, kerfMm)));
  for (const section of waiting) if (!usable.includes(section)) tooLarge.push(section.name);
  waiting = usable;
  // A section goes to the thinnest kind that takes it; what finds no board there tries the next.
  for (const board of thinnestFirst) {
    const here = waiting.filter((section) => fits(section, board, kerfMm));
    for (const laid of packed(here, board, kerfMm)) {
      if ((left.get(board) ?? 0) === 0) break;
      left.set(board, left.get(board)! - 1);
      used.set(board, used.get(board)! + 1);
      const usedMm = Math.max(...laid.map(({ rect }) => rect.x + rect.width));
      nested.push({ board: board.index, nth: used.get(board)!, laid: laid.map(({ rect }) => rect), usedMm });
      for (const { section } of laid) {
        waiting = waiting.filter((other) => other !== section);
        if (board.thicknessMm - thickness(section) > SAME_THICKNESS_MM) sliced.push(section.name);
      }
    }
  }
  const areas = nested.map(({ board, usedMm }) => usedMm * boards.find(({ index }) => index === board)!.widthMm);
  const whole = areas.reduce((sum, area) => sum + area, 0);
  const short = waiting.map(({ name }) => name);
  const cut = sections.filter(({ name }) => !tooLarge.includes(name) && !short.includes(name));
  const taken = cut.reduce((sum, { outline }) => sum + regionArea(outline), 0);
  return {
    boards: nested,
    sliced: inOrder(sliced, sections),
    tooLarge,
    short,
    waste: whole > 0 ? 1 - taken / whole : 0,
  };
}

const thickness = ({ low, high }: Section): number => high - low;
const width = ({ box }: Section): number => box.max[0] - box.min[0];
const height = ({ box }: Section): number => box.max[1] - box.min[1];
const areaOfBox = (section: Section): number => width(section) * height(section);
const inOrder = (names: readonly string[], sections: readonly Section[]): readonly string[] =>
  sections.flatMap(({ name }) => (names.includes(name) ? [name] : []));

/** Rounding must not keep a section off a board that is just as large. */
const SLACK = 1e-6;

function fits(section: Section, { lengthMm, widthMm, thicknessMm }: Board, kerfMm: number): boolean {
  const [a, b] = [width(section) + kerfMm, height(section) + kerfMm];
  return (
    thickness(section) <= thicknessMm + SLACK &&
    Math.max(a, b) <= lengthMm + kerfMm + SLACK &&
    Math.min(a, b) <= widthMm + kerfMm + SLACK
  );
}

/** Boards of one kind with sections laid on them, as many as it takes. A kerf is kept between, none at the board's edges. */
function packed(
  sections: readonly Section[],
  { lengthMm, widthMm }: Board,
  kerfMm: number,
): readonly (readonly { readonly section: Section; readonly rect: LaidSection }[])[] {
  if (sections.length === 0) return [];
  const sizes = sections.map((section) => ({ width: width(section) + kerfMm, height: height(section) + kerfMm }));
  return packRectangles(sizes, lengthMm + kerfMm + SLACK, widthMm + kerfMm + SLACK).map((sheet) =>
    sheet.map(({ index, x, y, turned }) => {
      const section = sections[index]!;
      const [w, h] = turned ? [height(section), width(section)] : [width(section), height(section)];
      return { section, rect: { section: section.name, x, y, width: w, height: h, turned } };
    }),
  );
}
