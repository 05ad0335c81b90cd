import type { Point } from './sheet.ts';
import type { Piece } from './thin-out.ts';

/** A run of pieces that go on smoothly into one another. */
export interface Chain {
  readonly points: readonly Point[];
  readonly closed: boolean;
  readonly isHidden: boolean;
  readonly bodies: readonly [number, number];
}

/** A sharper turn than this ends a line: its dashes begin anew at the corner. */
const SMOOTH = Math.cos((35 * Math.PI) / 180);

/** Joins pieces end to end where they go on smoothly, and leaves out points in the midst of straight runs. */
export function chain(pieces: readonly Piece[], near: number): readonly Chain[] {
  const partner = joinEnds(pieces, near);
  const done = new Uint8Array(pieces.length);
  const out: Chain[] = [];
  const follow = (start: number, fromB: boolean): void => {
    const points: Point[] = [];
    let piece = start;
    // Ends are numbered 2i (a) and 2i + 1 (b); we enter a piece at one and leave it at the other.
    let enter = 2 * start + (fromB ? 1 : 0);
    let closed = false;
    points.push(endOf(pieces[piece]!, enter));
    for (;;) {
      done[piece] = 1;
      const leave = enter ^ 1;
      points.push(endOf(pieces[piece]!, leave));
      const onwards = partner[leave]!;
      if (onwards < 0) break;
      const following = onwards >> 1;
      if (following === start) {
        closed = true;
        points.pop();
        break;
      }
      piece = following;
      enter = onwards;
    }
    const { isHidden, bodies } = pieces[start]!;
    out.push({ points: straightened(points, closed, near), closed, isHidden, bodies });
  };
  // Lines with an end first, then rings.
  for (let i = 0; i < pieces.length; i++) {
    if (done[i]) continue;
    if (partner[2 * i]! < 0) follow(i, false);
    else if (partner[2 * i + 1]! < 0) follow(i, true);
  }
  for (let i = 0; i < pieces.length; i++) if (!done[i]) follow(i, false);
  return out;
}

const endOf = ({ ax, ay, bx, by }: Piece, end: number): Point => (end & 1 ? [bx, by] : [ax, ay]);

/** For each end of each piece the end that it goes on into, or -1. */
function joinEnds(pieces: readonly Piece[], near: number): Int32Array {
  const partner = new Int32Array(2 * pieces.length).fill(-1);
  const nodes = new Map<string, number[]>();
  const grain = 4 * near;
  for (let end = 0; end < 2 * pieces.length; end++) {
    const piece = pieces[end >> 1]!;
    const [x, y] = endOf(piece, end);
    const key = `${piece.isHidden ? 'h' : 'v'}${piece.bodies.join()}:${Math.round(x / grain)},${Math.round(y / grain)}`;
    const node = nodes.get(key);
    if (node) node.push(end);
    else nodes.set(key, [end]);
  }
  for (const ends of nodes.values()) {
    if (ends.length < 2) continue;
    const pairs: [number, number, number][] = [];
    for (let i = 0; i < ends.length; i++) {
      for (let k = i + 1; k < ends.length; k++) {
        if (ends[i]! >> 1 === ends[k]! >> 1) continue;
        const straight = -cosine(pieces, ends[i]!, ends[k]!);
        if (straight > SMOOTH) pairs.push([straight, ends[i]!, ends[k]!]);
      }
    }
    pairs.sort((a, b) => b[0] - a[0] || a[1] - b[1] || a[2] - b[2]);
    for (const [, a, b] of pairs) {
      if (partner[a]! >= 0 || partner[b]! >= 0) continue;
      partner[a] = b;
      partner[b] = a;
    }
  }
  return partner;
}

/** Cosine of the angle between the two ways that lead from a common place into two pieces. */
function cosine(pieces: readonly Piece[], a: number, b: number): number {
  const [ux, uy] = into(pieces[a >> 1]!, a);
  const [vx, vy] = into(pieces[b >> 1]!, b);
  return (ux * vx + uy * vy) / (Math.hypot(ux, uy) * Math.hypot(vx, vy));
}

const into = ({ ax, ay, bx, by }: Piece, end: number): Point => (end & 1 ? [ax - bx, ay - by] : [bx - ax, by - ay]);

/** Leaves out points that lie within `near` of the straight way between those kept. */
function straightened(points: readonly Point[], closed: boolean, near: number): readonly Point[] {
  const out: Point[] = [];
  for (let i = 0; i < points.length; i++) {
    const before = out.at(-1) ?? (closed ? points.at(-1) : undefined);
    const after = i + 1 < points.length ? points[i + 1] : closed ? points[0] : undefined;
    const [x, y] = points[i]!;
    if (before && after) {
      const [dx, dy] = [after[0] - before[0], after[1] - before[1]];
      const length = Math.hypot(dx, dy);
      if (length > 0 && Math.abs(dx * (y - before[1]) - dy * (x - before[0])) / length <= near / 2) continue;
    }
    out.push([x, y]);
  }
  return out.length >= 2 ? out : points;
}
