import { joined, without } from './intervals.ts';

/** A straight piece of a view: part of an edge, seen or hidden. */
export interface Piece {
  readonly ax: number;
  readonly ay: number;
  readonly bx: number;
  readonly by: number;
  readonly isHidden: boolean;
  /** The bodies on both sides of the edge, as indexes, the smaller first. */
  readonly bodies: readonly [number, number];
}

/**
 * Draws every stretch of paper once: where pieces lie on one another the visible one stays, and of two alike the longer.
 * @param near pieces no further apart than this lie on one another, mm.
 */
export function thinOut(pieces: readonly Piece[], near: number): readonly Piece[] {
  const lengths = pieces.map(({ ax, ay, bx, by }) => Math.hypot(bx - ax, by - ay));
  const order = pieces
    .map((_, i) => i)
    .filter((i) => lengths[i]! > near)
    .sort((a, b) => Number(pieces[a]!.isHidden) - Number(pieces[b]!.isHidden) || lengths[b]! - lengths[a]! || a - b);
  const accepted: Piece[] = [];
  const cells = cellsFor(pieces, near);
  for (const i of order) {
    const piece = pieces[i]!;
    const length = lengths[i]!;
    const taken: number[] = [];
    for (const other of cells.around(piece)) coveredBy(piece, length, accepted[other]!, near, taken);
    const free = taken.length === 0 ? [0, length] : without(0, length, joined(taken, near), 2 * near);
    for (let k = 0; k < free.length; k += 2) {
      const rest = partOf(piece, free[k]! / length, free[k + 1]! / length);
      cells.add(rest, accepted.length);
      accepted.push(rest);
    }
  }
  return accepted;
}

function partOf(piece: Piece, from: number, to: number): Piece {
  if (from === 0 && to === 1) return piece;
  const { ax, ay, bx, by } = piece;
  return {
    ...piece,
    ax: from === 0 ? ax : ax + from * (bx - ax),
    ay: from === 0 ? ay : ay + from * (by - ay),
    bx: to === 1 ? bx : ax + to * (bx - ax),
    by: to === 1 ? by : ay + to * (by - ay),
  };
}

/** Adds the stretch of `piece`, in mm from its start, that `other` lies on. */
function coveredBy(piece: Piece, length: number, other: Piece, near: number, taken: number[]): void {
  const ux = (piece.bx - piece.ax) / length;
  const uy = (piece.by - piece.ay) / length;
  const s0 = ux * (other.ax - piece.ax) + uy * (other.ay - piece.ay);
  const s1 = ux * (other.bx - piece.ax) + uy * (other.by - piece.ay);
  const from = Math.max(0, Math.min(s0, s1));
  const to = Math.min(length, Math.max(s0, s1));
  if (to - from <= near) return;
  const h0 = ux * (other.ay - piece.ay) - uy * (other.ax - piece.ax);
  const h1 = ux * (other.by - piece.ay) - uy * (other.bx - piece.ax);
  const slope = (h1 - h0) / (s1 - s0);
  if (Math.abs(h0 + slope * (from - s0)) <= near && Math.abs(h0 + slope * (to - s0)) <= near) taken.push(from, to);
}

const CELLS = 64;

/** A grid of the paper: which accepted pieces pass which cells. */
function cellsFor(pieces: readonly Piece[], near: number) {
  let [left, bottom, right, top] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { ax, ay, bx, by } of pieces) {
    left = Math.min(left, ax, bx);
    right = Math.max(right, ax, bx);
    bottom = Math.min(bottom, ay, by);
    top = Math.max(top, ay, by);
  }
  const width = Math.max((right - left) / CELLS, near);
  const height = Math.max((top - bottom) / CELLS, near);
  const lists: number[][] = Array.from({ length: CELLS * CELLS }, () => []);
  const cell = (at: number, start: number, size: number) =>
    Math.min(CELLS - 1, Math.max(0, Math.floor((at - start) / size)));

  function* passed({ ax, ay, bx, by }: Piece): Generator<number> {
    const last = cell(Math.max(ay, by) + near, bottom, height);
    for (let r = cell(Math.min(ay, by) - near, bottom, height); r <= last; r++) {
      let [from, to] = [0, 1];
      if (ay !== by && r > 0 && r < CELLS - 1) {
        const t0 = (bottom + r * height - near - ay) / (by - ay);
        const t1 = (bottom + (r + 1) * height + near - ay) / (by - ay);
        from = Math.max(0, Math.min(t0, t1));
        to = Math.min(1, Math.max(t0, t1));
      }
      const x0 = ax + from * (bx - ax);
      const x1 = ax + to * (bx - ax);
      const end = cell(Math.max(x0, x1) + near, left, width);
      for (let c = cell(Math.min(x0, x1) - near, left, width); c <= end; c++) yield r * CELLS + c;
    }
  }

  return {
    add(piece: Piece, index: number): void {
      for (const at of passed(piece)) lists[at]!.push(index);
    },
    around(piece: Piece): ReadonlySet<number> {
      const found = new Set<number>();
      for (const at of passed(piece)) for (const index of lists[at]!) found.add(index);
      return found;
    },
  };
}
