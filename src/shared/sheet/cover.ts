import type { MeshEdges } from './edges.ts';
import { type Intervals, joined } from './intervals.ts';
import { insideLoops, type Loops } from './loops.ts';
import type { WeldedMesh } from './weld.ts';

/** Corners of a mesh as the eye sees them, and which triangles face it. */
export interface Seen {
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Towards the eye. */
  readonly z: Float64Array;
  /** Per triangle: 1 faces the eye, -1 turns away, 0 is seen edge on. */
  readonly facing: Int8Array;
  /** Two points nearer than this are one, mm. */
  readonly near: number;
}

/** A flat cut that covers what lies behind it. */
export interface Cap {
  readonly loops: Loops;
  readonly z: number;
}

/** Numbers kept of a covering triangle: three sides (a, b, c of a·x + b·y + c ≥ 0 inside), its plane, its greatest z. */
const STRIDE = 14;
const MOST_CELLS = 96;

/** Answers which stretches of a line in space lie behind the solid. */
export interface Cover {
  /** Hidden stretches between two points as parts of the way (0 to 1), ascending. */
  hidden(ax: number, ay: number, az: number, bx: number, by: number, bz: number): Intervals;
}

/** Part of the size of the whole below which two places are one: single precision with room for a few steps. */
const NEAR = 1e-6;

/**
 * Turns a mesh towards the eye.
 * @param axes index and sign of the part's axes to the right, up and towards the eye.
 */
export function see(mesh: WeldedMesh, { normals }: MeshEdges, axes: readonly (readonly [number, 1 | -1])[]): Seen {
  const count = mesh.points.length / 3;
  const column = ([index, sign]: readonly [number, 1 | -1]) =>
    Float64Array.from({ length: count }, (_, i) => sign * mesh.points[3 * i + index]!);
  const [x, y, z] = [column(axes[0]!), column(axes[1]!), column(axes[2]!)];
  const [towards, sign] = axes[2]!;
  const near = Math.max(1e-9, NEAR * mesh.size);
  const facing = new Int8Array(mesh.triangles.length / 3);
  for (let t = 0; t < facing.length; t++) {
    const slope = sign * normals[3 * t + towards]!;
    // A triangle whose picture is thinner than what counts as one place is seen edge on, whatever its normal says.
    if (Math.abs(slope) > 1e-6 && pictureHeight(mesh, x, y, t) > near) facing[t] = slope > 0 ? 1 : -1;
  }
  return { x, y, z, facing, near };
}

function pictureHeight({ triangles }: WeldedMesh, x: Float64Array, y: Float64Array, t: number): number {
  const [a, b, c] = [triangles[3 * t]!, triangles[3 * t + 1]!, triangles[3 * t + 2]!];
  const [ux, uy, vx, vy] = [x[b]! - x[a]!, y[b]! - y[a]!, x[c]! - x[a]!, y[c]! - y[a]!];
  const longest = Math.max(Math.hypot(ux, uy), Math.hypot(vx, vy), Math.hypot(vx - ux, vy - uy));
  return longest === 0 ? 0 : Math.abs(ux * vy - uy * vx) / longest;
}

/**
 * Takes the triangles that face the eye as cover (a point inside or behind a closed solid lies behind one of them, or
 * behind the cap of a cut) and sorts them into a grid. Each is taken `near` larger all round, so that nothing shows
 * through the seam between two; what is wrongly covered thereby lies on an outline that is drawn anyway.
 */
