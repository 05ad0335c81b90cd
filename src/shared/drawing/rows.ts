/**
 * Lists of small integers, one per slot, all in one typed pool: a list of its own for every slot would be two objects
 * each, and collecting those was half of the time that a large build took to open. A list's members stand at
 * `pool[start[slot]]` and after, `count[slot]` of them.
 */
export interface Rows {
  start: Int32Array<ArrayBuffer>;
  count: Int32Array<ArrayBuffer>;
  /** How many a list may hold where it stands: nothing, or a power of two. */
  room: Int32Array<ArrayBuffer>;
  pool: Int32Array<ArrayBuffer>;
  used: number;
  /** Starts of places that lists have outgrown, by the logarithm of their room. */
  readonly free: (number[] | undefined)[];
}

const FIRST_ROOM = 2;

/**
 * @param slots how many lists to make room for.
 * @param members how many members in all to make room for; more will fit, at the cost of moving.
 */
export function createRows(slots: number, members: number): Rows {
  return {
    start: new Int32Array(slots),
    count: new Int32Array(slots),
    room: new Int32Array(slots),
    pool: new Int32Array(Math.max(members, FIRST_ROOM)),
    used: 0,
    free: [],
  };
}

function longer(column: Int32Array, length: number): Int32Array<ArrayBuffer> {
  const made = new Int32Array(length);
  made.set(column);
  return made;
}

/** Makes room for more lists; those there are keep their members. */
export function widenRows(rows: Rows, slots: number): void {
  rows.start = longer(rows.start, slots);
  rows.count = longer(rows.count, slots);
  rows.room = longer(rows.room, slots);
}

/** Finds a place for a list of `room` members. */
function place(rows: Rows, room: number): number {
  const left = rows.free[31 - Math.clz32(room)]?.pop();
  if (left !== undefined) return left;
  const start = rows.used;
  rows.used += room;
  if (rows.used > rows.pool.length) rows.pool = longer(rows.pool, Math.max(rows.used, rows.pool.length * 2));
  return start;
}

/** Makes sure that a list can hold so many. */
function reserve(rows: Rows, slot: number, members: number): void {
  const old = rows.room[slot]!;
  if (members <= old) return;
  let room = Math.max(old * 2, FIRST_ROOM);
  while (room < members) room *= 2;
  const from = rows.start[slot]!;
  const to = place(rows, room);
  if (old > 0) {
    rows.pool.copyWithin(to, from, from + rows.count[slot]!);
    const size = 31 - Math.clz32(old);
    rows.free[size] ??= [];
    rows.free[size].push(from);
  }
  rows.start[slot] = to;
  rows.room[slot] = room;
}

export function addTo(rows: Rows, slot: number, member: number): void {
  const count = rows.count[slot]!;
  if (count === rows.room[slot]) reserve(rows, slot, count + 1);
  rows.pool[rows.start[slot]! + count] = member;
  rows.count[slot] = count + 1;
}

/** Takes the last of this member out of a list, if it is there; the others keep their order. */
export function takeFrom(rows: Rows, slot: number, member: number): void {
  const { pool } = rows;
  const start = rows.start[slot]!;
  const end = start + rows.count[slot]!;
  let at = end - 1;
  while (at >= start && pool[at] !== member) at--;
  if (at < start) return;
  pool.copyWithin(at, at + 1, end);
  rows.count[slot]!--;
}

export function clearRow(rows: Rows, slot: number): void {
  rows.count[slot] = 0;
}

/** A list as it stands, to be read before the rows are changed again. */
export const rowOf = (rows: Rows, slot: number): Int32Array =>
  rows.pool.subarray(rows.start[slot]!, rows.start[slot]! + rows.count[slot]!);

/** Whether a member stands in a list before place `end` of it. */
export function holds(rows: Rows, slot: number, member: number, end = rows.count[slot]!): boolean {
  const start = rows.start[slot]!;
  for (let i = 0; i < end; i++) if (rows.pool[start + i] === member) return true;
  return false;
}

/** Brings a list into order, if it is not. */
export function sortRow(rows: Rows, slot: number, compare: (a: number, b: number) => number): void {
  const { pool } = rows;
  const start = rows.start[slot]!;
  const end = start + rows.count[slot]!;
  for (let i = start + 1; i < end; i++) {
    if (compare(pool[i - 1]!, pool[i]!) <= 0) continue;
    pool.subarray(start, end).sort(compare);
    return;
  }
}
