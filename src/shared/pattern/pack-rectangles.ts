/** A rectangle's place on its sheet. */
export interface PackedRectangle {
  /** Of its size in the list. */
  readonly index: number;
  readonly x: number;
  readonly y: number;
  /** Turned by a quarter: its width then lies along y. */
  readonly turned: boolean;
}

interface Size {
  readonly width: number;
  readonly height: number;
}

interface Free extends Size {
  readonly x: number;
  readonly y: number;
}

interface Spot {
  readonly x: number;
  readonly y: number;
  readonly turned: boolean;
  /** The first counts most; less is better. */
  readonly cost: readonly [number, number];
}

/** How the rectangle lies in its free one, and what is left beside it: less is better. */
type Score = (room: Free, restX: number, restY: number) => readonly [number, number];

const scores: readonly Score[] = [
  // The least beside the shorter side.
  (_, restX, restY) => [Math.min(restX, restY), Math.max(restX, restY)],
  // The nearest to the beginning of the sheet, so that what is left of it stays in one piece.
  ({ x, y, width }, restX) => [x + width - restX, y],
];

/** Whether rectangles may be turned wherever it serves, or only where they fit no other way. */
const turnings = ['freely', 'if need be'] as const;

/**
 * Lays rectangles on sheets of one size, on as few as it comes to: one after another, each in the best free rectangle of the
 * first sheet that has room. The free rectangles of a sheet are the largest there are and overlap one another (Jylänki, A
 * thousand ways to pack the bin, 2010: maximal rectangles). Several ways of choosing are tried, and the one that needs the
 * fewest sheets, and the least of their length, is taken.
 *
 * @param sizes largest first; none larger than the sheet, upright or turned.
 */
export function packRectangles(
  sizes: readonly Size[],
  sheetWidth: number,
  sheetHeight: number,
): readonly (readonly PackedRectangle[])[] {
  const order = sizes.map((_, index) => index);
  const longestFirst = [...order].sort((a, b) => longer(sizes[b]!) - longer(sizes[a]!) || a - b);
  let best: readonly (readonly PackedRectangle[])[] | undefined;
  let least = Infinity;
  for (const way of [order, longestFirst]) {
    for (const score of scores) {
      for (const turning of turnings) {
        const sheets = pack(sizes, way, { x: 0, y: 0, width: sheetWidth, height: sheetHeight }, score, turning);
        const length = usedLength(sizes, sheets);
        if (best && (sheets.length > best.length || (sheets.length === best.length && length >= least))) continue;
        best = sheets;
        least = length;
      }
    }
  }
  return best ?? [];
}

/** Of all sheets, from their beginning to the end of what lies farthest along. */
const usedLength = (sizes: readonly Size[], sheets: readonly (readonly PackedRectangle[])[]): number =>
  sheets.reduce(
    (sum, sheet) =>
      sum + Math.max(...sheet.map(({ index, x, turned }) => x + (turned ? sizes[index]!.height : sizes[index]!.width))),
    0,
  );

const longer = ({ width, height }: Size): number => Math.max(width, height);

function pack(
  sizes: readonly Size[],
  order: readonly number[],
  whole: Free,
  score: Score,
  turning: (typeof turnings)[number],
): readonly (readonly PackedRectangle[])[] {
  const sheets: { free: readonly Free[]; readonly laid: PackedRectangle[] }[] = [];
  for (const index of order) {
    const size = sizes[index]!;
    let spot: Spot | undefined;
    let sheet = sheets.find(({ free }) => {
      spot = bestSpot(free, size, score, turning);
      return spot;
    });
    if (!sheet) {
      sheet = { free: [whole], laid: [] };
      spot = bestSpot(sheet.free, size, score, turning);
      if (spot) sheets.push(sheet);
    }
    if (!spot) continue;
    const { x, y, turned } = spot;
    sheet.laid.push({ index, x, y, turned });
    const [width, height] = turned ? [size.height, size.width] : [size.width, size.height];
    sheet.free = withoutTaken(sheet.free, { x, y, width, height });
  }
  return sheets.map(({ laid }) => laid);
}

function bestSpot(
  free: readonly Free[],
  { width, height }: Size,
  score: Score,
  turning: (typeof turnings)[number],
): Spot | undefined {
  let best: Spot | undefined;
  const look = (w: number, h: number, turned: boolean) => {
    for (const room of free) {
      if (w > room.width || h > room.height) continue;
      const cost = score(room, room.width - w, room.height - h);
      if (best && (cost[0] > best.cost[0] || (cost[0] === best.cost[0] && cost[1] >= best.cost[1]))) continue;
      best = { x: room.x, y: room.y, turned, cost };
    }
  };
  look(width, height, false);
  if (turning === 'freely' || !best) look(height, width, true);
  return best;
}

/** The largest rectangles that are free when one is taken out of all that were. */
function withoutTaken(free: readonly Free[], taken: Free): readonly Free[] {
  const [right, top] = [taken.x + taken.width, taken.y + taken.height];
  const left = free.flatMap((room): readonly Free[] => {
    const [roomRight, roomTop] = [room.x + room.width, room.y + room.height];
    if (taken.x >= roomRight || right <= room.x || taken.y >= roomTop || top <= room.y) return [room];
    return [
      { ...room, width: taken.x - room.x },
      { ...room, x: right, width: roomRight - right },
      { ...room, height: taken.y - room.y },
      { ...room, y: top, height: roomTop - top },
    ].filter(({ width, height }) => width > 0 && height > 0);
  });
  return left.filter(
    (room, i) => !left.some((other, j) => i !== j && isWithin(room, other) && !(j > i && isWithin(other, room))),
  );
}

const isWithin = (inner: Free, outer: Free): boolean =>
  inner.x >= outer.x &&
  inner.y >= outer.y &&
  inner.x + inner.width <= outer.x + outer.width &&
  inner.y + inner.height <= outer.y + outer.height;