export function coverOf(mesh: WeldedMesh, seen: Seen, cap: Cap | undefined): Cover {
  const { x, y, z, facing, near } = seen;
  const faces: number[] = [];
  for (let t = 0; t < facing.length; t++) if (facing[t] === 1) faces.push(t);
  const data = new Float64Array(STRIDE * faces.length);
  const boxes = new Float64Array(4 * faces.length);
  let [left, bottom, right, top] = [Infinity, Infinity, -Infinity, -Infinity];
  faces.forEach((t, i) => {
    const corners = [mesh.triangles[3 * t]!, mesh.triangles[3 * t + 1]!, mesh.triangles[3 * t + 2]!] as const;
    writeTriangle(data, STRIDE * i, seen, corners);
    const [a, b, c] = corners;
    boxes[4 * i] = Math.min(x[a]!, x[b]!, x[c]!) - near;
    boxes[4 * i + 1] = Math.min(y[a]!, y[b]!, y[c]!) - near;
    boxes[4 * i + 2] = Math.max(x[a]!, x[b]!, x[c]!) + near;
    boxes[4 * i + 3] = Math.max(y[a]!, y[b]!, y[c]!) + near;
    data[STRIDE * i + 13] = Math.max(z[a]!, z[b]!, z[c]!);
    left = Math.min(left, boxes[4 * i]!);
    bottom = Math.min(bottom, boxes[4 * i + 1]!);
    right = Math.max(right, boxes[4 * i + 2]!);
    top = Math.max(top, boxes[4 * i + 3]!);
  });
  const side = Math.min(MOST_CELLS, Math.max(4, Math.ceil(Math.sqrt(faces.length))));
  const cellWidth = Math.max((right - left) / side, near);
  const cellHeight = Math.max((top - bottom) / side, near);
  const cell = (at: number, start: number, size: number) =>
    Math.min(side - 1, Math.max(0, Math.floor((at - start) / size)));
  const column = (at: number) => cell(at, left, cellWidth);
  const row = (at: number) => cell(at, bottom, cellHeight);
  const { starts, items } = fillCells(boxes, faces.length, side, column, row);

  const stamps = new Uint32Array(faces.length);
  let stamp = 0;

  return {
    hidden(ax, ay, az, bx, by, bz) {
      const found: number[] = [];
      const length = Math.hypot(bx - ax, by - ay, bz - az);
      if (length === 0) return found;
      stamp++;
      const lowest = Math.min(az, bz);
      const [yLow, yHigh] = ay < by ? [ay, by] : [by, ay];
      const rowLast = row(yHigh + near);
      for (let r = row(yLow - near); r <= rowLast; r++) {
        // What of the line passes this row of cells.
        let [from, to] = [0, 1];
        if (by !== ay) {
          const t0 = (bottom + r * cellHeight - near - ay) / (by - ay);
          const t1 = (bottom + (r + 1) * cellHeight + near - ay) / (by - ay);
          // The outermost rows take in all beyond them.
          if (r > 0 && r < side - 1) {
            from = Math.max(0, Math.min(t0, t1));
            to = Math.min(1, Math.max(t0, t1));
          }
        }
        const x0 = ax + from * (bx - ax);
        const x1 = ax + to * (bx - ax);
        const last = column(Math.max(x0, x1) + near);
        for (let c = column(Math.min(x0, x1) - near); c <= last; c++) {
          const at = r * side + c;
          for (let k = starts[at]!; k < starts[at + 1]!; k++) {
            const i = items[k]!;
            if (stamps[i] === stamp) continue;
            stamps[i] = stamp;
            if (data[STRIDE * i + 13]! > lowest + near) clip(data, STRIDE * i, near, ax, ay, az, bx, by, bz, found);
          }
        }
      }
      if (cap) found.push(...behindCap(cap, near, ax, ay, az, bx, by, bz));
      return joined(found, (2 * near) / length);
    },
  };
}

