import type { Box, Point } from './sheet.ts';

/** How much is drawn where, by squares of a millimetre. */
export interface Ink {
  draw(a: Point, b: Point): void;
  /** Number of squares within a rectangle that a line passes. */
  within(box: Box): number;
  /** Number of squares on the way that a line passes. */
  along(a: Point, b: Point): number;
}

export function inkOn(widthMm: number, heightMm: number): Ink {
  const [columns, rows] = [Math.ceil(widthMm), Math.ceil(heightMm)];
  const squares = new Uint8Array(columns * rows);
  // Sums of all squares below and to the left; made when first asked for after drawing.
  let sums: Uint32Array | undefined;
  const sumTable = () => {
    const table = new Uint32Array((columns + 1) * (rows + 1));
    for (let r = 0; r < rows; r++) {
      let line = 0;
      for (let c = 0; c < columns; c++) {
        line += squares[r * columns + c]!;
        table[(r + 1) * (columns + 1) + c + 1] = table[r * (columns + 1) + c + 1]! + line;
      }
    }
    return table;
  };
  function walk([ax, ay]: Point, [bx, by]: Point, each: (square: number) => void): void {
    const steps = Math.max(1, Math.ceil(2 * Math.max(Math.abs(bx - ax), Math.abs(by - ay))));
    let last = -1;
    for (let i = 0; i <= steps; i++) {
      const c = Math.floor(ax + ((bx - ax) * i) / steps);
      const r = Math.floor(ay + ((by - ay) * i) / steps);
      if (c < 0 || r < 0 || c >= columns || r >= rows) continue;
      const square = r * columns + c;
      if (square !== last) each(square);
      last = square;
    }
  }
  const clampTo = (value: number, most: number) => Math.min(most, Math.max(0, value));
  return {
    draw(a, b) {
      sums = undefined;
      walk(a, b, (square) => {
        squares[square] = 1;
      });
    },
    within({ left, bottom, right, top }) {
      sums ??= sumTable();
      const [c0, c1] = [clampTo(Math.floor(left), columns), clampTo(Math.ceil(right), columns)];
      const [r0, r1] = [clampTo(Math.floor(bottom), rows), clampTo(Math.ceil(top), rows)];
      const at = (r: number, c: number) => sums![r * (columns + 1) + c]!;
      return at(r1, c1) - at(r0, c1) - at(r1, c0) + at(r0, c0);
    },
    along(a, b) {
      let count = 0;
      walk(a, b, (square) => {
        count += squares[square]!;
      });
      return count;
    },
  };
}
