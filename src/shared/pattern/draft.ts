import { type Axis, axes } from '../build/station.ts';
import { boundsOfCopy } from '../solid/bounds.ts';
import { createHolder } from '../solid/holds-point.ts';
import type { Move, Vec3 } from '../solid/placed.ts';
import { alongAxis, draftExtrusion, draftTurned } from './draft-shapes.ts';
import { type Growth, growthOf, type PatternPiece, type Taper } from './pattern-piece.ts';

/** Pieces with draft on them, and those that cannot be drawn. */
export interface Drafted {
  readonly pieces: readonly PatternPiece[];
  /** Hollows that lie across the draw, or open to neither side: only a core can make them. */
  readonly undercuts: readonly PatternPiece[];
  /** Left without draft: with it, their outlines would run into themselves. */
  readonly undrafted: readonly PatternPiece[];
}

/** A cosine of 1 but for rounding. */
const ALONG = 1 - 1e-9;

/**
 * Puts draft on pieces. It is done body by body, each from its own end that is farthest from the parting:
 * - drawn out or turned along the draw (blocks any way): exactly, every side that runs along the draw leaning by the draft;
 * - what takes away along the draw narrows away from its mouth, so that metal is added there too; open at both ends, towards
 *   the parting;
 * - a body that adds and lies across is widened about its own middle and joined to itself as drawn: the metal added is at
 *   least what its outer faces need, and where it is hollow inside, those faces stay upright;
 * - what a core makes is not drawn and has none.
 */
export function withDraft(pieces: readonly PatternPiece[], taper: Taper): Drafted {
  const undercuts: PatternPiece[] = [];
  const undrafted: PatternPiece[] = [];
  const drafted = pieces.flatMap((piece): readonly PatternPiece[] => {
    if (piece.cored || piece.is === 'print') return [piece];
    return groupsOf(piece, taper).flatMap((group, i) => {
      const { own, moves } = group;
      const copy = { ...piece, key: i === 0 ? piece.key : `${piece.key}/${i}`, moves };
      const { shape } = piece;
      const along = own && shape.is === 'extrusion' ? alongAxis(shape, own) : shape;
      const growth = own && growthAlong(piece, group, pieces, taper);
      if (growth && along?.is === 'turned' && along.axis === own) {
        const turned = draftTurned(along, growth, piece.adds);
        if (!turned) undrafted.push(copy);
        return [{ ...copy, shape: turned ?? shape }];
      }
      if (growth && along?.is === 'extrusion') {
        const halves = draftExtrusion(along, growth, piece.adds);
        if (halves)
          return halves.map((half, n) => ({ ...copy, key: `${copy.key}/${n ? 'over' : 'under'}`, shape: half }));
        if (!piece.adds) undrafted.push(copy);
        return [{ ...copy, taper: piece.adds ? taper : undefined }];
      }
      if (!piece.adds) undercuts.push(copy);
      return [{ ...copy, taper: piece.adds ? taper : undefined }];
    });
  });
  return { pieces: drafted, undercuts, undrafted };
}

interface CopyGroup {
  /** The axis of the shape itself that lies along the draw; undefined where none does. */
  readonly own: Axis | undefined;
  /** −1 where it runs against the draw. */
  readonly sign: number;
  /** The parting, along that axis. */
  readonly partingMm: number;
  readonly moves: readonly Move[];
}

/** Just off an end, mm. */
const OFF_MM = 0.01;

/** What a piece widens by along its own axis that lies along the draw; undefined for a hollow that is open to neither side. */
function growthAlong(
  { shape, adds }: PatternPiece,
  { own, sign, partingMm, moves }: CopyGroup,
  pieces: readonly PatternPiece[],
  { draw, slope }: Taper,
): Growth | undefined {
  const move = moves[0]!;
  const { min, max } = boundsOfCopy(shape, move);
  const k = axes.indexOf(draw);
  const toOwn = (place: number) => sign * (place - move[4 * k + 3]!);
  const [low, high] = [toOwn(min[k]!), toOwn(max[k]!)].sort((a, b) => a - b) as [number, number];
  if (adds || own === undefined) return growthOf(low, high, partingMm, slope);
  const isMetal = (place: number): boolean => {
    const point = min.map((from, i) => (i === k ? place : (from + max[i]!) / 2)) as unknown as Vec3;
    const holds = (other: PatternPiece) => other.moves.some((at) => createHolder(other.shape, at)(point));
    return pieces.some((other) => other.adds && holds(other)) && !pieces.some((other) => !other.adds && holds(other));
  };
  const [under, over] = [isMetal(min[k]! - OFF_MM), isMetal(max[k]! + OFF_MM)];
  if (under && over) return undefined;
  if (!under && !over) return growthOf(low, high, partingMm, slope);
  // Blind: sand hangs or stands in it from its mouth, whichever half of the mould that belongs to.
  const mouth = toOwn(under ? max[k]! : min[k]!);
  return { at: (place) => Math.abs(place - mouth) * slope, breaks: undefined };
}

/** Copies that lie to the draw alike. */
function groupsOf({ moves }: PatternPiece, { draw, partingMm }: Taper): readonly CopyGroup[] {
  const row = 4 * axes.indexOf(draw);
  const groups = new Map<string, CopyGroup & { readonly moves: Move[] }>();
  for (const move of moves) {
    const own = axes.find((_, k) => Math.abs(move[row + k]!) > ALONG);
    const sign = own === undefined ? 1 : Math.sign(move[row + axes.indexOf(own)]!);
    const at = own === undefined ? partingMm : sign * (partingMm - move[row + 3]!);
    const key = `${own} ${at.toFixed(9)}`;
    const group = groups.get(key);
    if (group) group.moves.push(move);
    else groups.set(key, { own, sign, partingMm: at, moves: [move] });
  }
  return [...groups.values()];
}