function fillCells(
  boxes: Float64Array,
  count: number,
  side: number,
  column: (at: number) => number,
  row: (at: number) => number,
) {
  const starts = new Uint32Array(side * side + 1);
  const visit = (each: (cell: number, item: number) => void) => {
    for (let i = 0; i < count; i++) {
      const c0 = column(boxes[4 * i]!);
      const c1 = column(boxes[4 * i + 2]!);
      const r1 = row(boxes[4 * i + 3]!);
      for (let r = row(boxes[4 * i + 1]!); r <= r1; r++) for (let c = c0; c <= c1; c++) each(r * side + c, i);
    }
  };
  visit((cell) => {
    starts[cell + 1] = starts[cell + 1]! + 1;
  });
  for (let i = 0; i < side * side; i++) starts[i + 1] = starts[i + 1]! + starts[i]!;
  const next = starts.slice();
  const items = new Uint32Array(starts[side * side]!);
  visit((cell, item) => {
    items[next[cell]!] = item;
    next[cell] = next[cell]! + 1;
  });
  return { starts, items };
}

function writeTriangle(
  data: Float64Array,
  at: number,
  { x, y, z }: Seen,
  corners: readonly [number, number, number],
): void {
  for (let k = 0; k < 3; k++) {
    const a = corners[k]!;
    const b = corners[(k + 1) % 3]!;
    const dx = x[b]! - x[a]!;
    const dy = y[b]! - y[a]!;
    const length = Math.hypot(dx, dy) || 1;
    data[at + 3 * k] = -dy / length;
    data[at + 3 * k + 1] = dx / length;
    data[at + 3 * k + 2] = (dy * x[a]! - dx * y[a]!) / length;
  }
  const [a, b, c] = corners;
  const [ux, uy, uz] = [x[b]! - x[a]!, y[b]! - y[a]!, z[b]! - z[a]!];
  const [vx, vy, vz] = [x[c]! - x[a]!, y[c]! - y[a]!, z[c]! - z[a]!];
  const [nx, ny, nz] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
  const length = Math.hypot(nx, ny, nz);
  data[at + 9] = nx / length;
  data[at + 10] = ny / length;
  data[at + 11] = nz / length;
  data[at + 12] = -(nx * x[a]! + ny * y[a]! + nz * z[a]!) / length;
}

/** Adds the stretch of the line that lies within a triangle's picture and behind its plane. */
function clip(
  data: Float64Array,
  at: number,
  near: number,
  ax: number,
  ay: number,
  az: number,
  bx: number,
  by: number,
  bz: number,
  found: number[],
): void {
  let from = 0;
  let to = 1;
  for (let k = 0; k < 4; k++) {
    let h0: number;
    let h1: number;
    if (k < 3) {
      const [p, q, r] = [data[at + 3 * k]!, data[at + 3 * k + 1]!, data[at + 3 * k + 2]!];
      h0 = p * ax + q * ay + r + near;
      h1 = p * bx + q * by + r + near;
    } else {
      // Behind by more than the sides were let out, so that a triangle never covers its own neighbours' edges.
      const [p, q, r, s] = [data[at + 9]!, data[at + 10]!, data[at + 11]!, data[at + 12]!];
      h0 = -(p * ax + q * ay + r * az + s) - 4 * near;
      h1 = -(p * bx + q * by + r * bz + s) - 4 * near;
    }
    if (h0 < 0 && h1 < 0) return;
    if (h0 < 0) from = Math.max(from, h0 / (h0 - h1));
    else if (h1 < 0) to = Math.min(to, h0 / (h0 - h1));
    if (from >= to) return;
  }
  found.push(from, to);
}

function behindCap(
  { loops, z }: Cap,
  near: number,
  ax: number,
  ay: number,
  az: number,
  bx: number,
  by: number,
  bz: number,
): Intervals {
  const h0 = z - 4 * near - az;
  const h1 = z - 4 * near - bz;
  if (h0 <= 0 && h1 <= 0) return [];
  const from = h0 < 0 ? h0 / (h0 - h1) : 0;
  const to = h1 < 0 ? h0 / (h0 - h1) : 1;
  const inside = insideLoops(loops, [ax, ay], [bx, by]);
  const out: number[] = [];
  for (let i = 0; i < inside.length; i += 2) {
    const start = Math.max(from, inside[i]!);
    const end = Math.min(to, inside[i + 1]!);
    if (start < end) out.push(start, end);
  }
  return out;
}
