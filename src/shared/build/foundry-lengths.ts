import type { Casting } from './casting.ts';
import type { Pattern } from './pattern.ts';
import type { Pour } from './pour.ts';
import { type Each, ofEnds, ofPlace } from './written-lengths.ts';

/** The casting with each length that is written in it as `each` makes it; contraction and draft are none. */
export function withCastingLengths(casting: Casting, each: Each): Casting {
  const { parting } = casting;
  return {
    ...casting,
    stock: casting.stock.map((face) => ({ ...face, written: each(face.written) })),
    sizeStock: casting.sizeStock.map((size) => ({ ...size, written: each(size.written) })),
    copeExtra: each(casting.copeExtra),
    ...(parting ? { parting: ofPlace(parting, each) } : {}),
    closeUnder: each(casting.closeUnder),
    coating: each(casting.coating),
    glueJoint: each(casting.glueJoint),
    prints: casting.prints.map(({ body, ends: [a, b] }) => ({ body, ends: [each(a), each(b)] })),
    lugs: casting.lugs.map((lug) => ({
      ...lug,
      ends: ofEnds(lug.ends, each),
      across: [ofEnds(lug.across[0], each), ofEnds(lug.across[1], each)],
    })),
    boards: casting.boards.map((board) => ({
      ...board,
      thickness: each(board.thickness),
      length: each(board.length),
      width: each(board.width),
    })),
  };
}

/** The pattern with each length that was measured on it, and on its casting, as `each` makes it. */
export function withPatternLengths(pattern: Pattern, each: Each): Pattern {
  const ofLines = (lines: Pattern['measured']): Pattern['measured'] =>
    lines.map((line) => ({ ...line, value: each(line.value) }));
  return { ...pattern, measured: ofLines(pattern.measured), cast: ofLines(pattern.cast) };
}

const gatingLengths = [
  'sprueHeight',
  'sprueTop',
  'sprueFoot',
  'runnerWidth',
  'runnerHeight',
  'runnerLength',
  'gateWidth',
  'gateHeight',
  'gateLength',
] as const satisfies readonly (keyof Pour['gating'])[];

/** The pour with each length that is written in it as `each` makes it. */
export function withPourLengths(pour: Pour, each: Each): Pour {
  const { gating } = pour;
  return {
    ...pour,
    gating: { ...gating, ...Object.fromEntries(gatingLengths.map((key) => [key, each(gating[key])])) },
    risers: pour.risers.map((riser) => ({ ...riser, diameter: each(riser.diameter), height: each(riser.height) })),
    inserts: pour.inserts.map((insert) => ({ ...insert, length: each(insert.length) })),
    coverAbove: each(pour.coverAbove),
    coverAround: each(pour.coverAround),
  };
}
