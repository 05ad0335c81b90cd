import type { BodyId } from '../base/ids.ts';
import type { PartMesh } from '../solid/placed.ts';
import { type Chain, chain } from './chain.ts';
import { type Cover, coverOf, type Seen, see } from './cover.ts';
import { type Axes, cutMesh } from './cut.ts';
import { findEdges, type MeshEdges, NONE } from './edges.ts';
import { without } from './intervals.ts';
import type { Loops } from './loops.ts';
import type { Point } from './sheet.ts';
import { type Piece, thinOut } from './thin-out.ts';
import { indexOfAxis, type ViewFrame } from './view-frame.ts';
import { type WeldedMesh, weld } from './weld.ts';

/** One line of a view, in mm of the part: to the right and up as the eye sees it. */
export interface ViewLine {
  readonly points: readonly Point[];
  readonly closed: boolean;
  readonly isHidden: boolean;
  readonly bodies: readonly BodyId[];
}

/** What a view shows of a solid. */
export interface ViewLines {
  readonly lines: readonly ViewLine[];
  /** Outlines of the cut; empty unless the view is a section. */
  readonly cut: Loops;
  /** Places nearer to one another than this are one, mm. */
  readonly nearMm: number;
}

interface Prepared {
  readonly mesh: WeldedMesh;
  readonly edges: MeshEdges;
}

// What was found of a mesh serves every view of it.
const prepared = new WeakMap<PartMesh, Prepared>();

function prepare(mesh: PartMesh): Prepared {
  const known = prepared.get(mesh);
  if (known) return known;
  const welded = weld(mesh);
  const made = { mesh: welded, edges: findEdges(welded) };
  prepared.set(mesh, made);
  return made;
}

/**
 * The lines of one view with what is hidden found exactly: every edge is cut at each outline that passes before it.
 * @param cutAt place of a cut along the line of sight, mm of the part: what lies before it is taken away, and nothing
 * hidden is drawn (ISO 128-3:2020 leaves hidden edges out of sections).
 */
export function viewLines(of: PartMesh, frame: ViewFrame, cutAt: number | undefined): ViewLines {
  const axes: Axes = [frame.across, frame.up, frame.towards].map(
    ({ axis, sign }) => [indexOfAxis(axis), sign] as const,
  );
  let { mesh, edges } = prepare(of);
  let cut: Loops = [];
  let capAt: number | undefined;
  if (cutAt !== undefined) {
    capAt = frame.towards.sign * cutAt;
    const left = cutMesh(mesh, axes, capAt);
    mesh = left.mesh;
    cut = left.loops;
    edges = findEdges(mesh);
  }
  const seen = see(mesh, edges, axes);
  const cover = coverOf(mesh, seen, capAt === undefined ? undefined : { loops: cut, z: capAt });
  const pieces = cutAll(mesh, edges, seen, cover, cutAt === undefined);
  const near = 4 * seen.near;
  const lines = chain(thinOut(pieces, near), near).map((run) => toLine(run, of.bodies));
  return { lines, cut, nearMm: near };
}

const toLine = ({ points, closed, isHidden, bodies: [a, b] }: Chain, ids: readonly BodyId[]): ViewLine => ({
  points,
  closed,
  isHidden,
  bodies: [...new Set([ids[a]!, ids[b]!])],
});

function cutAll(mesh: WeldedMesh, edges: MeshEdges, seen: Seen, cover: Cover, withHidden: boolean): readonly Piece[] {
  const { x, y, z, facing, near } = seen;
  const pieces: Piece[] = [];
  for (let e = 0; e < edges.sharp.length; e++) {
    const s = edges.sides[2 * e]!;
    const t = edges.sides[2 * e + 1]!;
    // A rounded face shows an edge where it turns away from the eye.
    if (!edges.sharp[e] && (facing[s] === 1) === (facing[t] === 1)) continue;
    const a = edges.ends[2 * e]!;
    const b = edges.ends[2 * e + 1]!;
    const [ax, ay, az, bx, by, bz] = [x[a]!, y[a]!, z[a]!, x[b]!, y[b]!, z[b]!];
    const length = Math.hypot(bx - ax, by - ay);
    if (length <= near) continue;
    const left = mesh.bodyOf[s]!;
    const right = t === NONE ? left : mesh.bodyOf[t]!;
    const bodies = left < right ? ([left, right] as const) : ([right, left] as const);
    // Between two faces that both turn away the eye looks at an edge through the material.
    const isBuried = facing[s] === -1 && (t === NONE ? false : facing[t] === -1);
    if (isBuried && !withHidden) continue;
    const hidden = isBuried ? [0, 1] : cover.hidden(ax, ay, az, bx, by, bz);
    const least = (4 * near) / length;
    const add = (from: number, to: number, isHidden: boolean) => {
      pieces.push({
        ax: from === 0 ? ax : ax + from * (bx - ax),
        ay: from === 0 ? ay : ay + from * (by - ay),
        bx: to === 1 ? bx : ax + to * (bx - ax),
        by: to === 1 ? by : ay + to * (by - ay),
        isHidden,
        bodies,
      });
    };
    const visible = hidden.length === 0 ? [0, 1] : without(0, 1, hidden, least);
    for (let i = 0; i < visible.length; i += 2) add(visible[i]!, visible[i + 1]!, false);
    if (!withHidden) continue;
    const rest = without(0, 1, visible, least);
    for (let i = 0; i < rest.length; i += 2) add(rest[i]!, rest[i + 1]!, true);
  }
  return pieces;
}
