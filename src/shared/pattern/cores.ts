import type { BodyId } from '../base/ids.ts';
import type { Shape } from '../build/body.ts';
import type { Casting } from '../build/casting.ts';
import type { Reading } from '../plan/amounts.ts';
import type { Numbers } from '../plan/numbers.ts';
import { exactVolume } from '../solid/exact-volume.ts';
import { SAME_MM } from '../solid/outline.ts';
import type { ExactShape } from '../solid/placed.ts';
import type { PatternPiece } from './pattern-piece.ts';
import type { PatternUnknown } from './pattern-unknown.ts';

/** A core that is laid into the mould, and the prints that carry it. */
export interface Core {
  readonly body: BodyId;
  /** How many of it there are. */
  readonly copies: number;
  /** Length of the print at each end, in the order in which the body names its ends, mm; undefined where none is said. */
  readonly printsMm: readonly [number | undefined, number | undefined];
  /** Of one core, prints included, mm³. */
  readonly volumeMm3: number;
  /** Of one, without its prints: what the metal is kept out of. */
  readonly hollowMm3: number;
}

/** Where the two ends of a body are named, the lower one along its axis first? */
function firstIsLow(shape: Shape, numbers: Numbers): boolean {
  const ends = shape.type === 'hole' ? [shape.from, shape.to] : 'ends' in shape ? shape.ends : undefined;
  if (!ends) return true;
  const [a, b] = ends.map((id) => numbers.place(id!)?.at ?? 0);
  return a! <= b!;
}

/**
 * The core that makes a hollow, and its prints.
 *
 * @param piece the hollow, with its stock.
 * @param shape of the body's record.
 */
export function coreOf(
  piece: PatternPiece & { readonly body: BodyId },
  shape: Shape,
  casting: Casting,
  numbers: Numbers,
  reading: Reading,
): { readonly core: Core; readonly prints: readonly PatternPiece[]; readonly unknown: readonly PatternUnknown[] } {
  const unknown: PatternUnknown[] = [];
  const index = casting.prints.findIndex(({ body }) => body === piece.body);
  const written = casting.prints[index]?.ends ?? ['', ''];
  const [first, second] = written.map((text, i) => {
    const field = `prints/${index}/ends/${i}`;
    const read = reading.plain(text, field);
    if (!read.ok) unknown.push(read.error);
    else if ((read.value ?? 0) < 0) unknown.push({ is: 'written', field, text });
    return read.ok && (read.value ?? 0) > 0 ? read.value : undefined;
  });
  const isLowFirst = firstIsLow(shape, numbers);
  const [low, high] = isLowFirst ? [first, second] : [second, first];
  const prints = [
    ...(low === undefined ? [] : [{ end: 'low', shape: printAt(piece.shape, 'low', low) }]),
    ...(high === undefined ? [] : [{ end: 'high', shape: printAt(piece.shape, 'high', high) }]),
  ].flatMap(({ end, shape: print }): readonly PatternPiece[] =>
    print ? [{ ...piece, key: `${piece.key}/print ${end}`, is: 'print', adds: true, cored: false, shape: print }] : [],
  );
  const hollowMm3 = exactVolume(piece.shape);
  const core: Core = {
    body: piece.body,
    copies: piece.moves.length,
    printsMm: [first, second],
    hollowMm3,
    volumeMm3: hollowMm3 + prints.reduce((sum, print) => sum + exactVolume(print.shape), 0),
  };
  return { core, prints, unknown };
}

/** A print goes on from the end of the core with the section that it has there; a pointed end has none, a mesh no axis. */
function printAt(shape: ExactShape, end: 'low' | 'high', length: number): ExactShape | undefined {
  if (shape.is === 'mesh') return undefined;
  if (shape.is === 'extrusion') {
    const [a0, a1] = end === 'low' ? [shape.a0 - length, shape.a0] : [shape.a1, shape.a1 + length];
    return { ...shape, a0, a1 };
  }
  const places = shape.outline.map(({ a }) => a);
  const at = end === 'low' ? Math.min(...places) : Math.max(...places);
  const radius = Math.max(...shape.outline.map(({ a, r }) => (Math.abs(a - at) <= SAME_MM ? r : 0)));
  if (radius <= SAME_MM) return undefined;
  const [a0, a1] = end === 'low' ? [at - length, at] : [at, at + length];
  const outline = [
    { a: a0, r: 0 },
    { a: a1, r: 0 },
    { a: a1, r: radius },
    { a: a0, r: radius },
  ];
  return { ...shape, outline };
}
